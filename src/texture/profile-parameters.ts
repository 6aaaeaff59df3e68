import type { Micrometres, Millimetres } from '../quantities.ts';
import type { Surface } from './sampled-field.ts';

export interface ProfileParameters {
  /** Along which axis the profiles run. */
  readonly axis: 'x' | 'y';
  /** Number of the row where it is one alone, the first is 1. */
  readonly row?: number;
  readonly profiles: number;
  readonly sectionMm: Millimetres;
  readonly sections: number;
  readonly raUm: Micrometres;
  readonly rzUm: Micrometres;
  /** Undefined where no profile has two elements high enough to count. */
  readonly rsmMm: Millimetres | undefined;
}

const usualSections = 5;
/** Profiles that are taken of a surface, evenly spread over it; more of them say no more. */
const mostProfiles = 1000;
/** Share of missing points up to which a profile is used, its gaps bridged by straight lines. Assumption, no source. */
const mostMissing = 0.1;
/** Part of Rz that a hill and a dale must exceed on their side of the mean line. Source: ISO 21920-2 (ISO 4287: 10 %). */
const heightDiscrimination = 0.1;

/** Which profiles: all rows (`x`), all columns (`y`), or one row by its number, the first is 1. */
export type ProfileChoice = 'x' | 'y' | number;

/**
 * Ra, Rz and RSm of the profiles that the rows (or columns) of a scale-limited surface are, averaged over all
 * of them, a thousand at most; or of one row alone, undefined where the surface does not have it.
 *
 * Ra: mean height about the profile's mean line. Rz: highest peak plus deepest pit of a section, mean over the sections. RSm: mean width of
 * profile elements, a hill and the dale beside it; both count from a tenth of the profile's Rz on. A section is as long as the L nesting index
 * where the profile holds one, at most five of them, else a fifth of the profile. Gaps of missing points are bridged by straight lines; profiles with more than a
 * tenth of their points missing are left out; undefined where none is left. The profiles carry the areal filters of the surface, not the filters of ISO 21920-3. Source: ISO 21920-2.
 */
export function profileParameters(surface: Surface, choice: ProfileChoice, sectionMm?: Millimetres): ProfileParameters | undefined {
  const { width, height, spacingMm, values } = surface;
  const axis = choice === 'y' ? 'y' : 'x';
  const only = typeof choice === 'number' ? choice - 1 : undefined;
  if (only !== undefined && !(Number.isInteger(only) && only >= 0 && only < height)) return undefined;
  const [length, count] = axis === 'x' ? [width, height] : [height, width];
  const spacing = spacingMm[axis === 'x' ? 0 : 1];
  const full = length * spacing;
  const asked = sectionMm !== undefined && sectionMm > 0 && sectionMm <= full * (1 + 1e-9) ? sectionMm : full / usualSections;
  const sections = Math.max(1, Math.min(usualSections, Math.floor((full / asked) * (1 + 1e-9))));
  const points = Math.max(1, Math.floor((asked / spacing) * (1 + 1e-9)));
  const profile = new Float64Array(length);
  let [profiles, ra, rz, widths, withWidth] = [0, 0, 0, 0, 0];
  const taken = only === undefined ? Math.min(count, mostProfiles) : 1;
  for (let turn = 0; turn < taken; turn += 1) {
    const index = only ?? Math.floor(((turn + 0.5) * count) / taken);
    for (let at = 0; at < length; at += 1) profile[at] = axis === 'x' ? values[index * width + at] : values[at * width + index];
    if (!bridged(profile)) continue;
    const own = levelled(profile);
    profiles += 1;
    ra += own;
    let span = 0;
    for (let section = 0; section < sections; section += 1) span += spanOf(profile, section * points, Math.min(length, (section + 1) * points));
    span /= sections;
    rz += span;
    const element = elementWidth(profile, heightDiscrimination * span);
    if (element === undefined) continue;
    widths += element * spacing;
    withWidth += 1;
  }
  if (profiles === 0) return undefined;
  return {
    axis, ...(only === undefined ? {} : { row: only + 1 }), profiles, sectionMm: points * spacing, sections,
    raUm: ra / profiles, rzUm: rz / profiles, rsmMm: withWidth === 0 ? undefined : widths / withWidth,
  };
}

/** Fills gaps between their ends, gaps at the ends with the nearest height; false where too much is missing. */
function bridged(profile: Float64Array): boolean {
  let missing = 0;
  for (const z of profile) if (Number.isNaN(z)) missing += 1;
  if (missing === 0) return true;
  if (missing > mostMissing * profile.length) return false;
  for (let at = 0; at < profile.length; at += 1) {
    if (!Number.isNaN(profile[at])) continue;
    let end = at;
    while (end < profile.length && Number.isNaN(profile[end])) end += 1;
    const left = at > 0 ? profile[at - 1] : profile[end];
    const right = end < profile.length ? profile[end] : left;
    for (let gap = at; gap < end; gap += 1) profile[gap] = left + ((right - left) * (gap - at + 1)) / (end - at + 1);
    at = end;
  }
  return true;
}

/** Takes the mean off and returns Ra. */
function levelled(profile: Float64Array): Micrometres {
  let mean = 0;
  for (const z of profile) mean += z;
  mean /= profile.length;
  let absolute = 0;
  for (let at = 0; at < profile.length; at += 1) {
    profile[at] -= mean;
    absolute += Math.abs(profile[at]);
  }
  return absolute / profile.length;
}

/** Peak and pit on their own sides of the mean line; a section that stays on one side has only one of them. */
function spanOf(profile: Float64Array, start: number, end: number): Micrometres {
  let [top, bottom] = [0, 0];
  for (let at = start; at < end; at += 1) {
    if (profile[at] > top) top = profile[at];
    if (profile[at] < bottom) bottom = profile[at];
  }
  return top - bottom;
}

/** Mean width of the profile elements in points: from one rising crossing of the mean line to the next, and from one falling to the next. */
function elementWidth(profile: Float64Array, threshold: Micrometres): number | undefined {
  let [sum, spans] = [0, 0];
  for (const sign of [1, -1]) {
    let [crossing, first, last, found] = [NaN, NaN, NaN, 0];
    let below = false;
    for (let at = 0; at < profile.length; at += 1) {
      const z = sign * profile[at];
      if (z < -threshold) {
        below = true;
        crossing = NaN;
      }
      if (below && z >= 0 && Number.isNaN(crossing)) crossing = at - z / (z - sign * profile[at - 1]);
      if (z < 0) crossing = NaN;
      if (below && z > threshold) {
        if (found === 0) first = crossing;
        last = crossing;
        found += 1;
        below = false;
      }
    }
    if (found > 1) {
      sum += last - first;
      spans += found - 1;
    }
  }
  return spans === 0 ? undefined : sum / spans;
}
