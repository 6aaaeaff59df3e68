import { exitCloud } from './exit-cloud.ts';
import type { ExitCloud } from './exit-cloud.ts';
import type { ScatteredJoint } from './limit-walls.ts';
import { shareBeyond } from './scatter-directions.ts';
import type { Fineness } from './scatter-directions.ts';

/** Largest relative error near a share of 0.05, met over 24 seeded joints and 6 seeds of the directions, each against sixteen times as many; the root mean square error is 0.014. */
export const shareError = 0.04;

type Deviations = readonly [number, number];

/**
 * Share of the cabins in which the colour of a joint is outside a limit, its parts being normal about their targets with the given deviations in
 * units of their radius. One event over all lights and limits: the mean, over directions of the two parts together, of the share of the
 * cloud that lies beyond the first exit. By directions since it is as good for a share of a millionth as for one half.
 * Source: directional simulation, O. Ditlevsen and H. O. Madsen, Structural Reliability Methods, 1996, 9.2 (from memory).
 */
export const failingShare = (joint: ScatteredJoint, sds: Deviations, fineness: Fineness = 'fine'): number =>
  (sds[0] === 0 && sds[1] === 0 ? 0 : meanBeyond(exitCloud(fineness).take(joint).exitsAt(sds)));

/** Mean share of the cloud beyond exits that are so many times as near. */
function meanBeyond(exits: Float64Array, nearer = 1): number {
  let sum = 0;
  for (let row = 0; row < exits.length; row++) sum += shareBeyond(exits[row] / nearer);
  return sum / exits.length;
}

/** The same where every exit is a share of its own of another. */
function meanBeyondShares(exits: Float64Array, shares: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < exits.length; row++) sum += shareBeyond(exits[row] * shares[row]);
  return sum / exits.length;
}

/** The largest factor, up to `most`, on both deviations at which no more than the allowed share fails: the exits only come nearer by it. */
export function largestTogether(joint: ScatteredJoint, sds: Deviations, allowed: number, most: number, fineness: Fineness): number {
  const exits = exitCloud(fineness).take(joint).exitsAt([sds[0] * most, sds[1] * most]);
  if (meanBeyond(exits) <= allowed) return most;
  return most * crossingOf((factor) => meanBeyond(exits, factor), allowed, 1, 0.5);
}

/**
 * The largest deviation of one part, up to `most`, at which no more than the allowed share fails while the other stays as it is, found near
 * `guess`. Where the other alone brings it about, next to none.
 */
export function largestAlone(joint: ScatteredJoint, side: 0 | 1, other: number, allowed: number, most: number, guess: number, fineness: Fineness): number {
  const cloud = exitCloud(fineness).take(joint);
  const both = (sd: number): Deviations => (side === 0 ? [sd, other] : [other, sd]);
  const share = (sd: number): number => meanBeyond(cloud.exitsAt(both(sd)));
  if (!cloud.hasForms) return crossingOf(share, allowed, most, guess);
  let sd = Math.min(most, Math.max(guess, most * 1e-3));
  for (let tries = 0; tries < 4; tries++) {
    const [here, byForm] = formShares(cloud, both(sd));
    if (here <= allowed && (sd >= most || here > nearly * allowed)) return sd;
    if (sd <= most * leastShare && here > allowed) return sd;
    sd = crossingOf((at) => meanBeyondShares(cloud.exitsByForm(both(at)), byForm), allowed * (1 + nearly) / 2, most, sd);
  }
  return crossingOf(share, allowed, most, sd);
}

/** Share of what is allowed that is near enough to it. */
const nearly = 0.985;
/** Share of the largest deviation that is next to none. */
const leastShare = 1e-6;

const formed = new Map<number, Float64Array>();

/** The share that fails, and what the exits are of those by the forms alone: that share changes little as a deviation does. */
function formShares(cloud: ExitCloud, sds: Deviations): readonly [share: number, byForm: Float64Array] {
  const exits = cloud.exitsAt(sds);
  const byForm = formed.get(exits.length) ?? new Float64Array(exits.length);
  formed.set(exits.length, byForm);
  const forms = cloud.exitsByForm(sds);
  for (let row = 0; row < exits.length; row++) byForm[row] = exits[row] === 0 && forms[row] === 0 ? 1 : exits[row] / forms[row];
  return [meanBeyond(exits), byForm];
}

/** Where a share that grows with a deviation comes to what is allowed: the logarithms of both are nearly straight in one another. */
function crossingOf(share: (sd: number) => number, allowed: number, most: number, guess: number): number {
  const over = (sd: number): number => Math.log(Math.max(1e-12, share(sd)) / allowed);
  let high = Math.min(most, Math.max(guess, most * 1e-3));
  let above = over(high);
  let [low, below] = [Number.NaN, Number.NaN];
  // A guess that is far off is left in longer and longer steps.
  let stride = 1.1;
  while (above <= 0) {
    if (high >= most) return most;
    [low, below] = [high, above];
    high = Math.min(most, stride * high);
    above = over(high);
    stride *= stride;
  }
  while (!(below <= 0)) {
    low = Math.max(most * leastShare, high / stride);
    stride *= stride;
    below = over(low);
    if (below > 0 && low <= most * leastShare) return low;
    if (below > 0) [high, above] = [low, below];
  }
  // The end that stays counts half as much each time (the Illinois rule), so that neither stays for long.
  let [atLow, atHigh] = [below, above];
  let stayed = 0;
  for (let tries = 0; tries < 40 && below < -1e-3; tries++) {
    const middle = low + (high - low) * Math.min(0.95, Math.max(0.02, (-atLow - 5e-4) / (atHigh - atLow)));
    const here = over(middle);
    if (here <= 0) {
      [low, below, atLow] = [middle, here, here];
      if (stayed > 0) atHigh /= 2;
      stayed = 1;
    } else {
      [high, atHigh] = [middle, here];
      if (stayed < 0) atLow /= 2;
      stayed = -1;
    }
  }
  return low;
}
