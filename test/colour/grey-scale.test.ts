import { describe, expect, test } from 'vitest';
import { continuousGrade, greyScaleBand, greyScaleGrade, greyScaleSteps } from '../../src/colour/grey-scale.ts';
import type { Lab } from '../../src/quantities.ts';
import { recordsOf, referenceTable } from '../support/reference-table.ts';

const pairs = recordsOf(referenceTable('iso-105/grey-scale-pairs.csv'));
const grades = recordsOf(referenceTable('iso-105/change-grades.csv'));

describe('pairs of ISO 105-A02', () => {
  test('are those of the standard', () => {
    expect(greyScaleSteps.map(({ grade, difference, tolerance }) => [grade, difference, tolerance]))
      .toEqual(pairs.map(({ grade, difference, tolerance }) => [grade, Number(difference), Number(tolerance)]));
  });

  test.each(pairs)('a difference of $difference is grade $grade', ({ grade, difference }) => {
    expect(greyScaleBand(Number(difference))).toBe(grade);
    // Half grades lie between: 4-5 is 4.5. Differences are printed to 0.1, up to 0.04 of a grade.
    const number = grade.split('-').reduce((sum, part) => sum + Number(part), 0) / grade.split('-').length;
    expect(Math.abs(continuousGrade(Number(difference)) - number)).toBeLessThanOrEqual(0.04);
  });
});

describe('grades of ISO 105-A05', () => {
  test.each(grades)('$L1 $a1 $b1 to $L2 $a2 $b2', ({ L1, a1, b1, L2, a2, b2, difference, value, grade }) => {
    const standard: Lab = [Number(L1), Number(a1), Number(b1)];
    const trial: Lab = [Number(L2), Number(a2), Number(b2)];
    const rating = greyScaleGrade(standard, trial);
    expect(rating.difference).toBeCloseTo(Number(difference), 8);
    expect(rating.value).toBeCloseTo(Number(value), 8);
    expect(rating.grade).toBe(grade);
  });
});
