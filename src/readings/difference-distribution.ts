import { difference, localMetric } from '../colour/index.ts';
import type { DifferenceFormula } from '../colour/difference-formula.ts';
import type { Lab, Matrix3 } from '../quantities.ts';
import { ellipsoidProbability } from './ellipsoid-probability.ts';
import { addMatrix3, labDifference, quadraticForm3 } from './matrix3.ts';
import { quantiles } from './order-statistics.ts';
import { quasiNormal } from './quasi-normal.ts';
import { twoSidedDraw } from './two-sided-draw.ts';

/** Two uncertain colours, independent and normal, and the formula that compares them. */
export interface DistributionInput {
  readonly formula: DifferenceFormula;
  readonly standard: Lab;
  readonly trial: Lab;
  readonly standardCovariance: Matrix3;
  readonly trialCovariance: Matrix3;
  readonly limit?: number;
}

export interface Distribution {
  readonly mean: number;
  readonly sd: number;
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
  /** Probability that the difference is at most the limit; only where a limit was given. */
  readonly withinProbability?: number;
  /** Draws used; 1 where nothing is uncertain. */
  readonly points: number;
  /** Half width of a 95 % interval for `withinProbability` (for the probability level of p50 where there is no limit). */
  readonly error: number;
  /** The same for `mean`, in units of the formula. */
  readonly meanError: number;
}

const SHIFTS = 8;
const POINTS_PER_SHIFT = 2048;
/** Student's t for 7 degrees of freedom, two-sided 95 % (Abramowitz and Stegun, table 26.10). */
const T_95 = 2.365;

/**
 * Distribution of the difference of two uncertain colours, both sides drawn.
 * L* may fall below 0 in a draw; the formulas are defined there. Covariances may be zero or singular.
 * Eight seeded lattice sums of 2048 antithetic points each; their scatter is the stated error. The probability
 * uses the local quadratic form of the formula as control variate, whose probability is known by integration
 * (for `cie76` it is the formula itself, so that the result is that of the integration).
 * JCGM 101:2008 with quasi-random in place of pseudo-random draws.
 */
export function differenceDistribution(input: DistributionInput): Distribution {
  const { formula, standard, trial, standardCovariance, trialCovariance, limit } = input;
  const draw = twoSidedDraw(standardCovariance, trialCovariance);
  if (draw.dimension === 0) return certain(difference(formula, standard, trial), limit);

  const control = limit === undefined ? undefined : quadraticControl(input, limit);
  const sample = new Float64Array(SHIFTS * POINTS_PER_SHIFT);
  const means: number[] = [];
  const corrections: number[] = [];
  const ofStandard: [number, number, number] = [0, 0, 0];
  const ofTrial: [number, number, number] = [0, 0, 0];
  const first: [number, number, number] = [0, 0, 0];
  const second: [number, number, number] = [0, 0, 0];
  for (let shift = 0; shift < SHIFTS; shift++) {
    const normals = quasiNormal(draw.dimension, POINTS_PER_SHIFT, shift + 1);
    let sum = 0;
    let excess = 0;
    for (let row = 0; row < POINTS_PER_SHIFT; row++) {
      // Rows come in pairs z, -z: the odd one only turns the departures of the even one round.
      if (row % 2 === 0) draw.depart(normals, row, ofStandard, ofTrial);
      const sign = row % 2 === 0 ? 1 : -1;
      for (let i = 0; i < 3; i++) {
        first[i] = standard[i] + sign * ofStandard[i];
        second[i] = trial[i] + sign * ofTrial[i];
      }
      const value = difference(formula, first, second);
      sample[shift * POINTS_PER_SHIFT + row] = value;
      sum += value;
      if (limit === undefined) continue;
      if (value <= limit) excess++;
      if (control?.holds(first, second)) excess--;
    }
    means.push(sum / POINTS_PER_SHIFT);
    corrections.push(excess / POINTS_PER_SHIFT);
  }
  const mean = average(means);
  let squares = 0;
  for (const value of sample) squares += (value - mean) * (value - mean);
  const [p5, p50, p95] = quantiles(sample, [0.05, 0.5, 0.95]);
  return {
    mean,
    sd: Math.sqrt(squares / sample.length),
    p5,
    p50,
    p95,
    ...(limit === undefined ? {} : { withinProbability: clamp((control?.probability ?? 0) + average(corrections)) }),
    points: sample.length,
    // No statement finer than the integration, and none where every shift happened to agree.
    error: Math.max(1e-5, limit === undefined ? 1 / Math.sqrt(sample.length) : halfWidth(corrections)),
    meanError: halfWidth(means),
  };
}

interface QuadraticControl {
  readonly probability: number;
  readonly holds: (standard: Lab, trial: Lab) => boolean;
}

function quadraticControl(input: DistributionInput, limit: number): QuadraticControl | undefined {
  const metric = localMetric(input.formula, input.standard, input.trial);
  if (!metric.every(Number.isFinite)) return undefined;
  const covariance = addMatrix3(input.standardCovariance, input.trialCovariance);
  const square = limit < 0 ? -1 : limit * limit;
  return {
    probability: ellipsoidProbability(labDifference(input.standard, input.trial), covariance, metric, limit),
    holds: (a, b) => quadraticForm3(metric, b[0] - a[0], b[1] - a[1], b[2] - a[2]) <= square,
  };
}

function certain(value: number, limit: number | undefined): Distribution {
  return {
    mean: value, sd: 0, p5: value, p50: value, p95: value,
    ...(limit === undefined ? {} : { withinProbability: Number(value <= limit) }),
    points: 1, error: 0, meanError: 0,
  };
}

const average = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function halfWidth(values: readonly number[]): number {
  const centre = average(values);
  const variance = values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1);
  return T_95 * Math.sqrt(variance / values.length);
}

const clamp = (p: number): number => Math.min(1, Math.max(0, p));
