import { describe, expect, test } from 'vitest';
import { judge } from '../../src/harmony/index.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { cabinSeries, forecastWords } from '../../src/series/index.ts';
import type { CabinSeries } from '../../src/series/index.ts';
import { normalGenerator } from '../readings/support/simulation.ts';
import type { PlannedLot } from './support/lot-cabin.ts';
import { dayOf, lotCabin } from './support/lot-cabin.ts';

const [book] = builtInRuleBooks;
const lab = [30, 0.4, -1] as const;
const lotsOf = (name: string, count: number, every: number, gloss: (lot: number) => number): PlannedLot[] =>
  Array.from({ length: count }, (_, lot) => ({ id: `${name}${lot}`, day: every * lot, lab, gloss: gloss(lot) }));
const follow = (first: readonly PlannedLot[], second: readonly PlannedLot[], more = {}): Promise<CabinSeries> => cabinSeries(lotCabin(first, second, more), book, { mostPairsOfLots: 0, aheadDays: 1000 });
const glossOf = ({ joints }: CabinSeries) => joints.find(({ check }) => check === 'gloss');

describe('gloss that drifts', () => {
  // 2.0 GU and 0.0052 GU a day more, beside 2.0 GU: the limit of the book is reached where 0.0052 d = limit, lots reckoned from day 0, the latest of day 70.
  const rising = lotsOf('A', 8, 10, (lot) => 2 + 0.052 * lot);
  const still = lotsOf('B', 1, 1, () => 2);

  test('comes over its limit on the day that the line gives by hand, from the gloss that it has', async () => {
    const cabin = lotCabin(rising, still);
    const limit = judge(cabin, book).joints[0].checks.find(({ check }) => check === 'gloss')!.limit!;
    const found = await follow(rising, still);
    const forecast = glossOf(found)!;
    expect(forecast).toMatchObject({ state: 'will clash', angle: 60, unit: 'day', from: dayOf(70), when: { ahead: Math.ceil(limit / 0.0052) - 70, day: dayOf(Math.ceil(limit / 0.0052)) } });
    expect(forecast.now!.value).toBeCloseTo(0.364, 9);
    expect(forecast.now!.use).toBeCloseTo(0.364 / limit, 9);
    expect(forecast.sides.map(({ course }) => course)).toEqual(['trend', 'as it stands']);
    expect(found.first).toBe('a-b');
    expect(forecastWords(forecast, 'A and B', { days: 1000, lots: 12 })).toMatch(/the gloss at 60° comes over its limit on \d{4}-\d\d-\d\d/);
    expect(found.words.join(' ')).not.toContain('Without a trend nothing is forecast');
  });

  test('the band of the line is that of least squares, by Student’s t from a table', async () => {
    const forecast = glossOf(await follow(rising, still))!;
    // The lots lie on the line, so that only what is assumed for a reading is uncertain: pooled with 8 lots of 3 and one of 3 spots that were all alike, each side by its own.
    const { priorReadings } = book.assumed;
    const { glossSd: sd } = book.materials.find(({ material }) => material === 'moulded')!;
    const ofLot = (priorReadings * sd * sd) / (priorReadings + 8 * 2) / 3;
    const ofStill = (priorReadings * sd * sd) / (priorReadings + 2) / 3;
    const line = ofLot * (1 / 8 + (70 - 35) ** 2 / (100 * 42));
    const freedom = Math.floor((line + ofStill) ** 2 / (line ** 2 / 6));
    // Student's t 0.975, of a table: 1.972 for 200 degrees of freedom, 1.966 for 400.
    expect(freedom).toBeGreaterThan(200);
    expect(freedom).toBeLessThan(400);
    const t = 1.969;
    const { most, least } = forecast.course![0]!;
    expect((most - least) / 2).toBeCloseTo((t * Math.sqrt(line + ofStill)) / (forecast.now!.value / forecast.now!.use), 3);
  });

  test('is not forecast where no side has a trend, where it is not to match, or without gloss of its own', async () => {
    expect(glossOf(await follow(lotsOf('A', 8, 10, (lot) => 2 + 0.05 * ((lot * 5) % 3)), still))).toBeUndefined();
    const { joints } = lotCabin(rising, still);
    expect(glossOf(await follow(rising, still, { joints: joints.map((joint) => ({ ...joint, intent: { gloss: 'free' } })) }))).toBeUndefined();
    expect(glossOf(await follow(rising, still, { joints: joints.map((joint) => ({ ...joint, intent: { gloss: 'contrast' } })) }))).toBeUndefined();
  });

  test('lots without days are told in lots', async () => {
    const undated = rising.map(({ day: _, ...lot }) => lot);
    const forecast = glossOf(await follow(undated, still))!;
      expect(forecast).toMatchObject({ unit: 'lot', when: { ahead: 3 } });
  });
});

/** Lots that drift by a known line, drawn over and over through the whole of the reckoning: how often the range holds the true day is counted. */
test('the range of a forecast of gloss holds the true day about as often as its confidence says', async () => {
  const normal = normalGenerator(506);
  const rounds = 300;
  // 2.0 GU and 0.01 GU a day beside a mean of 2.2 GU: 0.5 GU apart on day 70, 30 days after the latest lot.
  const trueAhead = 30;
  let [held, called, sum] = [0, 0, 0];
  for (let round = 0; round < rounds; round += 1) {
    const forecast = glossOf(await follow(lotsOf('A', 9, 5, (lot) => 2 + 0.05 * lot + 0.06 * normal()), lotsOf('B', 6, 7, () => 2.2 + 0.06 * normal())));
    if (forecast?.when === undefined) continue;
    called += 1;
    sum += forecast.when.ahead;
    if (forecast.earliest!.ahead <= trueAhead && trueAhead <= (forecast.latest?.ahead ?? Infinity)) held += 1;
  }
  expect(called).toBeGreaterThan(0.99 * rounds);
  // 95 % of 300 rounds has a standard error of 1.3 %.
  expect(held / called).toBeGreaterThan(0.915);
  expect(held / called).toBeLessThan(0.99);
  expect(Math.abs(sum / called - trueAhead)).toBeLessThan(3);
}, 120_000);
