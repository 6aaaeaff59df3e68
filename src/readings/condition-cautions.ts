import { isDirectional } from './geometry-class.ts';
import type { ReadingGroup } from './reading-groups.ts';

/** Something about how two sides were measured that a reader should know before trusting a verdict. */
export interface Caution {
  readonly code: 'unlike geometry' | 'directional against annular' | 'unlike uv' | 'unlike aperture' | 'gloss hidden by sphere'
    | 'unlike backing' | 'unlike temperature';
  readonly text: string;
}

/** L* above which a fluorescent brightener can show: judged as a light part (assumption, no source). */
const LIGHT_PART_L = 60;
/** L* below which the surface reflection is a large share of the reading (assumption after the share of 4 % of a first surface). */
const DARK_PART_L = 40;
/** GU60 apart that counts as unlike gloss (assumption, no source). */
const UNLIKE_GLOSS = 2;
const UNLIKE_TEMPERATURE_C = 5;

/**
 * Cautions about comparing two groups, worst first; none of them changes a verdict.
 * `meanL` is the mean L* of the pair, `glossDifference` its distance in GU60 where known.
 */
export function conditionCautions(
  first: ReadingGroup, second: ReadingGroup, about: { readonly meanL?: number; readonly glossDifference?: number } = {},
): Caution[] {
  const found: Caution[] = [];
  const { meanL, glossDifference } = about;
  if (first.geometryClass !== second.geometryClass) {
    found.push({ code: 'unlike geometry', text: `measured as ${first.geometryClass} and ${second.geometryClass}: the value is indicative only` });
  }
  const directional = (group: ReadingGroup): boolean => group.geometries.some(isDirectional);
  if (first.geometryClass === '45:0' && second.geometryClass === '45:0' && directional(first) !== directional(second)) {
    found.push({ code: 'directional against annular', text: 'one side was lit from one direction, the other all round: a grain reads differently' });
  }
  if (first.geometryClass === 'di:8' && second.geometryClass === 'di:8' && meanL !== undefined && meanL < DARK_PART_L
    && glossDifference !== undefined && glossDifference > UNLIKE_GLOSS) {
    found.push({
      code: 'gloss hidden by sphere',
      text: 'specular included hides the unlike gloss of dark parts, the eye does not: measure 45:0 or specular excluded',
    });
  }
  if (first.uv !== second.uv && meanL !== undefined && meanL > LIGHT_PART_L) {
    found.push({ code: 'unlike uv', text: `ultraviolet ${first.uv} on one side and ${second.uv} on the other: a brightened light part reads differently` });
  }
  if (first.apertureClass !== second.apertureClass) {
    found.push({ code: 'unlike aperture', text: `apertures of ${first.apertureClass} and ${second.apertureClass}: edge loss and grain average differently` });
  }
  const backings = (group: ReadingGroup): string => [...group.backings].sort().join(', ');
  if (first.backings.length > 0 && second.backings.length > 0 && backings(first) !== backings(second)) {
    found.push({ code: 'unlike backing', text: `backed by ${backings(first)} and ${backings(second)}` });
  }
  const temperatures = [...first.temperaturesC, ...second.temperaturesC];
  if (temperatures.length > 1 && Math.max(...temperatures) - Math.min(...temperatures) > UNLIKE_TEMPERATURE_C) {
    found.push({ code: 'unlike temperature', text: `measured between ${Math.min(...temperatures)} and ${Math.max(...temperatures)} °C: some pigments shift with heat` });
  }
  return found;
}
