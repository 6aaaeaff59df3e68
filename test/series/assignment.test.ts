import { expect, test } from 'vitest';
import { assign } from '../../src/series/build/assignment.ts';
import { generator } from '../readings/support/simulation.ts';

/** Least sum over all ways to take so many pairs, by trying every one. */
function byTrying(costs: readonly number[], rows: number, columns: number, number: number): number {
  let best = Infinity;
  const taken = new Set<number>();
  const go = (row: number, left: number, sum: number): void => {
    if (left === 0) {
      best = Math.min(best, sum);
      return;
    }
    if (rows - row < left) return;
    go(row + 1, left, sum);
    for (let column = 0; column < columns; column++) {
      if (taken.has(column)) continue;
      taken.add(column);
      go(row + 1, left - 1, sum + costs[row * columns + column]);
      taken.delete(column);
    }
  };
  go(0, number, 0);
  return best;
}

test('500 seeded problems, rectangular and with pairs left over, cost what trying every way finds', () => {
  const random = generator(11);
  for (let round = 0; round < 500; round++) {
    const rows = 1 + Math.floor(6 * random());
    const columns = 1 + Math.floor(6 * random());
    const number = round % 3 === 0 ? Math.min(rows, columns) : 1 + Math.floor(Math.min(rows, columns) * random());
    // Small whole numbers make many equal ways; now and then costs below zero.
    const costs = Array.from({ length: rows * columns }, () => Math.floor((round % 2 === 0 ? 6 : 1000) * random()) - (round % 5 === 0 ? 3 : 0));
    const { columnOf, cost } = assign(costs, rows, columns, number);
    const given = [...columnOf].filter((column) => column >= 0);
    expect(given).toHaveLength(number);
    expect(new Set(given).size).toBe(number);
    expect(cost).toBe(byTrying(costs, rows, columns, number));
  }
});

test('a worked example of four workers and four jobs, as in lecture notes on the method, from memory: the least is 13', () => {
  const costs = [9, 2, 7, 8, 6, 4, 3, 7, 5, 8, 1, 8, 7, 6, 9, 4];
  const { columnOf, cost } = assign(costs, 4, 4);
  expect(cost).toBe(13);
  expect([...columnOf]).toEqual([1, 0, 2, 3]);
});

test('nothing to assign', () => {
  expect(assign([], 0, 3)).toMatchObject({ cost: 0 });
  expect([...assign([1, 2], 2, 1, 0).columnOf]).toEqual([-1, -1]);
});
