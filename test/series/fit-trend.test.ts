import { inv, matrix, multiply, transpose } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { fitTrend, inverse, slopeUncertainty, trendAt } from '../../src/series/trend/fit-trend.ts';
import type { TrendPoint } from '../../src/series/trend/fit-trend.ts';
import { normalGenerator } from '../readings/support/simulation.ts';

const none = [1e-12];

describe('one coordinate', () => {
  // Height of women by weight, the 15 averages of the World Almanac (1975) that come with R as "women"; the fit of weight on height by R's
  // lm(): -87.51667 + 3.45 h, standard errors 5.93694 and 0.09114, t 37.85. Data and fit from memory; the closed form below is independent.
  const height = [58, 59, 60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70, 71, 72];
  const weight = [115, 117, 120, 123, 126, 129, 132, 135, 139, 142, 146, 150, 154, 159, 164];
  const points = height.map((place, i): TrendPoint => ({ place, value: [weight[i]], noise: none }));

  test('a published plain regression', () => {
    const trend = fitTrend(points, 0.95)!;
    expect(trend.slope[0]).toBeCloseTo(3.45, 6);
    expect(slopeUncertainty(trend)[0]).toBeCloseTo(0.09114, 4);
    expect(trendAt(trend, 0).value[0]).toBeCloseTo(-87.51667, 4);
    expect(Math.sqrt(trendAt(trend, 0).covariance[0])).toBeCloseTo(5.93694, 3);
    expect(Math.sqrt(trend.statistic)).toBeCloseTo(37.85, 1);
    expect(trend).toMatchObject({ freedom: 13, significant: true });
  });

  test('the limit is that of Student, squared', () => {
    // t 0.975 with 13 degrees of freedom: 2.160 in any table.
    expect(Math.sqrt(fitTrend(points, 0.95)!.limit)).toBeCloseTo(2.16, 3);
  });
});

/** Generalised least squares by its definition with a general library: (X' V^-1 X)^-1 X' V^-1 y. */
function byDefinition(points: readonly TrendPoint[], between: readonly number[], centre: number) {
  const size = points[0].value.length;
  const rows = size * points.length;
  const design = Array.from({ length: rows }, (_, row) => Array.from({ length: 2 * size }, (_, column) =>
    (row % size !== column % size ? 0 : column < size ? 1 : points[Math.floor(row / size)].place - centre)));
  const v = Array.from({ length: rows }, (_, r) => Array.from({ length: rows }, (_, c) => {
    const lot = Math.floor(r / size);
    const at = (r % size) * size + (c % size);
    return lot === Math.floor(c / size) ? between[at] + points[lot].noise[at] : 0;
  }));
  const y = points.flatMap(({ value }) => value.map((entry) => [entry]));
  const weighted = multiply(transpose(matrix(design)), inv(matrix(v)));
  const covariance = inv(multiply(weighted, matrix(design)));
  return { solved: multiply(covariance, multiply(weighted, matrix(y))).toArray().flat() as number[], covariance: covariance.toArray().flat() as number[] };
}

describe('three coordinates', () => {
  const normal = normalGenerator(5);
  const noise = (spots: number): number[] => [0.04, 0.01, 0, 0.01, 0.02, 0, 0, 0, 0.03].map((entry) => entry / spots);

  test('where the scatter is no larger than the readings account for, it is what the definition gives with their covariances', () => {
    const points = Array.from({ length: 8 }, (_, lot): TrendPoint => ({
      place: 9 * lot + (lot % 3), value: [30 + 0.02 * lot, 1 + 0.001 * normal(), -2 + 0.001 * normal()], noise: noise(1 + (lot % 4)),
    }));
    const trend = fitTrend(points, 0.95)!;
    const expected = byDefinition(points, Array<number>(9).fill(0), trend.centre);
    [...trend.level, ...trend.slope].forEach((entry, i) => expect(entry).toBeCloseTo(expected.solved[i], 9));
    trend.covariance.forEach((entry, i) => expect(Math.abs(entry - expected.covariance[i])).toBeLessThan(1e-12));
  });

  test('with lots read alike that scatter more, the slope is that of the plain line and its covariance the residual one over the spread of places', () => {
    const points = Array.from({ length: 9 }, (_, lot): TrendPoint => ({ place: lot, value: [0.3 * lot + normal(), normal(), 2 * normal()], noise: noise(50) }));
    const trend = fitTrend(points, 0.95)!;
    const spread = 60;
    const slopes = [0, 1, 2].map((i) => points.reduce((sum, { place, value }) => sum + ((place - 4) * value[i]) / spread, 0));
    slopes.forEach((slope, i) => expect(trend.slope[i]).toBeCloseTo(slope, 10));
    const rests = points.map(({ place, value }) => value.map((entry, i) => entry - points.reduce((sum, p) => sum + p.value[i] / 9, 0) - (place - 4) * slopes[i]));
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) {
      const residual = rests.reduce((sum, rest) => sum + rest[i] * rest[j], 0) / 7;
      expect(trend.covariance[(3 + i) * 6 + 3 + j]).toBeCloseTo(residual / spread, 10);
    }
  });

  test('lots without a trend are called one about as often as the confidence allows', () => {
    const draw = normalGenerator(77);
    const rounds = 2000;
    let called = 0;
    for (let round = 0; round < rounds; round++) {
      const points = Array.from({ length: 7 }, (_, lot): TrendPoint => {
        const shared = draw();
        return { place: lot, value: [30 + shared, shared + 0.5 * draw(), draw()], noise: noise(30) };
      });
      if (fitTrend(points, 0.95)!.significant) called += 1;
    }
    // Standard error of the share 0.05 over 2000 rounds: 0.005.
    expect(called / rounds).toBeGreaterThan(0.03);
    expect(called / rounds).toBeLessThan(0.065);
  });

  test('four lots, or lots of one day, have no trend', () => {
    const of = (places: readonly number[]): TrendPoint[] => places.map((place) => ({ place, value: [normal(), normal(), normal()], noise: noise(3) }));
    expect(fitTrend(of([0, 1, 2, 3]), 0.95)).toBeUndefined();
    expect(fitTrend(of([0, 1, 2, 3, 4]), 0.95)).toBeDefined();
    expect(fitTrend(of([7, 7, 7, 7, 7, 7]), 0.95)).toBeUndefined();
  });
});

test('an inverse is that of a general library, at unlike scales; a singular matrix has none', () => {
  const given = [4e6, 1e3, 200, 1e3, 9, 0.1, 200, 0.1, 0.05];
  const expected = (inv(matrix([given.slice(0, 3), given.slice(3, 6), given.slice(6)])).toArray() as number[][]).flat();
  inverse(given, 3)!.forEach((entry, i) => expect(Math.abs(entry / expected[i] - 1)).toBeLessThan(1e-8));
  expect(inverse([1, 1, 1, 1], 2)).toBeUndefined();
  expect(inverse([0], 1)).toBeUndefined();
});
