import type { ScalarSide } from './scalar-variance.ts';
import { spotVariance } from './scalar-variance.ts';
import type { GrowingSides } from './spots-that-decide.ts';

/** A check in one dimension that is open: how its verdict inputs follow from the difference and its uncertainty. */
export interface OpenScalarCheck {
  readonly first: ScalarSide;
  readonly second: ScalarSide;
  readonly priorReadings: number;
  readonly instrumentVariance: number;
  readonly confidence: number;
  /** Sides on which more spots are to be had; the other one stays as it is. Both where absent. */
  readonly grows?: GrowingSides;
  /** Present difference, trial minus standard. */
  readonly difference: number;
  /** Probability, excess and plain answer for a difference with a standard uncertainty. */
  readonly compare: (difference: number, uncertainty: number) => { readonly within: number; readonly excess: number; readonly inside: boolean };
}

/** Variance of the difference once each growing side has `spots` spots. */
export function varianceWithSpots(check: OpenScalarCheck, spots: number, instrumentVariance: number): number {
  const side = (own: ScalarSide, grows: boolean): number => spotVariance(own, check.priorReadings) / Math.max(grows ? spots : 0, own.spots);
  return side(check.first, check.grows !== 'second') + side(check.second, true) + instrumentVariance;
}

/** Fewest spots among the sides on which more are to be had. */
export const growingSpots = ({ first, second, grows }: OpenScalarCheck): number => (grows === 'second' ? second.spots : Math.min(first.spots, second.spots));
