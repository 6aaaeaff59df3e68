import { labToXyz, lightByName, whitePoint } from '../colour/index.ts';
import { fresnelReflectance } from '../gloss/fresnel-reflectance.ts';
import { colourSample } from './colour-sample.ts';
import type { ColourSample, JudgedLight } from './colour-sample.ts';
import type { ReadingGroup } from './reading-groups.ts';

/** What one sphere read of one specimen with and without the mirror reflection. Luminance factors in per cent, D65 and the 10 degree observer. */
export interface SpecularCue {
  readonly instrument: string;
  readonly yIncluded: number;
  readonly yExcluded: number;
  /** Included less excluded: nothing for a matt surface, at most `ceiling` for a mirror-smooth one. */
  readonly difference: number;
  /** 100 times the reflection of a surface of n = 1.5 at 8 degrees. */
  readonly ceiling: number;
}

const refractiveIndex = 1.5;

/**
 * The pair di:8 and de:8 of one instrument as a cue of gloss: Y(di:8) - Y(de:8) (W. Ji et al., J. Opt. Soc. Am. A 23 (2006) 22). It ranks
 * parts by gloss and replaces no glossmeter: what a gloss trap catches differs between makes, so readings of two instruments are never subtracted. Undefined without
 * both geometries on one instrument.
 */
export function specularCue(
  groups: readonly ReadingGroup[], sample: (group: ReadingGroup, lights: readonly JudgedLight[]) => ColourSample | undefined = colourSample,
): SpecularCue | undefined {
  const light = lightByName('D65');
  if (light === undefined) return undefined;
  const judged: readonly JudgedLight[] = [{ name: 'D65', light, observer: 10 }];
  const white = whitePoint(light, 10);
  const luminance = (group: ReadingGroup): number | undefined => {
    const lab = sample(group, judged)?.means[0];
    return lab === undefined ? undefined : labToXyz(lab, white)[1];
  };
  for (const included of groups) {
    if (included.geometryClass !== 'di:8') continue;
    const excluded = groups.find((group) => group.geometryClass === 'de:8' && group.instrument === included.instrument && group.apertureClass === included.apertureClass);
    const yIncluded = excluded === undefined ? undefined : luminance(included);
    const yExcluded = excluded === undefined ? undefined : luminance(excluded);
    if (yIncluded === undefined || yExcluded === undefined) continue;
    return { instrument: included.instrument, yIncluded, yExcluded, difference: yIncluded - yExcluded, ceiling: 100 * fresnelReflectance(refractiveIndex, 8) };
  }
  return undefined;
}
