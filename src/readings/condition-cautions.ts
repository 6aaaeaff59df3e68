import type { GeometryRule } from './geometry-table.ts';
import { compareGeometries } from './geometry-table.ts';
import type { ReadingGroup } from './reading-groups.ts';

/** Something about how two sides were measured that a reader should know before trusting a verdict. */
export interface Caution {
  readonly code: 'unlike geometry' | 'directional against annular' | 'unlike uv' | 'unlike aperture' | 'aperture not stated' | 'gloss hidden by sphere'
    | 'unlike backing' | 'unlike temperature';
  readonly text: string;
}

/** L* above which a fluorescent brightener can show: judged as a light part (assumption, no source). */
const LIGHT_PART_L = 60;
/** L* below which the surface reflection is a large share of the reading (assumption after the share of 4 % of a first surface). */
const DARK_PART_L = 40;
/** GU60 apart that counts as unlike gloss (assumption, no source). */
const UNLIKE_GLOSS = 2;
/** Difference of the specular cues, per cent of Y, that counts as unlike gloss: it moves a dark part by some 2 L* (assumption, no source). */
const UNLIKE_CUE = 0.2;
const UNLIKE_TEMPERATURE_C = 5;

/** What is known of a pair beside its conditions. */
export interface AboutPair {
  /** Mean L* of the pair. */
  readonly meanL?: number;
  /** Distance in GU60. */
  readonly glossDifference?: number;
  /** Distance of the specular cues Y(di:8) - Y(de:8), per cent of Y: tells of gloss where no glossmeter did. */
  readonly cueDifference?: number;
}

/**
 * Cautions about comparing two groups, worst first; none of them changes a verdict.
 * What geometries may be compared, and what to mind, is in `geometryTable`.
 */
export function conditionCautions(first: ReadingGroup, second: ReadingGroup, about: AboutPair = {}): Caution[] {
  const found: Caution[] = [];
  const { meanL, glossDifference, cueDifference } = about;
  if (first.geometryClass !== second.geometryClass) {
    found.push({ code: 'unlike geometry', text: `measured as ${first.geometryClass} and ${second.geometryClass}: the value is indicative only` });
  }
  const rules = geometryRules(first, second);
  const caution = rules.find(({ comparison }) => comparison === 'with a caution');
  if (caution !== undefined) found.push({ code: 'directional against annular', text: caution.reason });
  const included = rules.find(({ kinds }) => kinds[0] === 'di:8' && kinds[1] === 'di:8');
  const unlikeGloss = glossDifference === undefined ? (cueDifference ?? 0) > UNLIKE_CUE : glossDifference > UNLIKE_GLOSS;
  if (included?.mind !== undefined && meanL !== undefined && meanL < DARK_PART_L && unlikeGloss) {
    found.push({ code: 'gloss hidden by sphere', text: included.mind });
  }
  if (first.uv !== second.uv && meanL !== undefined && meanL > LIGHT_PART_L) {
    found.push({ code: 'unlike uv', text: `ultraviolet ${first.uv} on one side and ${second.uv} on the other: a brightened light part reads differently` });
  }
  const unstated = [first, second].filter(({ apertureClass }) => apertureClass === 'unknown').length;
  if (unstated > 0) {
    const where = unstated === 2 ? 'on either side' : `on one side, ${first.apertureClass === 'unknown' ? second.apertureClass : first.apertureClass} on the other`;
    found.push({ code: 'aperture not stated', text: `aperture not stated ${where}: edge loss and grain may average differently` });
  } else if (first.apertureClass !== second.apertureClass) {
    found.push({ code: 'unlike aperture', text: `apertures of ${first.apertureClass} and ${second.apertureClass}: edge loss and grain average differently, and the value is indicative only` });
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

/** The rules for the geometries met on the two sides; a side whose readings are partly of another kind brings the rules of both. */
const geometryRules = (first: ReadingGroup, second: ReadingGroup): readonly GeometryRule[] =>
  first.geometries.flatMap((p) => second.geometries.map((q) => compareGeometries(p, q)));
