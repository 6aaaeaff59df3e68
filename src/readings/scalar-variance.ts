import { pooledVariance } from './sample-covariance.ts';

/** One side of a comparison in one dimension: gloss in GU, texture as the logarithm of a size. */
export interface ScalarSide {
  /** Standard deviation from spot to spot. */
  readonly sd: number;
  readonly spots: number;
  /** What the book assumes for one reading of this material. */
  readonly assumedSd: number;
}

/** Pooled variance of one spot of a side, not divided by their number. */
export const spotVariance = ({ sd, spots, assumedSd }: ScalarSide, priorReadings: number): number =>
  pooledVariance(assumedSd * assumedSd, sd * sd, spots, priorReadings);

/** Variance of the difference of two means: each side's pooled variance over its spots, and the instruments' term. */
export const scalarDifferenceVariance = (first: ScalarSide, second: ScalarSide, priorReadings: number, instrumentVariance: number): number =>
  spotVariance(first, priorReadings) / first.spots + spotVariance(second, priorReadings) / second.spots + instrumentVariance;
