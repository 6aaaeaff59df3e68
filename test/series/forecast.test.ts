import { differenceCiede2000 } from 'culori';
import { describe, expect, test } from 'vitest';
import type { Lab } from '../../src/quantities.ts';
import { judge } from '../../src/harmony/index.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { cabinSeries, forecastWords } from '../../src/series/index.ts';
import type { PlannedLot } from './support/lot-cabin.ts';
import { dayOf, lotCabin } from './support/lot-cabin.ts';

const [book] = builtInRuleBooks;
const culori = differenceCiede2000();
const apart = (p: Lab, q: Lab): number => culori({ mode: 'lab65', l: p[0], a: p[1], b: p[2] }, { mode: 'lab65', l: q[0], a: q[1], b: q[2] });

/** Eight lots every ten days, each a little yellower. */
const rising: PlannedLot[] = Array.from({ length: 8 }, (_, lot) => ({ id: `L${lot}`, day: 10 * lot, lab: [30, 0.4, -1 + 0.05 * lot] }));
const still: PlannedLot[] = [{ id: 'M1', day: 3, lab: [30, 0.4, -1], spots: 5 }];

describe('a line of lots against a part that stands still', () => {
  const cabin = lotCabin(rising, still);
  const limit = judge(cabin, book).joints[0].checks.find(({ check }) => check === 'colour')!.lights[0].limit!;
  const on = (day: number, slope = 0.005): Lab => [30, 0.4, -1 + slope * day];
  const valueOn = (day: number): number => apart(on(day), on(0));
  /** First day on which a rising function is above one, by halving. */
  const above = (of: (day: number) => number, most = 5000): number => {
    let [low, high] = [0, most];
    while (high - low > 1e-9) {
      const middle = (low + high) / 2;
      if (of(middle) > limit) high = middle;
      else low = middle;
    }
    return high;
  };

  test('comes over the limit on the day that culori says', async () => {
    const { joints: [forecast], first } = await cabinSeries(cabin, book, { aheadDays: 800 });
    const day = above(valueOn);
    expect(day).toBeGreaterThan(100);
    expect(forecast).toMatchObject({ state: 'will clash', unit: 'day', from: dayOf(70), beyondLots: true });
    expect(forecast.when).toEqual({ ahead: Math.ceil(day - 70), day: dayOf(70 + Math.ceil(day - 70)) });
    expect(forecast.now!.value).toBeCloseTo(valueOn(70), 6);
    expect(first).toBe('a-b');
    expect(forecastWords(forecast, 'A and B', { days: 800, lots: 12 })).toContain(`on ${forecast.when!.day}`);
  });

  test('the range is where the bands of the lines cross, reckoned by hand', async () => {
    const { joints: [forecast] } = await cabinSeries(cabin, book, { aheadDays: 2000 });
    const { priorReadings } = book.assumed;
    const sd = book.materials.find(({ material }) => material === 'moulded')!.readingSd[2];
    // All spots of a lot are alike: what is assumed for one reading, weighted against the spots seen (8 lots of 4; one of 5).
    const ofLot = (priorReadings * sd * sd) / (priorReadings + 8 * 3) / 4;
    const ofStill = (priorReadings * sd * sd) / (priorReadings + 4) / 5;
    const spread = 10 * 10 * 42;
    const half = (day: number): number => {
      const line = ofLot * (1 / 8 + (day - 35) ** 2 / spread);
      const h = 1e-3;
      const [p, q]: [Lab, Lab] = [on(day), on(0)];
      const slope = (apart([p[0], p[1], p[2] + h], q) - apart([p[0], p[1], p[2] - h], q)) / (2 * h);
      const freedom = Math.floor((line + ofStill) ** 2 / (line ** 2 / 6));
      // Student's t 0.975 from a table (6 to 30, then 40, 60, 120 and many): the nearest entries are kept to 0.3 %.
      const table: Record<number, number> = { 6: 2.447, 7: 2.365, 8: 2.306, 9: 2.262, 10: 2.228, 11: 2.201, 12: 2.179, 13: 2.16, 14: 2.145, 15: 2.131, 20: 2.086, 30: 2.042 };
      const t = table[freedom] ?? (freedom < 30 ? 2.1 : 2.0);
      return t * slope * Math.sqrt(line + ofStill);
    };
    const earliest = above((day) => valueOn(day) + half(day)) - 70;
    const latest = above((day) => valueOn(day) - half(day)) - 70;
    expect(Math.abs(forecast.earliest!.ahead - earliest)).toBeLessThan(2 + 0.02 * earliest);
    expect(Math.abs(forecast.latest!.ahead - latest)).toBeLessThan(2 + 0.02 * latest);
    expect(forecast.earliest!.ahead).toBeLessThan(forecast.when!.ahead);
    expect(forecast.latest!.ahead).toBeGreaterThan(forecast.when!.ahead);
  });

  test('two parts that drift alike stay together, two that drift apart clash in half the time', async () => {
    const alike = await cabinSeries(lotCabin(rising, rising), book, { aheadDays: 800 });
    expect(alike.joints[0].state).toBe('stays within');
    expect(alike.first).toBeUndefined();
    const falling = rising.map((lot, index): PlannedLot => ({ ...lot, lab: on(10 * index, -0.005) }));
    const apartDay = above((day) => apart(on(day), on(day, -0.005)));
    const { joints: [forecast] } = await cabinSeries(lotCabin(rising, falling), book, { aheadDays: 800 });
    expect(forecast.when!.ahead).toBe(Math.ceil(apartDay - 70));
  });

  test('lightness alone comes over its own limit of 0.7 on the 138th day at 0.0051 a day', async () => {
    const lighter = rising.map((lot, index): PlannedLot => ({ ...lot, lab: [30 + 0.051 * index, 0.4, -1] }));
    const { joints: [forecast] } = await cabinSeries(lotCabin(lighter, still), book);
    // 0.7 / 0.0051 = 137.25: day 138 is the first above, 68 after the last lot. That lot is at 0.357 of 0.7.
    expect(forecast).toMatchObject({ when: { ahead: 68, day: dayOf(138) }, there: { criterion: 'dL*', limit: 0.7, light: 'D65' } });
    expect(forecast.now!.use).toBeCloseTo(0.51, 9);
  });

  test('what is over its limit already is said so; what is not reached is not dated', async () => {
    const steep = rising.map((lot, index): PlannedLot => ({ ...lot, lab: on(10 * index, 0.05) }));
    expect((await cabinSeries(lotCabin(steep, still), book)).joints[0].state).toBe('over its limit');
    const { joints: [short] } = await cabinSeries(cabin, book, { aheadDays: 10 });
    expect(short.state).toBe('stays within');
    expect(short.when).toBeUndefined();
  });
});

