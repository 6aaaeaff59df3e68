import { decide } from './decide.ts';
import { differenceCovariance } from './difference-covariance.ts';
import type { DifferenceSpread } from './difference-covariance.ts';
import { quasiNormal } from './quasi-normal.ts';
import { spotsThatDecide } from './spots-that-decide.ts';
import type { OpenReason } from './spots-that-decide.ts';
import { stackedExcess } from './stacked-excess.ts';
import type { StackedLight } from './stacked-event.ts';
import { stackedProbability } from './stacked-probability.ts';
import { principalFactor } from './symmetric-matrix.ts';

/** A colour check that is open, with what its uncertainty is made of. */
export interface OpenColourCheck {
  readonly lights: readonly StackedLight[];
  readonly spread: DifferenceSpread;
  readonly confidence: number;
}

export const defaultMaximumSpots = 50;
const SEARCH_POINTS = 1024;
const CHANCE_POINTS = 512;
const NEW_MEANS = 64;

function decidedBy(lights: readonly StackedLight[], covariance: Float64Array, confidence: number, points: number): boolean {
  const within = stackedProbability({ lights, covariance, points }).all;
  if (within >= confidence) return true;
  if (within > 1 - confidence) return false;
  const { excess, inside } = stackedExcess({ lights, covariance });
  return decide({ rule: 'guarded', confidence, within, excess, inside }) !== 'open';
}

const withSpots = (spread: DifferenceSpread, spots: number): DifferenceSpread =>
  ({ ...spread, firstSpots: Math.max(spots, spread.firstSpots), secondSpots: Math.max(spots, spread.secondSpots) });

/**
 * How many spots on each side (a side that has more keeps them) would decide a colour check if its values stayed as they are,
 * or what stands in the way. Guarded rule; probabilities of 1024 points, so the number may be off by one.
 */
export function colourSpotsNeeded(check: OpenColourCheck, maximum = defaultMaximumSpots): OpenReason {
  const { lights, spread, confidence } = check;
  const none = Float64Array.from(spread.instrument, () => 0);
  return spotsThatDecide(Math.min(spread.firstSpots, spread.secondSpots), maximum, (spots, withInstruments) => {
    const wanted = withSpots(withInstruments ? spread : { ...spread, instrument: none }, spots);
    return decidedBy(lights, differenceCovariance(wanted), confidence, SEARCH_POINTS);
  });
}

/**
 * Chance that a colour check is decided once each side has `spots` spots.
 * The new means are drawn about the present ones with the variance that the added spots take away, S/n - S/n' a side:
 * the predictive law of a mean whose truth is unknown (A. Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.5). The
 * instruments' deviation is taken to stay as it is. 64 seeded draws, each judged with 512 points: good to about 0.1.
 */
export function chanceOfDeciding({ lights, spread, confidence }: OpenColourCheck, spots: number): number {
  const wanted = withSpots(spread, spots);
  const covariance = differenceCovariance(wanted);
  const size = 3 * lights.length;
  const taken = (variance: ArrayLike<number>, have: number, then: number): Float64Array =>
    Float64Array.from(variance, (entry) => entry * (1 / have - 1 / then));
  const first = principalFactor(taken(spread.first, spread.firstSpots, wanted.firstSpots), size, 1e-6);
  const second = principalFactor(taken(spread.second, spread.secondSpots, wanted.secondSpots), size, 1e-6);
  const dimension = first.rank + second.rank;
  if (dimension === 0) return Number(decidedBy(lights, covariance, confidence, CHANCE_POINTS));
  const normals = quasiNormal(dimension, NEW_MEANS, 1);
  let decided = 0;
  for (let row = 0; row < NEW_MEANS; row++) {
    const moved = lights.map((light, l): StackedLight => {
      const shift = (factor: Float64Array, rank: number, offset: number, i: number): number => {
        let sum = 0;
        for (let k = 0; k < rank; k++) sum += factor[(3 * l + i) * rank + k] * normals[row * dimension + offset + k];
        return sum;
      };
      const { standard: s, trial: t } = light;
      const ofFirst = (i: number): number => s[i] + shift(first.factor, first.rank, 0, i);
      const ofSecond = (i: number): number => t[i] + shift(second.factor, second.rank, first.rank, i);
      return { ...light, standard: [ofFirst(0), ofFirst(1), ofFirst(2)], trial: [ofSecond(0), ofSecond(1), ofSecond(2)] };
    });
    if (decidedBy(moved, covariance, confidence, CHANCE_POINTS)) decided++;
  }
  return decided / NEW_MEANS;
}
