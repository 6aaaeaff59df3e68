import { printedTo, publishedCheck, type PublishedCheck } from '../colour/published-check.ts';
import { contrastSensitivity } from './contrast-sensitivity.ts';
import { heightMap } from './height-map.ts';
import { measureSurfaceSteps } from './measure-surface.ts';
import { analyticGrid, analyticSurfaces, analyticSurfacesOrigin, analyticTolerance } from './published/analytic-surfaces.ts';
import { contrastSensitivities, contrastSensitivityField, contrastSensitivityOrigin } from './published/contrast-sensitivity.ts';
import { vdiClasses, vdiClassesOrigin, vdiClassTolerance } from './published/vdi-classes.ts';
import { runSteps } from './steps.ts';
import { vdiClassOfRa } from './vdi-class.ts';

/** The table of texture classes, the sensitivity of the eye and surfaces whose parameters are known, set against ours. */
export function verifyTexture(): PublishedCheck[] {
  const classes = vdiClasses.map(([vdiClass, raUm]) => publishedCheck(
    'VDI 3400 class', vdiClassesOrigin, `Ra ${raUm} um`, vdiClass, vdiClassOfRa(raUm), vdiClassTolerance));
  const sensitivities = contrastSensitivities.map(([luminance, frequency, sensitivity]) => publishedCheck(
    'contrast sensitivity', contrastSensitivityOrigin, `${luminance} cd/m2, ${frequency} c/deg, ${contrastSensitivityField} deg`, sensitivity,
    contrastSensitivity(frequency, luminance, contrastSensitivityField), printedTo(2)));
  return [...classes, ...sensitivities, ...verifySurfaces()];
}

function verifySurfaces(): PublishedCheck[] {
  const { points, perPeriod, periodMm } = analyticGrid;
  const spacing = periodMm / perPeriod;
  return analyticSurfaces.flatMap(({ name, height, expected }) => {
    const heights = Float64Array.from({ length: points * points }, (_, index) => height(index % points, Math.floor(index / points)));
    const { parameters } = runSteps(measureSurfaceSteps(heightMap(points, points, [spacing, spacing], heights), { form: 'none' }));
    return (Object.keys(expected) as (keyof typeof expected)[]).map((key) => publishedCheck(
      `areal parameter ${key}`, analyticSurfacesOrigin, name, expected[key] ?? NaN, parameters[key] ?? NaN, analyticTolerance * (expected[key] ?? NaN)));
  });
}
