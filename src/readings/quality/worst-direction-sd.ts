import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import { localMetric } from '../../colour/index.ts';
import type { Lab } from '../../quantities.ts';
import { principalFactor, symmetricEigen } from '../symmetric-matrix.ts';

/**
 * Standard deviation of a colour in the units of a difference formula, along the direction in which the formula sees it most.
 * `covariance` row-major 3 x 3 in L*, a*, b*; `at` the colour whose local metric Q is used. The root of the largest eigenvalue of F' Q F
 * with S = F F'. 0 for no spread.
 */
export function worstDirectionSd(covariance: ArrayLike<number>, formula: DifferenceFormula, at: Lab): number {
  const { rank, factor } = principalFactor(covariance, 3);
  if (rank === 0) return 0;
  const metric = localMetric(formula, at, at);
  const product = new Float64Array(rank * rank);
  for (let p = 0; p < rank; p++) for (let q = 0; q < rank; q++) {
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) product[p * rank + q] += factor[i * rank + p] * metric[3 * i + j] * factor[j * rank + q];
  }
  return Math.sqrt(Math.max(0, symmetricEigen(product, rank).values[0]));
}
