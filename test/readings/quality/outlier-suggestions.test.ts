import { describe, expect, it } from 'vitest';
import { suggestOutliers } from '../../../src/readings/quality/outlier-suggestions.ts';
import { median, robustSd } from '../../../src/readings/quality/robust-scale.ts';
import { normalGenerator } from '../support/simulation.ts';

const one = (values: readonly number[], assumedSd = 0, rotations: readonly number[] = [], priorReadings?: number) =>
  suggestOutliers(values.map((value, index) => ({ rotation: rotations[index] ?? 0, vector: [value] })), [{ name: 'x', assumedSd }], priorReadings);

describe('the robust standard deviation', () => {
  it('takes the middle of odd and even numbers of values', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
  });

  // Unbiased for normal values by definition of its factors; drawn by a generator outside the program.
  it.each([3, 4, 5, 6, 7, 8, 9, 10, 14, 40])('is 1 on average for %i standard normal values', (count) => {
    const normal = normalGenerator(count);
    const rounds = 8000;
    const found = Array.from({ length: rounds }, () => robustSd(Array.from({ length: count }, normal)));
    const mean = found.reduce((sum, value) => sum + value, 0) / rounds;
    const sd = Math.sqrt(found.reduce((sum, value) => sum + (value - mean) ** 2, 0) / rounds);
    expect(Math.abs(mean - 1)).toBeLessThan((4 * sd) / Math.sqrt(rounds) + 0.005);
  });

  it('is not moved by one wild value in five', () => {
    // Deviations from the median 3: 2 1 0 1 997; their median 1; 1.8056 for n = 5.
    expect(robustSd([1, 2, 3, 4, 1000])).toBeCloseTo(1.8056, 10);
  });
});

describe('readings that stand out', () => {
  it('are found with their distance from the median', () => {
    // Median 3, robust sd 1.8056 as above; with an assumed sd of 3 worth 8 readings: (8 x 9 + 4 x 1.8056^2) / 12 = 7.0867.
    const [found, ...others] = one([1, 2, 3, 4, 1000], 3);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ index: 4, axisName: 'x', value: 1000, median: 3 });
    expect(found.score).toBeCloseTo(997 / Math.sqrt(7.0867), 2);
  });

  it('are not sought among fewer than four', () => {
    expect(one([1, 1, 1000])).toEqual([]);
  });

  it('must leave a spread that is believed', () => {
    expect(one([5, 5, 5, 5, 5.01], 0)).toHaveLength(1);
    expect(one([5, 5, 5, 5, 5.01], 0.05)).toEqual([]);
  });

  it('are compared with the readings of their own rotation', () => {
    const values = [10, 20, 10.1, 20.1, 9.9, 19.9, 10.05, 20.05, 9.95, 16];
    const rotations = values.map((_, index) => 90 * (index % 2));
    expect(one(values, 0.05, rotations).map(({ index }) => index)).toEqual([9]);
    expect(one(values, 0.05)).toEqual([]);
  });

  it('come worst first and each once, on the axis where they lie farthest out', () => {
    const readings = [[0, 0], [0.1, 0.1], [-0.1, 0.2], [0.2, -0.1], [-0.2, -0.2], [9, 4], [0, -8]].map((vector) => ({ rotation: 0, vector }));
    const found = suggestOutliers(readings, [{ name: 'a', assumedSd: 0.1 }, { name: 'b', assumedSd: 0.1 }]);
    expect(found.map(({ index, axisName }) => [index, axisName])).toEqual([[5, 'a'], [6, 'b']]);
  });

  it.each([
    // The spread of the readings over the assumed one, and the share of all readings that may be pointed out for nothing. A normal
    // value lies beyond 3.5 known standard deviations in 0.05 % of cases (tables of the normal distribution); the estimated one adds to that.
    [0.5, 0.0005], [1, 0.005], [2, 0.04],
  ])('are rare where there is none, readings of %d times the assumed spread', (spread, share) => {
    const normal = normalGenerator(5);
    const rounds = 3000;
    for (const count of [5, 8, 20]) {
      let flagged = 0;
      for (let round = 0; round < rounds; round++) flagged += one(Array.from({ length: count }, () => spread * normal()), 1).length;
      expect(flagged / (rounds * count)).toBeLessThan(share);
    }
  });

  it('are found in nine of ten specimens of five where one reading is off by eight times the spread', () => {
    const normal = normalGenerator(6);
    let found = 0;
    for (let round = 0; round < 1000; round++) found += Number(one([8 + normal(), normal(), normal(), normal(), normal()], 1).some(({ index }) => index === 0));
    expect(found).toBeGreaterThan(900);
  });
});
