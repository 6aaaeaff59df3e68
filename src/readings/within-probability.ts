import { difference, localMetric } from '../colour/index.ts';
import type { DifferenceFormula } from '../colour/difference-formula.ts';
import type { Lab, Matrix3 } from '../quantities.ts';
import { ellipsoidProbability } from './ellipsoid-probability.ts';
import { labDifference, quadraticForm3 } from './matrix3.ts';
import { quasiNormal } from './quasi-normal.ts';
import { principalFactor } from './symmetric-matrix.ts';

const POINTS = 1024;
const SEED = 1;

/** Largest error of `withinProbability` met against 300 000 independent draws over 48 cases, rounded up. */
export const withinProbabilityError = 0.003;

/**
 * Probability that the difference of two colours is at most `limit`, for a difference d ~ N(trial - standard, covariance).
 * The two sides are taken at mean midpoint -+ d/2, since only the covariance of the difference is known.
 * CIELAB units squared for `covariance`, which may be zero or singular; 0..1; a negative limit gives 0.
 * The local quadratic form of the formula is integrated and 1024 seeded lattice points add what the formula differs
 * from it; exact to 1e-5 for `cie76`, else to `withinProbabilityError`. Deterministic.
 */
export function withinProbability(
  formula: DifferenceFormula, standard: Lab, trial: Lab, covarianceOfDifference: Matrix3, limit: number,
): number {
  if (!(limit >= 0)) return 0;
  const { rank, factor } = principalFactor(covarianceOfDifference, 3);
  if (rank === 0) return Number(difference(formula, standard, trial) <= limit);
  const mean = labDifference(standard, trial);
  const metric = localMetric(formula, standard, trial);
  const controlled = metric.every(Number.isFinite);
  const base = controlled ? ellipsoidProbability(mean, covarianceOfDifference, metric, limit) : 0;
  if (formula.name === 'cie76' && controlled) return base;

  const normals = quasiNormal(rank, POINTS, SEED);
  const first: [number, number, number] = [0, 0, 0];
  const second: [number, number, number] = [0, 0, 0];
  const d: [number, number, number] = [0, 0, 0];
  const square = limit * limit;
  let correction = 0;
  for (let row = 0; row < POINTS; row++) {
    for (let i = 0; i < 3; i++) {
      let moved = mean[i];
      for (let k = 0; k < rank; k++) moved += factor[i * rank + k] * normals[row * rank + k];
      const centre = 0.5 * (standard[i] + trial[i]);
      d[i] = moved;
      first[i] = centre - 0.5 * moved;
      second[i] = centre + 0.5 * moved;
    }
    if (difference(formula, first, second) <= limit) correction++;
    if (controlled && quadraticForm3(metric, d[0], d[1], d[2]) <= square) correction--;
  }
  return Math.min(1, Math.max(0, base + correction / POINTS));
}
