import { inverse3, transform } from './three-by-three.ts';
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
  const columns = [weights.x, weights.y, weights.z];
  const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
    let sum = 0;
    for (let i = 0; i < weights.y.length; i += 1) sum += a[i] * b[i];
    return sum;
  };
  const gap = Float64Array.from(weights.y, (_, i) => standard[i] - trial[i]);
  const gram = columns.flatMap((a) => columns.map((b) => dot(a, b)));
  const inverse = weights.y.length < 3 ? gram.map(() => NaN) : inverse3(gram);
  const [u, v, w] = transform(inverse, [dot(weights.x, gap), dot(weights.y, gap), dot(weights.z, gap)]);
  return Float64Array.from(weights.y, (_, i) => trial[i] + weights.x[i] * u + weights.y[i] * v + weights.z[i] * w);
}
