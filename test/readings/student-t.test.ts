import { describe, expect, test } from 'vitest';
import { readingsForInterval } from '../../src/readings/readings-for-interval.ts';
import { studentCdf, studentQuantile } from '../../src/readings/student-t.ts';

describe('studentQuantile', () => {
  test.each([
    // M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, table 26.10 (A = 0.95 two-sided).
    [1, 12.706], [2, 4.303], [3, 3.182], [4, 2.776], [7, 2.365], [10, 2.228], [30, 2.042], [120, 1.980],
  ])('two-sided 95 %% with %i degrees of freedom', (freedom, expected) => {
    expect(studentQuantile(0.975, freedom)).toBeCloseTo(expected, 3);
  });

  test('is odd about one half and undoes the distribution function', () => {
    for (const freedom of [1, 2, 5, 8]) {
      expect(studentQuantile(0.1, freedom)).toBeCloseTo(-studentQuantile(0.9, freedom), 9);
      expect(studentCdf(studentQuantile(0.83, freedom), freedom)).toBeCloseTo(0.83, 9);
    }
  });

  test('one degree of freedom is the Cauchy law', () => {
    for (const t of [-4, -0.3, 1, 6]) expect(studentCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 12);
  });
});

describe('readingsForInterval', () => {
  test.each([
    // n >= (t s / e)^2 iterated with t of n - 1 degrees of freedom by hand from table 26.10; the normal quantile gives 16, 35, 35.
    [0.2, 0.1, 18], [0.3, 0.1, 38], [0.15, 0.05, 38],
  ])('sd %d, half width %d', (sd, halfWidth, expected) => {
    expect(readingsForInterval(sd, halfWidth)).toBe(expected);
  });

  test('never asks for fewer than two and says when no number is enough', () => {
    expect(readingsForInterval(0, 0.1)).toBe(2);
    expect(readingsForInterval(1, 0.001, 0.95, 100)).toBe(Infinity);
  });
});
