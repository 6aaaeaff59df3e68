/**
 * Factors L D L' of D2'D2 + ridge I, D2 the second differences of n values: a matrix with two bands on each side.
 */
export interface CurvatureFactors {
  readonly diagonal: Float64Array;
  /** `first[i]` couples i and i - 1, `second[i]` i and i - 2. */
  readonly first: Float64Array;
  readonly second: Float64Array;
}

/** Entry of D2'D2 on diagonal `offset` (0, 1, 2) below row `i`: the second differences that both values take part in. */
function curvatureEntry(count: number, i: number, offset: number): number {
  const kernel = [1, -2, 1];
  let sum = 0;
  for (let start = Math.max(0, i - 2); start <= Math.min(i, count - 3); start += 1) {
    const own = i - start;
    const other = own - offset;
    if (other >= 0) sum += kernel[own] * kernel[other];
  }
  return sum;
}

/** Source: banded Cholesky factorisation without roots, G. H. Golub and C. F. Van Loan, Matrix Computations, 4.3. */
export function factoriseCurvature(count: number, ridge: number): CurvatureFactors {
  const diagonal = new Float64Array(count);
  const first = new Float64Array(count);
  const second = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    if (i >= 2) second[i] = curvatureEntry(count, i, 2) / diagonal[i - 2];
    if (i >= 1) {
      const shared = i >= 2 ? second[i] * diagonal[i - 2] * first[i - 1] : 0;
      first[i] = (curvatureEntry(count, i, 1) - shared) / diagonal[i - 1];
    }
    diagonal[i] = curvatureEntry(count, i, 0) + ridge
      - (i >= 1 ? first[i] ** 2 * diagonal[i - 1] : 0)
      - (i >= 2 ? second[i] ** 2 * diagonal[i - 2] : 0);
  }
  return { diagonal, first, second };
}

/** Solves the factored system for one right-hand side. */
export function solveCurvature({ diagonal, first, second }: CurvatureFactors, rightHandSide: ArrayLike<number>): Float64Array {
  const count = diagonal.length;
  const x = Float64Array.from(rightHandSide);
  for (let i = 1; i < count; i += 1) x[i] -= first[i] * x[i - 1] + (i >= 2 ? second[i] * x[i - 2] : 0);
  for (let i = 0; i < count; i += 1) x[i] /= diagonal[i];
  for (let i = count - 2; i >= 0; i -= 1) x[i] -= first[i + 1] * x[i + 1] + (i + 2 < count ? second[i + 2] * x[i + 2] : 0);
  return x;
}
