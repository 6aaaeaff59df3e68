import { expect, test } from 'vitest';
import { continuousGrade, greyScaleBand, greyScaleGrade, greyScaleGrades, greyScaleSteps } from '../../../src/colour/grey-scale.ts';
import { greyScaleExamples } from '../../../src/colour/published/other-examples.ts';

// ISO 105-A02 (EN 20105-A02): the nine pairs and their tolerances.
test('the pairs of the grey scale are those of ISO 105-A02', () => {
  expect(greyScaleSteps.map(({ grade, difference, tolerance }) => [grade, difference, tolerance])).toEqual([
    ['5', 0, 0.2], ['4-5', 0.8, 0.2], ['4', 1.7, 0.3], ['3-4', 2.5, 0.35], ['3', 3.4, 0.4], ['2-3', 4.8, 0.5], ['2', 6.8, 0.6],
    ['1-2', 9.6, 0.7], ['1', 13.6, 1.0],
  ]);
});

test('each pair of ISO 105-A02 falls in the band of its own grade', () => {
  for (const { grade, difference } of greyScaleSteps) expect(greyScaleBand(difference)).toBe(grade);
});

// Geometric series of ISO 105-A02: each whole grade below 4 doubles the difference.
test('whole grades at 1.7, 3.4, 6.8 and 13.6', () => {
  expect([1.7, 3.4, 6.8, 13.6].map(continuousGrade)).toEqual([4, 3, 2, 1]);
});

test.each(greyScaleExamples)('grade of $standard to $trial', ({ standard, trial, grade }) => {
  expect(greyScaleGrade(standard, trial).grade).toBe(grade);
});

test('the sign of the hue difference counts', () => {
  // Both turn by the same angle at the same gain of chroma in the blue, where dC and dH mix: with unsigned dH they would rate alike.
  const turned = (degrees: number) => greyScaleGrade([30, 40 * Math.cos(4.9), 40 * Math.sin(4.9)],
    [30, 44 * Math.cos(4.9 + (degrees * Math.PI) / 180), 44 * Math.sin(4.9 + (degrees * Math.PI) / 180)]).difference;
  expect(Math.abs(turned(4) - turned(-4))).toBeGreaterThan(0.3);
});

test('grades fall as the difference grows, and NaN has none', () => {
  const grades = Array.from({ length: 200 }, (_, i) => greyScaleGrades.indexOf(greyScaleBand(i / 10) ?? '5'));
  expect(grades).toEqual([...grades].sort((a, b) => a - b));
  expect(new Set(grades).size).toBe(9);
  expect(greyScaleGrade([NaN, 0, 0], [50, 0, 0])).toEqual({ difference: NaN, value: NaN, grade: undefined });
});
