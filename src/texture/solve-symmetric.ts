/**
 * Solves A x = b for a symmetric positive semidefinite A, row by row in one array, by Cholesky's factors.
 *
 * A variable that the ones before it determine (pivot below 1e-12 of its diagonal) is left at 0.
 * Source: G. H. Golub, C. F. Van Loan, Matrix Computations, section 4.2.
 */
export function solveSymmetric(matrix: Float64Array, right: Float64Array): Float64Array {
  const size = right.length;
  const factor = new Float64Array(size * size);
  const free = new Uint8Array(size);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let sum = matrix[row * size + column];
      for (let inner = 0; inner < column; inner += 1) sum -= factor[row * size + inner] * factor[column * size + inner];
      if (column < row) factor[row * size + column] = free[column] ? sum / factor[column * size + column] : 0;
      else if (sum > 1e-12 * matrix[row * size + row]) {
        free[row] = 1;
        factor[row * size + row] = Math.sqrt(sum);
      }
    }
  }
  const solution = Float64Array.from(right);
  for (let row = 0; row < size; row += 1) {
    for (let inner = 0; inner < row; inner += 1) solution[row] -= factor[row * size + inner] * solution[inner];
    solution[row] = free[row] ? solution[row] / factor[row * size + row] : 0;
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    for (let inner = row + 1; inner < size; inner += 1) solution[row] -= free[inner] ? factor[inner * size + row] * solution[inner] : 0;
    solution[row] = free[row] ? solution[row] / factor[row * size + row] : 0;
  }
  return solution;
}
