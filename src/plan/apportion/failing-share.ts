import type { Ellipsoid } from './ellipsoid.ts';
import { firstExits } from './first-exits.ts';
import { scatterDirections, shareBeyond } from './scatter-directions.ts';
import type { Fineness } from './scatter-directions.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';

/** A joint whose colour is judged, with all that is asked of it under all its lights. */
export interface ScatteredJoint {
  readonly terms: readonly ToleranceTerm[];
  readonly shapes: readonly [Ellipsoid, Ellipsoid];
}

/** Largest relative error near a share of 0.05, met over 24 seeded joints and 6 seeds of the directions, each against sixteen times as many; the root mean square error is 0.014. */
export const shareError = 0.04;

/**
 * Share of the cabins in which the colour of a joint is outside a limit, its parts being normal about their targets with the given deviations in
 * units of their radius. One event over all lights and limits: the mean, over directions of the two parts together, of the share of the
 * cloud that lies beyond the first exit. By directions since it is as good for a share of a millionth as for one half.
 * Source: directional simulation, O. Ditlevsen and H. O. Madsen, Structural Reliability Methods, 1996, 9.2 (from memory).
 */
export const failingShare = ({ terms, shapes }: ScatteredJoint, sds: readonly [number, number], fineness: Fineness = 'fine'): number =>
  (sds[0] === 0 && sds[1] === 0 ? 0 : meanBeyond(firstExits(terms, shapes, sds, scatterDirections(fineness)), 1));

function meanBeyond(exits: Float64Array, deviations: number): number {
  let sum = 0;
  for (const exit of exits) sum += shareBeyond(exit / deviations);
  return sum / exits.length;
}

/** The largest factor, up to `most`, on both deviations at which no more than the allowed share fails: the exits only come nearer by it. */
export function largestTogether({ terms, shapes }: ScatteredJoint, sds: readonly [number, number], allowed: number, most: number, fineness: Fineness): number {
  const exits = firstExits(terms, shapes, [sds[0] * most, sds[1] * most], scatterDirections(fineness));
  if (meanBeyond(exits, 1) <= allowed) return most;
  let [low, high] = [0, 1];
  for (let tries = 0; tries < 20; tries++) {
    const middle = (low + high) / 2;
    if (meanBeyond(exits, middle) <= allowed) low = middle;
    else high = middle;
  }
  return most * low;
}

/**
 * The largest deviation of one part, up to `most`, at which no more than the allowed share fails while the other stays as it is, found near
 * `guess`. Where the other alone brings it about, next to none.
 */
export function largestAlone(joint: ScatteredJoint, side: 0 | 1, other: number, allowed: number, most: number, guess: number, fineness: Fineness): number {
  const share = (sd: number, at: Fineness): number => failingShare(joint, side === 0 ? [sd, other] : [other, sd], at);
  let found = crossingOf((sd) => share(sd, 'coarse'), allowed, most, guess);
  if (fineness === 'coarse') return found;
  // A few directions are off by nearly the same factor at either end of a short way.
  for (let tries = 0; tries < 3; tries++) {
    const fine = share(found, 'fine');
    if (fine <= allowed && (found >= most || fine > nearly * allowed)) return found;
    const factor = fine / Math.max(1e-12, share(found, 'coarse'));
    found = crossingOf((sd) => share(sd, 'coarse') * factor, allowed * Math.sqrt(nearly), most, found);
  }
  return crossingOf((sd) => share(sd, 'fine'), allowed, most, found);
}

/** Share of what is allowed that is near enough to it. */
const nearly = 0.985;

/** Where a share that grows with a deviation comes to what is allowed: the logarithms of both are nearly straight in one another. */
function crossingOf(share: (sd: number) => number, allowed: number, most: number, guess: number): number {
  const over = (sd: number): number => Math.log(Math.max(1e-12, share(sd)) / allowed);
  let high = Math.min(most, Math.max(guess, most * 1e-3));
  let above = over(high);
  let [low, below] = [Number.NaN, Number.NaN];
  while (above <= 0) {
    if (high >= most) return most;
    [low, below] = [high, above];
    high = Math.min(most, 1.1 * high);
    above = over(high);
  }
  while (!(below <= 0)) {
    low = Math.min(high, Number.isNaN(low) ? high : low) / 1.1;
    if (low < most * 1e-4) return low;
    below = over(low);
    if (below > 0) [high, above] = [low, below];
  }
  for (let tries = 0; tries < 12 && below < -1e-3; tries++) {
    const middle = low + (high - low) * Math.min(0.95, Math.max(0.02, (-below - 5e-4) / (above - below)));
    const here = over(middle);
    if (here <= 0) [low, below] = [middle, here];
    else [high, above] = [middle, here];
  }
  return low;
}
