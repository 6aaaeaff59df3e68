import { decide } from './decide.ts';
import { differenceCovariance } from './difference-covariance.ts';
import type { DifferenceSpread } from './difference-covariance.ts';
import { quasiNormal } from './quasi-normal.ts';
import { spotsThatDecide } from './spots-that-decide.ts';
import type { GrowingSides, OpenReason } from './spots-that-decide.ts';
import { stackedExcess } from './stacked-excess.ts';
import type { StackedLight } from './stacked-event.ts';
import { stackedSide } from './stacked-side.ts';
import { principalFactor } from './symmetric-matrix.ts';

/** A colour check that is open, with what its uncertainty is made of. */
export interface OpenColourCheck {
  readonly lights: readonly StackedLight[];
  readonly spread: DifferenceSpread;
  readonly confidence: number;
  /** Sides on which more spots are to be had; the other one stays as it is. Both where absent. */
  readonly grows?: GrowingSides;
}

export const defaultMaximumSpots = 50;
const SEARCH_POINTS = 1024;
const CHANCE_POINTS = 512;
const NEW_MEANS = 64;
/** Share of the largest variance below which an axis of a shift counts as none. */
const TOLERANCE = 1e-6;

function decidedBy(lights: readonly StackedLight[], covariance: Float64Array, confidence: number, points: number): boolean {
  const side = stackedSide({ lights, covariance, points }, confidence);
  if (side !== 'low') return side === 'high';
  const { excess, inside } = stackedExcess({ lights, covariance });
  return decide({ rule: 'guarded', confidence, within: 0, excess, inside }) !== 'open';
}

const withSpots = (spread: DifferenceSpread, spots: number, grows: GrowingSides): DifferenceSpread => ({
  ...spread, firstSpots: Math.max(grows === 'second' ? 0 : spots, spread.firstSpots), secondSpots: Math.max(spots, spread.secondSpots),
});

/**
 * How many spots on each side (a side that has more keeps them) would decide a colour check if its values stayed as they are,
 * or what stands in the way. Guarded rule; probabilities of 1024 points, so the number may be off by one.
 */
export function colourSpotsNeeded(check: OpenColourCheck, maximum = defaultMaximumSpots): OpenReason {
  const { lights, spread, confidence, grows = 'both' } = check;
  const none = new Float64Array(spread.instrument.length);
  return spotsThatDecide(grows === 'second' ? spread.secondSpots : Math.min(spread.firstSpots, spread.secondSpots), maximum, (spots, withInstruments) => {
    const wanted = withSpots(withInstruments ? spread : { ...spread, instrument: none }, spots, grows);
    return decidedBy(lights, differenceCovariance(wanted), confidence, SEARCH_POINTS);
  });
}

/**
 * Chance that a colour check is decided once each growing side has `spots` spots, and the instruments add `instrumentThen` instead of what
 * they add now. The new means are drawn about the present ones with the variance that is taken away, S/n - S/n' a side and that of the
 * instruments: the predictive law of a mean whose truth is unknown (A. Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.5).
 * 64 seeded draws, each judged with 512 points: good to about 0.1.
 */
export function chanceOfDeciding(
  { lights, spread, confidence, grows = 'both' }: OpenColourCheck, spots: number, instrumentThen: ArrayLike<number> = spread.instrument,
): number {
  const wanted = { ...withSpots(spread, spots, grows), instrument: instrumentThen };
  const covariance = differenceCovariance(wanted);
  const size = 3 * lights.length;
  const taken = (variance: ArrayLike<number>, have: number, then: number): Float64Array => {
    const rest = new Float64Array(variance.length);
    for (let at = 0; at < rest.length; at++) rest[at] = variance[at] * (1 / have - 1 / then);
    return rest;
  };
  const factors = [
    { of: 'standard', ...principalFactor(taken(spread.first, spread.firstSpots, wanted.firstSpots), size, TOLERANCE) },
    { of: 'trial', ...principalFactor(taken(spread.second, spread.secondSpots, wanted.secondSpots), size, TOLERANCE) },
    { of: 'trial', ...principalFactor(Float64Array.from(spread.instrument, (entry, at) => entry - instrumentThen[at]), size, TOLERANCE) },
  ] as const;
  const dimension = factors.reduce((sum, { rank }) => sum + rank, 0);
  if (dimension === 0) return Number(decidedBy(lights, covariance, confidence, CHANCE_POINTS));
  const normals = quasiNormal(dimension, NEW_MEANS, 1);
  let decided = 0;
  for (let row = 0; row < NEW_MEANS; row++) {
    const shift = (side: 'standard' | 'trial', entry: number): number => {
      let sum = 0;
      let offset = row * dimension;
      for (const { of, factor, rank } of factors) {
        if (of === side) for (let k = 0; k < rank; k++) sum += factor[entry * rank + k] * normals[offset + k];
        offset += rank;
      }
      return sum;
    };
    const moved = lights.map((light, l): StackedLight => {
      const at = (side: 'standard' | 'trial', i: number): number => light[side][i] + shift(side, 3 * l + i);
      return { ...light, standard: [at('standard', 0), at('standard', 1), at('standard', 2)], trial: [at('trial', 0), at('trial', 1), at('trial', 2)] };
    });
    if (decidedBy(moved, covariance, confidence, CHANCE_POINTS)) decided++;
  }
  return decided / NEW_MEANS;
}
