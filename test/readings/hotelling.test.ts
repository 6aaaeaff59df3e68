import { expect, test } from 'vitest';
import { hotellingLimit, type HotellingCase } from '../../src/readings/hotelling.ts';
import { incompleteBeta } from '../../src/readings/incomplete-beta.ts';
import { recordsOf, referenceTable } from '../support/reference-table.ts';

const limits = recordsOf(referenceTable('hotelling/limits.csv'));
const caseOf = (row: Record<string, string>): HotellingCase => {
  const kind = row['case'] as HotellingCase['kind'];
  const m = Number(row['m']);
  return kind === 'known' ? { kind } : kind === 'two lots' ? { kind, readings: m } : { kind, lots: m };
};

test.each(limits)('$case, $p coordinates, m $m, confidence $confidence', (row) => {
  const limit = hotellingLimit(caseOf(row), Number(row['p']) as 1 | 3, Number(row['confidence']));
  expect(Math.abs(limit! / Number(row['limit']) - 1)).toBeLessThan(2e-7);
});

// Tables of chi-square and F in any handbook of statistics: chi-square 0.95 with 3 degrees 7.815; F 0.95 with 3 and 17 degrees 3.20.
test('handbook tables', () => {
  expect(hotellingLimit({ kind: 'known' }, 3, 0.95)).toBeCloseTo(7.815, 3);
  expect(hotellingLimit({ kind: 'known' }, 2, 0.95)).toBeCloseTo(5.991, 3);
  expect(hotellingLimit({ kind: 'new lot', lots: 20 }, 3, 0.95)! / ((3 * 21 * 19) / (20 * 17))).toBeCloseTo(3.197, 3);
});

test('a lot among its own is held to less than a further one, and both come to the known covariance', () => {
  const at = (lots: number) => [hotellingLimit({ kind: 'own lot', lots }, 3, 0.99)!, hotellingLimit({ kind: 'new lot', lots }, 3, 0.99)!];
  for (const lots of [6, 12, 40]) expect(at(lots)[0]).toBeLessThan(at(lots)[1]!);
  for (const limit of at(20_000)) expect(limit).toBeCloseTo(hotellingLimit({ kind: 'known' }, 3, 0.99)!, 1);
});

test('there is no limit with too few lots or readings, or outside of a confidence', () => {
  for (const lots of [0, 3, 4, 4.5, Number.NaN]) expect(hotellingLimit({ kind: 'new lot', lots }, 3, 0.95)).toBeUndefined();
  for (const confidence of [0, 1, -1, Number.NaN]) expect(hotellingLimit({ kind: 'known' }, 3, confidence)).toBeUndefined();
});

test('the incomplete beta function at its ends, by symmetry and in closed form', () => {
  expect([incompleteBeta(0, 1.5, 2), incompleteBeta(1, 1.5, 2)]).toEqual([0, 1]);
  // I(x; 1, b) = 1 - (1 - x)^b and I(x; a, 1) = x^a.
  for (const x of [0.01, 0.3, 0.77, 0.999]) {
    expect(incompleteBeta(x, 1, 7.5)).toBeCloseTo(1 - (1 - x) ** 7.5, 12);
    expect(incompleteBeta(x, 4.5, 1)).toBeCloseTo(x ** 4.5, 12);
    expect(incompleteBeta(x, 1.5, 8.5) + incompleteBeta(1 - x, 8.5, 1.5)).toBeCloseTo(1, 12);
  }
  for (const [x, a, b] of [[-0.1, 1, 1], [1.1, 1, 1], [0.5, 0, 1], [0.5, 1.2, 1], [Number.NaN, 1, 1]] as const) expect(incompleteBeta(x, a, b)).toBeNaN();
});
