/** Eigenvalues, largest first, and the unit eigenvectors as the columns of a row-major n x n matrix. */
export interface SymmetricEigen {
  readonly values: Float64Array;
  readonly vectors: Float64Array;
}

/**
 * Eigen decomposition of a row-major symmetric n x n matrix by cyclic Jacobi rotations.
 * Only the mean of the two triangles counts, so that rounding cannot break the symmetry. Deterministic.
 * G. H. Golub and C. F. Van Loan, Matrix Computations, section 8.5.
 */
export function symmetricEigen(matrix: ArrayLike<number>, n: number): SymmetricEigen {
  const a = new Float64Array(n * n);
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    v[i * n + i] = 1;
    for (let j = 0; j < n; j++) a[i * n + j] = 0.5 * (matrix[i * n + j] + matrix[j * n + i]);
  }
  let total = 0;
  for (let i = 0; i < n * n; i++) total += a[i] * a[i];
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) off += a[i * n + j] * a[i * n + j];
    if (!(off > 1e-30 * total)) break;
    for (let p = 0; p < n - 1; p++) for (let q = p + 1; q < n; q++) rotate(a, v, n, p, q);
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => a[j * n + j] - a[i * n + i] || i - j);
  const values = new Float64Array(n);
  const vectors = new Float64Array(n * n);
  order.forEach((from, to) => {
    values[to] = a[from * n + from];
    for (let row = 0; row < n; row++) vectors[row * n + to] = v[row * n + from];
  });
  return { values, vectors };
}

function rotate(a: Float64Array, v: Float64Array, n: number, p: number, q: number): void {
  const apq = a[p * n + q];
  if (apq === 0) return;
  const theta = (a[q * n + q] - a[p * n + p]) / (2 * apq);
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const s = t * c;
  for (let k = 0; k < n; k++) {
    const akp = a[k * n + p];
    const akq = a[k * n + q];
    a[k * n + p] = c * akp - s * akq;
    a[k * n + q] = s * akp + c * akq;
  }
  for (let k = 0; k < n; k++) {
    const apk = a[p * n + k];
    const aqk = a[q * n + k];
    a[p * n + k] = c * apk - s * aqk;
    a[q * n + k] = s * apk + c * aqk;
    const vkp = v[k * n + p];
    const vkq = v[k * n + q];
    v[k * n + p] = c * vkp - s * vkq;
    v[k * n + q] = s * vkp + c * vkq;
  }
}

/** Factor F of a covariance, S = F F', with only as many columns as the covariance has numerical rank. */
export interface PrincipalFactor {
  readonly rank: number;
  /** Row-major n x rank, columns of falling variance. */
  readonly factor: Float64Array;
  readonly eigen: SymmetricEigen;
}

/**
 * Principal factor of a symmetric, possibly singular covariance.
 * Eigenvalues below `relativeTolerance` of the largest, and negative ones that rounding leaves, count as zero.
 */
export function principalFactor(covariance: ArrayLike<number>, n: number, relativeTolerance = 1e-10): PrincipalFactor {
  const eigen = symmetricEigen(covariance, n);
  const floor = Math.max(0, eigen.values[0] * relativeTolerance);
  let rank = 0;
  while (rank < n && eigen.values[rank] > floor) rank++;
  const factor = new Float64Array(n * rank);
  for (let column = 0; column < rank; column++) {
    const scale = Math.sqrt(eigen.values[column]);
    for (let row = 0; row < n; row++) factor[row * rank + column] = scale * eigen.vectors[row * n + column];
  }
  return { rank, factor, eigen };
}
