import type { Millimetres } from '../quantities.ts';
import type { Autocorrelation } from './autocorrelation.ts';
import { autocorrelationSteps, correlationAt } from './autocorrelation.ts';
import type { Surface } from './sampled-field.ts';
import { sampledField } from './sampled-field.ts';
import type { Steps } from './steps.ts';
import { partOfSteps } from './steps.ts';

export interface SpatialParameters {
  /** Undefined where the autocorrelation falls to the threshold in no direction within half the field. */
  readonly salMm: Millimetres | undefined;
  /** 0 where it never falls to the threshold along some direction; undefined with Sal. */
  readonly str: number | undefined;
  /** What Str can be at most where it is given as 0: the fastest decay over half the field. */
  readonly strAtMost?: number;
}

/** Value of the autocorrelation down to which lags are counted. Source: ISO 25178-2, default of Sal and Str. */
export const correlationThreshold = 0.2;

const mostPoints = 1024;
/** Sal in sampled points above which a coarser sampling does as well as the finest. */
const enoughPoints = 12;

/**
 * Sal and Str of a scale-limited surface: fastest decay of the autocorrelation to 0.2, and fastest over slowest.
 *
 * From the origin outward along each direction to the first lag at the threshold. Large fields are sampled: every k-th point of the whole, or of a
 * smaller part in the middle where the correlation is short, so that Sal has 12 sampled points or every point is used.
 * Source: ISO 25178-2, spatial parameters.
 */
export function* spatialParameterSteps(surface: Surface): Steps<SpatialParameters> {
  let every = 1;
  while (Math.max(surface.width, surface.height) / every > mostPoints) every *= 2;
  for (let done = 0; ; done = 1 - (1 - done) / 2, every /= 2) {
    const field = sampledField(surface, every, mostPoints);
    const correlation = yield* partOfSteps(autocorrelationSteps(field), done, 1 - (1 - done) / 2);
    if (correlation === undefined) return { salMm: undefined, str: undefined };
    const found = decays(correlation);
    const enough = found.salMm === undefined || found.salMm >= enoughPoints * Math.max(...field.spacingMm);
    if (every === 1 || enough) return found;
  }
}

function decays(correlation: Autocorrelation): SpatialParameters {
  const { width, height, spacingMm } = correlation;
  const half = [((width - 1) / 2) * spacingMm[0], ((height - 1) / 2) * spacingMm[1]] as const;
  /** Distance to the threshold along a direction in degrees, and the distance to the end of the lags. */
  const decayAt = (degrees: number): { readonly lag: number; readonly end: number } => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const end = Math.min(half[0] / Math.max(1e-12, Math.abs(c)), half[1] / Math.max(1e-12, Math.abs(s)));
    const value = (lag: number): number => correlationAt(correlation, (lag * c) / spacingMm[0], (lag * s) / spacingMm[1]) - correlationThreshold;
    const step = Math.min(...spacingMm) / 2;
    for (let lag = step; lag <= end; lag += step) {
      if (value(lag) > 0) continue;
      let [low, high] = [lag - step, lag];
      for (let round = 0; round < 40; round += 1) {
        const middle = (low + high) / 2;
        if (value(middle) > 0) low = middle;
        else high = middle;
      }
      return { lag: high, end };
    }
    return { lag: Infinity, end };
  };
  // Both senses of a direction are alike, so half a turn is enough.
  const directions = Array.from({ length: 180 }, (_, degrees) => ({ degrees, ...decayAt(degrees) }));
  const fastest = directions.reduce((best, next) => (next.lag < best.lag ? next : best));
  if (fastest.lag === Infinity) return { salMm: undefined, str: undefined };
  const slowest = directions.reduce((best, next) => (next.lag > best.lag ? next : best));
  const sal = extreme(fastest.degrees, (degrees) => decayAt(degrees).lag);
  const longest = slowest.lag === Infinity ? Infinity : -extreme(slowest.degrees, (degrees) => -decayAt(degrees).lag);
  if (longest === Infinity) {
    const ends = directions.filter(({ lag }) => lag === Infinity).map(({ end }) => end);
    return { salMm: sal, str: 0, strAtMost: sal / Math.max(...ends, slowest.end) };
  }
  return { salMm: sal, str: sal / longest };
}

/** Smallest value within a degree about a direction, by golden sections. */
function extreme(degrees: number, value: (degrees: number) => number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [degrees - 1, degrees + 1];
  let best = value(degrees);
  for (let round = 0; round < 20; round += 1) {
    const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
    const [atLeft, atRight] = [value(left), value(right)];
    best = Math.min(best, atLeft, atRight);
    if (atLeft < atRight) high = right;
    else low = left;
  }
  return best;
}
