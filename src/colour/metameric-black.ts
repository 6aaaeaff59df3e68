import { inverse3, transform } from './three-by-three.ts';
import { spectrumToXyz } from './tristimulus.ts';
import type { Weights } from './weights.ts';

/**
 * The trial spectrum corrected to match the standard exactly under the weights: fundamental of the standard, metameric black of the trial.
 *
 * N' = P Ns + (I - P) Nb with P = A (A'A)^-1 A', A the n x 3 weights. All NaN where the weights do not span three dimensions
 * (fewer than three bands).
 * Source: J. B. Cohen, W. E. Kappauf, American Journal of Psychology 95 (1982) 537-564 (matrix R);
 * H. S. Fairman, Color Research and Application 12 (1987) 261-265; ISO 18314-4:2024, 8.3.3.
 */
export function parametricMatch(standard: ArrayLike<number>, trial: ArrayLike<number>, weights: Weights): Float64Array {
  const count = weights.y.length;
  const gap = new Float64Array(count);
  for (let i = 0; i < count; i += 1) gap[i] = standard[i] - trial[i];
  const [u, v, w] = transform(gramInverse(weights), spectrumToXyz(gap, weights));
  const matched = new Float64Array(count);
  for (let i = 0; i < count; i += 1) matched[i] = trial[i] + weights.x[i] * u + weights.y[i] * v + weights.z[i] * w;
  return matched;
}

const known = new WeakMap<Weights, readonly number[]>();

/** (A'A)^-1; weights are few and live long. */
function gramInverse(weights: Weights): readonly number[] {
  const made = known.get(weights);
  if (made !== undefined) return made;
  const gram = [weights.x, weights.y, weights.z].flatMap((column) => spectrumToXyz(column, weights));
  const inverse = weights.y.length < 3 ? gram.map(() => NaN) : inverse3(gram);
  known.set(weights, inverse);
  return inverse;
}
