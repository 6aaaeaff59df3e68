import { eigs } from 'mathjs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Matrix3 } from '../../src/quantities.ts';
import { isCalendarDate } from '../../src/cabin/schema/date.ts';
import { describeValue } from '../../src/cabin/schema/describe-value.ts';
import { nearestName } from '../../src/cabin/schema/nearest-name.ts';
import { isPositiveSemidefinite } from '../../src/cabin/shapes/covariance.ts';

describe('isCalendarDate', () => {
  it('agrees with the calendar of Date over every day number tried', () => {
    fc.assert(fc.property(fc.integer({ min: 1900, max: 2199 }), fc.integer({ min: 0, max: 13 }), fc.integer({ min: 0, max: 32 }), (year, month, day) => {
      const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
      const made = new Date(Date.UTC(year, month - 1, day));
      const real = month >= 1 && month <= 12 && day >= 1 && made.toISOString().slice(0, 10) === text;
      expect(isCalendarDate(text)).toBe(real);
    }), { numRuns: 2000 });
  });

  it.each(['2031-3-1', '2031-03-01 ', '20310301', '2031/03/01', '1899-12-31', '２０３１-03-01'])('refuses %s', (text) => {
    expect(isCalendarDate(text)).toBe(false);
  });
});

describe('isPositiveSemidefinite', () => {
  it('agrees with the eigenvalues that mathjs gives', () => {
    const entry = fc.integer({ min: -9, max: 9 });
    fc.assert(fc.property(fc.tuple(fc.nat(9), entry, entry, fc.nat(9), entry, fc.nat(9)), ([a, b, c, d, e, f]) => {
      const matrix: Matrix3 = [a, b, c, b, d, e, c, e, f];
      const { values } = eigs([[a, b, c], [b, d, e], [c, e, f]], { eigenvectors: false });
      const least = Math.min(...(values as number[]));
      // Within rounding of zero either answer would do.
      fc.pre(Math.abs(least) > 1e-6);
      expect(isPositiveSemidefinite(matrix)).toBe(least > 0);
    }), { numRuns: 1000 });
  });

  it('takes singular ones: zero, one direction only, and products of a row with itself', () => {
    expect(isPositiveSemidefinite([0, 0, 0, 0, 0, 0, 0, 0, 0])).toBe(true);
    expect(isPositiveSemidefinite([1, 2, 3, 2, 4, 6, 3, 6, 9])).toBe(true);
    expect(isPositiveSemidefinite([1e-9, 0, 0, 0, 0, 0, 0, 0, 0])).toBe(true);
  });
});

describe('nearestName', () => {
  it('finds slips of one letter and swapped neighbours, and nothing far off', () => {
    expect(nearestName('supplyer', ['zone', 'supplier', 'source'])).toBe('supplier');
    expect(nearestName('dahs', ['dash', 'doors'])).toBe('dash');
    expect(nearestName('xyz', ['dash', 'doors'])).toBeUndefined();
  });
});

describe('describeValue', () => {
  it.each([[undefined, 'nothing'], [null, 'null'], [Number.NaN, 'a number that is not finite'], [[1], 'a list of 1'], [{}, 'an object'], [1n, 'a bigint'], ['x'.repeat(99), `"${'x'.repeat(60)}…"`]])('%s', (value, text) => {
    expect(describeValue(value)).toBe(text);
  });
});
