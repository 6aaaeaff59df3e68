import type { Nanometres } from '../quantities.ts';

/** Tristimulus weights of evenly spaced wavelengths, summing to Y = 100 in `y`. */
export interface WeightingTable {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

/** Light times colour-matching functions at every nanometre. */
export interface Products extends WeightingTable {
  readonly startNm: Nanometres;
}

export const emptyTable = (count: number): WeightingTable =>
  ({ x: new Float64Array(count), y: new Float64Array(count), z: new Float64Array(count) });

/** Adds a share of one row to a row of another table. */
export function addRow(target: WeightingTable, row: number, source: WeightingTable, sourceRow: number, share: number): void {
  target.x[row] += share * source.x[sourceRow];
  target.y[row] += share * source.y[sourceRow];
  target.z[row] += share * source.z[sourceRow];
}

/** Scales a table so that its y column sums to 100. */
export function normalise(table: WeightingTable): void {
  const scale = 100 / table.y.reduce((sum, value) => sum + value, 0);
  for (const column of [table.x, table.y, table.z]) {
    for (let i = 0; i < column.length; i += 1) column[i] *= scale;
  }
}
