import type { LabColumns } from '../colour/batch/index.ts';
import type { DifferenceFormula } from '../colour/difference-formula.ts';
import { withinProbability } from './within-probability.ts';

/**
 * {@link withinProbability} of the pairs in the same places of two columns, as many as `into` has room for; gives `into`.
 * `covariances` holds nine numbers a pair, row-major, CIELAB units squared; `limits` one. A RangeError where one of them is too short.
 */
export function withinProbabilityBatch(
  formula: DifferenceFormula, standard: LabColumns, trial: LabColumns, covariances: Float64Array, limits: Float64Array, into: Float64Array,
): Float64Array {
  const pairs = into.length;
  if (covariances.length < 9 * pairs || limits.length < pairs || standard.L.length < pairs || trial.L.length < pairs) {
    throw new RangeError(`${covariances.length} entries of covariance, ${limits.length} limits and columns of ${standard.L.length} and ${trial.L.length} colours for ${pairs} pairs`);
  }
  for (let i = 0; i < pairs; i++) {
    const at = 9 * i;
    into[i] = withinProbability(formula, [standard.L[i], standard.a[i], standard.b[i]], [trial.L[i], trial.a[i], trial.b[i]], [
      covariances[at], covariances[at + 1], covariances[at + 2], covariances[at + 3], covariances[at + 4],
      covariances[at + 5], covariances[at + 6], covariances[at + 7], covariances[at + 8],
    ], limits[i]);
  }
  return into;
}
