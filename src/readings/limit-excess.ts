import { difference, localMetric } from '../colour/index.ts';
import type { DifferenceFormula } from '../colour/difference-formula.ts';
import type { Lab, Matrix3 } from '../quantities.ts';
import { applyMatrix3, labDifference, multiplyMatrix3, traceMatrix3 } from './matrix3.ts';

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

/**
 * Largest eigenvalue of Q S, both symmetric and positive semidefinite: the largest root of their characteristic cubic, real because
 * Q S is similar to the symmetric Q^1/2 S Q^1/2. Relative error below 1e-7 where two roots meet, else that of rounding.
 * W. H. Press et al., Numerical Recipes, 3rd ed., section 5.6 (three real roots after F. Viete).
 */
export function largestSpread(metric: Matrix3, covariance: Matrix3): number {
  const m = multiplyMatrix3(metric, covariance);
  const mean = traceMatrix3(m) / 3;
  if (!(mean > 0)) return mean === 0 ? 0 : NaN;
  const minors = m[0] * m[4] - m[1] * m[3] + m[0] * m[8] - m[2] * m[6] + m[4] * m[8] - m[5] * m[7];
  const determinant = m[0] * (m[4] * m[8] - m[5] * m[7]) - m[1] * (m[3] * m[8] - m[5] * m[6]) + m[2] * (m[3] * m[7] - m[4] * m[6]);
  const p = Math.max(0, mean * mean - minors / 3);
  const q = mean * (mean * mean - minors / 2) + determinant / 2;
  const root = Math.sqrt(p);
  const cosine = p * root > 0 ? Math.min(1, Math.max(-1, q / (p * root))) : 1;
  return mean + 2 * root * Math.cos(Math.acos(cosine) / 3);
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
