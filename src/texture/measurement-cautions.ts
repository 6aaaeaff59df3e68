import type { Issue } from '../issue.ts';
import { tiltSquare } from './form.ts';
import type { HeightMap } from './height-map.ts';
import type { MeasuredParameters, MeasureOptions } from './measure-surface.ts';

/** Share of missing points from which the parameters are no longer those of the whole surface. Assumption, no source. */
const manyMissing = 0.05;
/** Samples that a filter's cut-off must hold for its transmission to be that of the standard. */
const samplesInCutoff = 4;
/** Part of the mean square height that a tilt may have before it is named: a fifth of it is a tenth of Sq. Assumption, no source. */
const muchTilt = 0.2;
/** Correlation lengths that the field should hold on its shorter side. Assumption, no source. */
const lengthsInField = 10;

/** What a reader must know of parameters of this map: missing points, filters and field against spacing and texture. */
export function measurementCautions(map: HeightMap, options: MeasureOptions, { salMm, saUm, sqUm }: MeasuredParameters): Issue[] {
  const issues: Issue[] = [];
  const caution = (code: string, found: string, expected: string, hint: string): void => {
    issues.push({ code, severity: 'warning', found, expected, hint });
  };
  const share = map.missing / (map.width * map.height);
  if (share > manyMissing) {
    caution('many-missing-points', `${(100 * share).toFixed(1)} % of the points are missing`, `at most ${100 * manyMissing} %`,
      'Steep flanks and deep pits are missed first, so that the parameters are too low.');
  }
  const spacing = Math.max(...map.spacingMm);
  const field = Math.min(map.width * map.spacingMm[0], map.height * map.spacingMm[1]);
  const { sFilterMm, lFilterMm } = options;
  for (const [name, cutoff] of [['S', sFilterMm], ['L', lFilterMm]] as const) {
    if (cutoff !== undefined && cutoff < samplesInCutoff * spacing) {
      caution('filter-too-fine', `${name}-filter ${cutoff} mm on a spacing of ${spacing} mm`, `at least ${samplesInCutoff} points in the nesting index`,
        'A filter as fine as this passes more than the standard says.');
    }
  }
  if (lFilterMm !== undefined && lFilterMm > field) {
    caution('field-too-small', `L-filter ${lFilterMm} mm on a field of ${field.toFixed(3)} mm`, 'a field at least as long as the L nesting index',
      'Measure a larger field or take a smaller index.');
  }
  if ((options.form ?? 'none') === 'none' && sqUm !== undefined && sqUm > 0 && lFilterMm === undefined && tiltSquare(map) > muchTilt * sqUm * sqUm) {
    caution('tilted', `a tilt with ${Math.min(100, Math.round((100 * tiltSquare(map)) / sqUm ** 2))} % of the mean square height`, 'a levelled surface',
      'Take the form off (plane, or second-order on a curved part).');
  }
  if (sFilterMm !== undefined && lFilterMm !== undefined && sFilterMm >= lFilterMm) {
    caution('filters-crossed', `S-filter ${sFilterMm} mm, L-filter ${lFilterMm} mm`, 'the S nesting index below the L nesting index', 'Nothing is left between the two.');
  }
  if (salMm === undefined) {
    if (saUm !== undefined && saUm > 0) {
      caution('field-too-small', 'heights that stay correlated over half the field', 'an autocorrelation that falls to 0.2 within it',
        'Take the form off, set an L-filter or measure a larger field; Sal and Str are left out.');
    }
  } else if (salMm * lengthsInField > field) {
    caution('field-too-small', `a field of ${field.toFixed(3)} mm for Sal ${salMm.toFixed(3)} mm`, `at least ${lengthsInField} times Sal`,
      'The parameters depend on the place; measure a larger field.');
  }
  return issues;
}
