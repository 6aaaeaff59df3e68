import { decide } from './decide.ts';
import { defaultMaximumSpots } from './colour-spots-needed.ts';
import { normalDensity } from './normal-distribution.ts';
import type { ScalarSide } from './scalar-variance.ts';
import { spotVariance } from './scalar-variance.ts';
import { spotsThatDecide } from './spots-that-decide.ts';
import type { OpenReason } from './spots-that-decide.ts';

/** A check in one dimension that is open: how its verdict inputs follow from the difference and its uncertainty. */
export interface OpenScalarCheck {
  readonly first: ScalarSide;
  readonly second: ScalarSide;
  readonly priorReadings: number;
  readonly instrumentVariance: number;
  readonly confidence: number;
  /** Present difference, trial minus standard. */
  readonly difference: number;
  /** Probability, excess and plain answer for a difference with a standard uncertainty. */
  readonly compare: (difference: number, uncertainty: number) => { readonly within: number; readonly excess: number; readonly inside: boolean };
}

function varianceWith(check: OpenScalarCheck, spots: number, instrumentVariance: number): number {
  const side = (own: ScalarSide): number => spotVariance(own, check.priorReadings) / Math.max(spots, own.spots);
  return side(check.first) + side(check.second) + instrumentVariance;
}

const decidedAt = (check: OpenScalarCheck, difference: number, variance: number): boolean =>
  decide({ rule: 'guarded', confidence: check.confidence, ...check.compare(difference, Math.sqrt(variance)) }) !== 'open';

/** How many spots a side would decide a check in one dimension, or what stands in the way; as for colour. */
export const scalarSpotsNeeded = (check: OpenScalarCheck, maximum = defaultMaximumSpots): OpenReason =>
  spotsThatDecide(Math.min(check.first.spots, check.second.spots), maximum, (spots, withInstruments) =>
    decidedAt(check, check.difference, varianceWith(check, spots, withInstruments ? check.instrumentVariance : 0)));

const STEPS = 400;

/** Chance that a check in one dimension is decided with `spots` spots a side: the new mean by its predictive normal law, summed over +-6 sd. */
export function scalarChanceOfDeciding(check: OpenScalarCheck, spots: number): number {
  const variance = varianceWith(check, spots, check.instrumentVariance);
  const sd = Math.sqrt(Math.max(0, varianceWith(check, 0, check.instrumentVariance) - variance));
  if (sd === 0) return Number(decidedAt(check, check.difference, variance));
  let decided = 0;
  let total = 0;
  for (let step = 0; step <= STEPS; step++) {
    const z = -6 + (12 * step) / STEPS;
    const weight = normalDensity(z);
    total += weight;
    if (decidedAt(check, check.difference + sd * z, variance)) decided += weight;
  }
  return decided / total;
}
