import { pooledVariance } from '../sample-covariance.ts';
import { median, robustSd } from './robust-scale.ts';

/** A reading that lies far from the others. A suggestion: it stays in every mean until a person marks it. */
export interface OutlierSuggestion {
  /** Place of the reading among those given. */
  readonly index: number;
  /** Axis on which it lies farthest out, by its number and name. */
  readonly axis: number;
  readonly axisName: string;
  readonly value: number;
  /** Median of the readings it was compared with. */
  readonly median: number;
  /** Distance from the median in standard deviations: the robust one, pooled with the assumed one. */
  readonly score: number;
}

/** A reading as a point on several axes. */
export interface PlacedVector {
  readonly rotation: number;
  readonly vector: readonly number[];
}

export interface OutlierAxis {
  readonly name: string;
  /** Standard deviation of one reading that the material is assumed to have. */
  readonly assumedSd: number;
}

/** Score from which a reading is pointed out: B. Iglewicz and D. C. Hoaglin, How to Detect and Handle Outliers (1993), section 3. */
export const outlierScore = 3.5;
/** Fewer readings have no spread of their own to stand out from. Assumption, no source. */
export const fewestForOutliers = 4;
/** A rotation's own median is taken only from this many readings at it. Assumption, no source. */
const fewestPerRotation = 3;

/**
 * Readings that stand out on some axis: distance from the median of at least 3.5 standard deviations, worst first. The standard deviation is the robust
 * one (median absolute deviation), pooled with the assumed one as verdicts pool it, worth `priorReadings`: of five readings three that
 * happen to agree would else make outliers of the other two. Where every rotation has at least three readings, each is compared with
 * the readings of its own rotation, so that the two directions of a pile are not taken for outliers of each other. Below four
 * readings nothing is suggested.
 */
export function suggestOutliers(readings: readonly PlacedVector[], axes: readonly OutlierAxis[], priorReadings = 8): OutlierSuggestion[] {
  if (readings.length < fewestForOutliers) return [];
  const worst = new Map<number, OutlierSuggestion>();
  axes.forEach(({ name, assumedSd }, axis) => {
    const centres = centresOf(readings, axis);
    const deviations = readings.map(({ vector }, index) => vector[axis] - centres[index]);
    const scale = Math.sqrt(pooledVariance(assumedSd ** 2, robustSd(deviations) ** 2, readings.length, priorReadings));
    const middle = median(deviations);
    deviations.forEach((deviation, index) => {
      const score = scale > 0 ? Math.abs(deviation - middle) / scale : deviation === middle ? 0 : Infinity;
      if (score < outlierScore || score <= (worst.get(index)?.score ?? 0)) return;
      worst.set(index, { index, axis, axisName: name, value: readings[index].vector[axis], median: centres[index] + middle, score });
    });
  });
  return [...worst.values()].sort((first, second) => second.score - first.score || first.index - second.index);
}

/** For every reading the median it is compared with on one axis. */
function centresOf(readings: readonly PlacedVector[], axis: number): number[] {
  const byRotation = new Map<number, number[]>();
  for (const { rotation, vector } of readings) byRotation.set(rotation, [...(byRotation.get(rotation) ?? []), vector[axis]]);
  const turned = byRotation.size > 1 && [...byRotation.values()].every((values) => values.length >= fewestPerRotation);
  const middles = new Map([...byRotation].map(([rotation, values]) => [rotation, median(values)]));
  const all = median(readings.map(({ vector }) => vector[axis]));
  return readings.map(({ rotation }) => (turned ? middles.get(rotation) ?? all : all));
}
