import { difference, localMetric } from '../colour/index.ts';
import type { DifferenceFormula } from '../colour/difference-formula.ts';
import type { Lab, Matrix3 } from '../quantities.ts';
import { ellipsoidProbability } from './ellipsoid-probability.ts';
import { labDifference, quadraticForm3 } from './matrix3.ts';
import { quasiNormal } from './quasi-normal.ts';
import { principalFactor } from './symmetric-matrix.ts';

const POINTS = 1024;
const SEED = 1;
/** Odd, so that both halves of the antithetic pairs are met. */
const PILOT_STRIDE = 17;

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
  /** Places both sides for one draw and gives the local form's value. */
  const place = (row: number): number => {
    for (let i = 0; i < 3; i++) {
      let moved = mean[i];
      for (let k = 0; k < rank; k++) moved += factor[i * rank + k] * normals[row * rank + k];
      const centre = 0.5 * (standard[i] + trial[i]);
      first[i] = centre - 0.5 * moved;
      second[i] = centre + 0.5 * moved;
    }
    return controlled ? Math.sqrt(Math.max(0, quadraticForm3(metric, second[0] - first[0], second[1] - first[1], second[2] - first[2]))) : Infinity;
  };
  // Farther from the limit than four times what form and formula differ by in the pilot rows, both say the same.
  let band = 0;
  for (let row = 0; row < POINTS; row += PILOT_STRIDE) band = Math.max(band, 4 * Math.abs(place(row) - difference(formula, first, second)));
  let correction = 0;
  for (let row = 0; row < POINTS; row++) {
    const form = place(row);
    if (Math.abs(form - limit) > band) continue;
    if (difference(formula, first, second) <= limit) correction++;
    if (form <= limit) correction--;
  }
  return Math.min(1, Math.max(0, base + correction / POINTS));
}
