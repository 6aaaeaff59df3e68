import { difference, localMetric } from '../colour/index.ts';
import type { DifferenceFormula } from '../colour/difference-formula.ts';
import type { Lab, Matrix3 } from '../quantities.ts';
import { applyMatrix3, labDifference, multiplyMatrix3, traceMatrix3 } from './matrix3.ts';
import { symmetricEigen } from './symmetric-matrix.ts';

/** A difference with its first-order uncertainty and with the inflation by noise taken off. */
export interface CorrectedValue {
  /** The formula's value of the two means. */
  readonly value: number;
  /** Standard uncertainty u along the gradient, in units of the formula. */
  readonly uncertainty: number;
  /** sqrt(max(0, value^2 - (tr S - u^2))): what the value would be without the noise across the gradient. */
  readonly corrected: number;
}

/**
 * Value, uncertainty and noise-corrected value of a difference in the formula's local metric Q.
 * `covariance` S is that of the difference, CIELAB units squared. With g the unit gradient and S_Q = Q^1/2 S Q^1/2,
 * u^2 = g' S_Q g and E[value^2] = truth^2 + tr S_Q to second order (JCGM 100:2008, 5.1.2 and the note on H.1);
 * taking off only tr S_Q - u^2 keeps the statistic from calling noise a difference and is cautious along g.
 * Where the means agree no gradient exists: u is then the largest standard deviation in the metric.
 */
export function correctedValue(formula: DifferenceFormula, standard: Lab, trial: Lab, covariance: Matrix3): CorrectedValue {
  const metric = localMetric(formula, standard, trial);
  const value = difference(formula, standard, trial);
  const d = labDifference(standard, trial);
  const gradient = applyMatrix3(metric, d);
  const square = d[0] * gradient[0] + d[1] * gradient[1] + d[2] * gradient[2];
  const spread = multiplyMatrix3(metric, covariance);
  const total = traceMatrix3(spread);
  let variance: number;
  if (square > 1e-18) {
    const s = applyMatrix3(covariance, gradient);
    variance = (gradient[0] * s[0] + gradient[1] * s[1] + gradient[2] * s[2]) / square;
  } else {
    variance = largestSpread(metric, covariance);
  }
  return {
    value,
    uncertainty: Math.sqrt(Math.max(0, variance)),
    corrected: Math.sqrt(Math.max(0, value * value - Math.max(0, total - variance))),
  };
}

/** Largest eigenvalue of Q S, both positive semidefinite, through the symmetric Q^1/2 S Q^1/2. */
export function largestSpread(metric: Matrix3, covariance: Matrix3): number {
  const { values, vectors } = symmetricEigen(metric, 3);
  const scaled = Array.from(vectors, (entry, index) => entry * Math.sqrt(Math.max(0, values[index % 3])));
  const columns = [0, 1, 2].map((k): Lab => [scaled[k], scaled[3 + k], scaled[6 + k]]);
  const inner = columns.flatMap((p) => columns.map((q) => {
    const s = applyMatrix3(covariance, q);
    return p[0] * s[0] + p[1] * s[1] + p[2] * s[2];
  }));
  return symmetricEigen(inner, 3).values[0];
}

/**
 * How many standard uncertainties a value lies beyond its limit: positive beyond, negative within.
 * `side` says on which side of the limit values are allowed. With no uncertainty the infinities, 0 exactly on the limit.
 */
export function limitExcess(value: number, uncertainty: number, limit: number, side: 'at most' | 'at least' = 'at most'): number {
  const beyond = side === 'at most' ? value - limit : limit - value;
  if (uncertainty > 0) return beyond / uncertainty;
  return beyond === 0 ? 0 : Math.sign(beyond) * Infinity;
}
