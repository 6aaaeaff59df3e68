import { expect, test } from 'vitest';
import { firstAbove, useAt } from '../../src/series/forecast/crossing.ts';
import type { PairCourse } from '../../src/series/forecast/crossing.ts';
import { fitTrend, trendAt } from '../../src/series/trend/fit-trend.ts';
import type { Matrix3 } from '../../src/quantities.ts';
import { normalGenerator } from '../readings/support/simulation.ts';

const matrixOf = (m: ArrayLike<number>): Matrix3 => [m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8]];

/** Lots that drift by known lines, drawn over and over: the truth is known, so that it can be counted how often the range holds it. */
test('the range of a forecast holds the true day about as often as its confidence says', () => {
  const normal = normalGenerator(404);
  const rounds = 400;
  const noise = [4e-4, 0, 0, 0, 4e-4, 0, 0, 0, 4e-4];
  // b* rises by 0.01 a day from 0 at day 0: the difference of 1 allowed is reached on day 100. CIE76, so that nothing bends the line.
  const trueDay = 100;
  let [held, called, sum] = [0, 0, 0];
  for (let round = 0; round < rounds; round++) {
    const points = Array.from({ length: 9 }, (_, lot) => ({
      place: 7 * lot, noise, value: [30 + 0.1 * normal(), 0.05 * normal(), 0.07 * lot + 0.04 * normal()],
    }));
    const trend = fitTrend(points, 0.95)!;
    if (!trend.significant) continue;
    called += 1;
    const course: PairCourse = {
      confidence: 0.95, places: (place) => [place, place],
      asked: [{ light: 'D65', criteria: [{ kind: 'component', component: 'db', min: -1, max: 1 }] }],
      standard: { kind: 'as it stands', lots: 1, trend: undefined, at: () => ({ colour: [30, 0, 0], covariance: [0, 0, 0, 0, 0, 0, 0, 0, 0], freedom: Infinity }) },
      trial: { kind: 'trend', lots: 9, trend, at: (_, place) => {
        const { value, covariance } = trendAt(trend, place);
        return { colour: [value[0], value[1], value[2]], covariance: matrixOf(covariance), freedom: trend.freedom };
      } },
    };
    const at = (which: 'use' | 'least' | 'most'): number => firstAbove((place) => useAt(course, place)[which], 0, 1000, 200) ?? Infinity;
    sum += at('use');
    if (at('most') <= trueDay && trueDay <= at('least')) held += 1;
  }
  expect(called).toBeGreaterThan(0.99 * rounds);
  // 95 % of 400 rounds has a standard error of 1.1 %.
  expect(held / called).toBeGreaterThan(0.92);
  expect(held / called).toBeLessThan(0.985);
  expect(Math.abs(sum / called - trueDay)).toBeLessThan(3);
});
