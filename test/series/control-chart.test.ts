import { inv, matrix, multiply } from 'mathjs';
import { expect, test } from 'vitest';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { chartedByKnown, chartOfLots } from '../../src/series/control/control-chart.ts';
import { cabinSeries, partWords } from '../../src/series/index.ts';
import { normalGenerator } from '../readings/support/simulation.ts';
import type { PlannedLot } from './support/lot-cabin.ts';
import { lotCabin } from './support/lot-cabin.ts';

const [book] = builtInRuleBooks;

test('T2 of a published example', () => {
  // Perspiration of 20 women, mean (4.640, 45.400, 9.965) against (4, 50, 10): T2 = 9.74. R. A. Johnson and D. W. Wichern, Applied Multivariate
  // Statistical Analysis, example 5.2, figures from memory.
  const covariance = [2.879, 10.010, -1.810, 10.010, 199.788, -5.640, -1.810, -5.640, 3.628].map((entry) => entry / 20);
  expect(chartedByKnown([0.64, -4.6, -0.035], covariance, 0.95)!.statistic).toBeCloseTo(9.74, 2);
  // Chi-square 0.95 with three degrees of freedom, any table: 7.815.
  expect(chartedByKnown([0.64, -4.6, -0.035], covariance, 0.95)).toMatchObject({ against: 'known', outside: true });
  expect(chartedByKnown([0.64, -4.6, -0.035], covariance, 0.95)!.limit).toBeCloseTo(7.815, 3);
});

test('T2 of lots among their own is what the definition gives, and sums to p (m - 1)', () => {
  const normal = normalGenerator(3);
  const lots = Array.from({ length: 10 }, () => [normal(), 2 * normal(), normal() + 1]);
  const charted = chartOfLots([...lots, [0, 0, 6]], 10, 0.9973)!;
  const mean = [0, 1, 2].map((i) => lots.reduce((sum, lot) => sum + lot[i] / 10, 0));
  const kept = inv(matrix([0, 1, 2].map((i) => [0, 1, 2].map((j) => lots.reduce((sum, lot) => sum + (lot[i] - mean[i]) * (lot[j] - mean[j]), 0) / 9))));
  [...lots, [0, 0, 6]].forEach((lot, index) => {
    const departure = lot.map((entry, i) => entry - mean[i]);
    expect(charted[index].statistic).toBeCloseTo(Number(multiply(multiply(departure, kept), departure)), 9);
  });
  // The sum of the T2 of m lots about their own mean is p (m - 1): the trace of an idempotent matrix.
  expect(charted.slice(0, 10).reduce((sum, { statistic }) => sum + statistic, 0)).toBeCloseTo(27, 9);
  // Limits for ten lots at 99.73 %: 7.219 among their own, 57.22 for a further one (scipy).
  expect(charted[0].limit).toBeCloseTo(7.219, 3);
  expect(charted[10].limit).toBeCloseTo(57.22, 2);
  expect(charted.map(({ against }) => against)).toEqual([...Array<string>(10).fill('own lot'), 'new lot']);
});

test('there is no chart of four lots, nor of lots in a plane', () => {
  const normal = normalGenerator(9);
  const lots = Array.from({ length: 8 }, () => [normal(), normal(), normal()]);
  expect(chartOfLots(lots, 4, 0.95)).toBeUndefined();
  expect(chartOfLots(lots, 5, 0.95)).toHaveLength(8);
  expect(chartOfLots(lots.map(([L, a]) => [L, a, L + a]), 8, 0.95)).toBeUndefined();
});

/** Nine lots that scatter, the last far from them in b*. */
const normal = normalGenerator(21);
const lots: PlannedLot[] = Array.from({ length: 9 }, (_, lot) => ({ id: `L${lot}`, day: 7 * lot, lab: [30 + 0.1 * normal(), 0.4 + 0.05 * normal(), lot === 8 ? 1 : -1 + 0.05 * normal()] }));
const still: PlannedLot[] = [{ id: 'M1', day: 3, lab: [30, 0.4, -1] }];

test('a part whose last lot is another colour: found by the limits of the first eight, and by its own limits', async () => {
  const { parts: [part] } = await cabinSeries(lotCabin(lots, still), book, { base: 8, confidence: 0.9973 });
  expect(part.chart).toMatchObject({ reference: 'lots', base: 8, outside: ['L8'] });
  expect(part.lots[8].charted).toMatchObject({ against: 'new lot', outside: true });
  expect(part.lots[8].words).toContain('yellower');
  expect(partWords(part).join(' ')).toContain('L8');
  const all = (await cabinSeries(lotCabin(lots, still), book)).parts[0];
  expect(all.chart.base).toBe(9);
  expect(all.lots.every(({ charted }) => charted?.against === 'own lot')).toBe(true);
});

test('few lots and no master: words in place of a chart', async () => {
  const { parts: [part] } = await cabinSeries(lotCabin(lots.slice(0, 3), still), book);
  expect(part.chart.reason).toContain('it takes 5 at least');
  expect(part.lots.every(({ charted }) => charted === undefined)).toBe(true);
});

test('few lots and a master: against it, by what readings leave uncertain', async () => {
  const master = { id: 'm', kind: 'master' as const, readings: [{ quantity: 'cielab' as const, spot: { name: 's' }, conditions: 'annular', lab: [30, 0.4, -1] as const, light: 'D65', observer: 10 as const }] };
  const cabin = lotCabin([{ id: 'P', day: 1, lab: [30.05, 0.4, -1] }, { id: 'Q', day: 9, lab: [32, 0.4, -1] }], still, { masters: [master] });
  const held = { ...cabin, parts: cabin.parts.map((part) => (part.id === 'a' ? { ...part, target: { master: 'm' } } : part)) };
  const { parts: [part] } = await cabinSeries(held, book);
  expect(part.chart).toMatchObject({ reference: 'master', master: 'm', outside: ['Q'] });
  expect(part.lots.map(({ charted }) => charted?.against)).toEqual(['known', 'known']);
});
