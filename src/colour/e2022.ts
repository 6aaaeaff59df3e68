import type { Nanometres } from '../quantities.ts';
import type { Products, WeightingTable } from './weighting-table.ts';
import { addRow, emptyTable, normalise } from './weighting-table.ts';

/** Lagrange coefficient of node `i` of `0..nodes - 1` at a position. */
function lagrange(i: number, nodes: number, position: number): number {
  let coefficient = 1;
  for (let j = 0; j < nodes; j += 1) {
    if (j !== i) coefficient *= (position - j) / (i - j);
  }
  return coefficient;
}

/**
 * Weights of a coarse grid that begins with the 1 nm products and ends with them.
 *
 * Every product is spread over the nodes around it by Lagrange coefficients: cubic inside, quadratic in the first and the last interval.
 * For data already corrected for bandpass. The step in whole nm, four nodes or more.
 * Source: ASTM E2022-11, the practice behind Tables 5 of ASTM E308-15.
 */
export function e2022Weights(products: Products, stepNm: Nanometres): WeightingTable {
  const intervals = Math.floor((products.y.length - 1) / stepNm);
  const table = emptyTable(intervals + 1);
  for (let i = 0; i <= intervals * stepNm; i += 1) {
    const interval = Math.min(Math.floor(i / stepNm), intervals - 1);
    const outer = interval === 0 || interval === intervals - 1;
    const nodes = outer ? 3 : 4;
    const first = interval === 0 ? 0 : interval - 1;
    for (let node = 0; node < nodes; node += 1) {
      addRow(table, first + node, products, i, lagrange(node, nodes, i / stepNm - first));
    }
  }
  normalise(table);
  return table;
}