describe('where no date is given', () => {
  test('four lots are too few, however clear their line', async () => {
    const { joints: [forecast], parts: [part], words } = await cabinSeries(lotCabin(rising.slice(0, 4), still), book);
    expect(forecast.state).toBe('too few lots');
    expect(forecast.when).toBeUndefined();
    expect(part.trend).toEqual({ state: 'too few lots', wanted: 5 });
    expect(words.join(' ')).toContain('nothing is forecast');
  });

  test('lots that only scatter have no trend', async () => {
    // Up and down by turns: the slope of the eight is 0 by hand but for a small rest, the scatter large.
    const scattered = rising.map((lot, index): PlannedLot => ({ ...lot, lab: [30 + 0.4 * (index % 2) + 0.1 * (index % 3), 0.4 + 0.2 * (index % 3), -1 + 0.3 * ((index * index) % 5)] }));
    const { joints: [forecast] } = await cabinSeries(lotCabin(scattered, still), book);
    expect(forecast.state).toBe('no trend');
    expect(forecast.when).toBeUndefined();
    expect(forecast.sides.map(({ course }) => course).sort()).toEqual(['as it stands', 'mean of lots']);
  });

  test('a contrast is not forecast, nor sides that were read unlike', async () => {
    const contrast = lotCabin(rising, still, { joints: [{ id: 'a-b', parts: ['a', 'b'], kind: 'gap', intent: { colour: 'contrast' } }] });
    expect((await cabinSeries(contrast, book)).joints[0]).toMatchObject({ state: 'not judged', reason: 'the intent for colour is contrast' });
    const unlike = lotCabin(rising, [{ ...still[0], conditions: 'sphere' }]);
    expect((await cabinSeries(unlike, book)).joints[0].state).toBe('not judged');
  });

  test('without days the lots are counted', async () => {
    const undated = rising.map(({ day: _, ...lot }) => lot);
    const { joints: [forecast], parts: [part] } = await cabinSeries(lotCabin(undated, still), book, { aheadLots: 60 });
    expect(part.unit).toBe('lot');
    expect(part.trend.slope![2]).toBeCloseTo(0.05, 9);
    expect(forecast).toMatchObject({ state: 'will clash', unit: 'lot' });
    expect(forecast.when!.day).toBeUndefined();
  });
});
