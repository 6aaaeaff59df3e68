import type { Nanometres } from '../quantities.ts';
import type { Products, WeightingTable } from './weighting-table.ts';
import { addRow, emptyTable, normalise } from './weighting-table.ts';

/** Lagrange coefficients of the nodes `0..nodes - 1` at a position. */
const lagrange = (nodes: number, position: number): number[] => Array.from({ length: nodes }, (_, i) => {
  let coefficient = 1;
  for (let j = 0; j < nodes; j += 1) {
    if (j !== i) coefficient *= (position - j) / (i - j);
  }
  return coefficient;
});

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
  const steps = Array.from({ length: stepNm + 1 }, (_, i) => i / stepNm);
  const first = steps.map((share) => lagrange(3, share));
  const inner = steps.map((share) => lagrange(4, 1 + share));
  const last = steps.map((share) => lagrange(3, 1 + share));
  for (let i = 0; i <= intervals * stepNm; i += 1) {
    const interval = Math.min(Math.floor(i / stepNm), intervals - 1);
    const kind = interval === 0 ? first : interval === intervals - 1 ? last : inner;
    const coefficients = kind[i - interval * stepNm];
    const from = Math.max(0, interval - 1);
    for (let node = 0; node < coefficients.length; node += 1) addRow(table, from + node, products, i, coefficients[node]);
  }
  normalise(table);
  return table;
}
