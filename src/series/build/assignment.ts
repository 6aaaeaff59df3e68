/** Which column each row is given, -1 for a row that is left over, with the sum of the costs. */
export interface Assignment {
  readonly columnOf: Int32Array;
  readonly cost: number;
}

/**
 * The assignment of least cost of so many rows to columns, each to at most one of the other: all of the shorter side where no number is
 * given. Costs are finite, row-major; exact where they and their sums are whole numbers below 2^53. Among equal ones the same is given every time.
 * Shortest augmenting paths with potentials: H. W. Kuhn, Naval Research Logistics Quarterly 2 (1955) 83; J. Munkres, J. SIAM 5 (1957) 32.
 * A number below that of the shorter side is reached with rows and columns that take what is left over at no cost.
 */
export function assign(costs: ArrayLike<number>, rows: number, columns: number, number = Math.min(rows, columns)): Assignment {
  const count = Math.max(0, Math.min(number, rows, columns));
  if (count === 0) return { columnOf: new Int32Array(rows).fill(-1), cost: 0 };
  const largest = Array.from(costs).reduce((most, cost) => Math.max(most, Math.abs(cost)), 1);
  const size = rows + columns - count;
  // A free row that took a free column would leave too few pairs: never worth it at this price.
  const never = 4 * largest * (count + 1);
  const padded = new Float64Array(size * size);
  for (let row = 0; row < size; row++) for (let column = 0; column < size; column++) {
    padded[row * size + column] = row < rows && column < columns ? costs[row * columns + column] : row >= rows && column >= columns ? never : 0;
  }
  const given = solveSquare(padded, size);
  const columnOf = Int32Array.from({ length: rows }, (_, row) => (given[row] < columns ? given[row] : -1));
  return { columnOf, cost: columnOf.reduce((sum, column, row) => (column < 0 ? sum : sum + costs[row * columns + column]), 0) };
}

/** Column of each row of a square problem. */
function solveSquare(costs: Float64Array, size: number): Int32Array {
  const ofRow = new Float64Array(size + 1);
  const ofColumn = new Float64Array(size + 1);
  /** Row that has a column, both counted from 1; 0 where none. */
  const rowAt = new Int32Array(size + 1);
  const cameFrom = new Int32Array(size + 1);
  for (let row = 1; row <= size; row++) {
    rowAt[0] = row;
    let column = 0;
    const reach = new Float64Array(size + 1).fill(Infinity);
    const settled = new Uint8Array(size + 1);
    do {
      settled[column] = 1;
      const from = rowAt[column];
      let step = Infinity;
      let next = 0;
      for (let j = 1; j <= size; j++) {
        if (settled[j] === 1) continue;
        const reduced = costs[(from - 1) * size + j - 1] - ofRow[from] - ofColumn[j];
        if (reduced < reach[j]) {
          reach[j] = reduced;
          cameFrom[j] = column;
        }
        if (reach[j] < step) {
          step = reach[j];
          next = j;
        }
      }
      for (let j = 0; j <= size; j++) {
        if (settled[j] === 1) {
          ofRow[rowAt[j]] += step;
          ofColumn[j] -= step;
        } else reach[j] -= step;
      }
      column = next;
    } while (rowAt[column] !== 0);
    while (column !== 0) {
      const before = cameFrom[column];
      rowAt[column] = rowAt[before];
      column = before;
    }
  }
  const given = new Int32Array(size);
  for (let column = 1; column <= size; column++) given[rowAt[column] - 1] = column - 1;
  return given;
}
