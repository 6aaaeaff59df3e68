import { converter } from 'culori';
import { expect, test } from 'vitest';
import { exaggerated } from '../../components/model/part-colours.ts';
import { screenStep } from '../../components/model/screen-step.ts';
import { spreadEllipse } from '../../components/figures/spots-plot.ts';

const toLab65 = converter('lab65');

test.each([5, 25, 50, 75, 95])('the step of an 8-bit screen at L* %i is that of two neighbouring greys in culori', (lightness) => {
  const greys = Array.from({ length: 256 }, (_, code) => toLab65({ mode: 'rgb', r: code / 255, g: code / 255, b: code / 255 }).l);
  const above = greys.findIndex((l) => l >= lightness);
  expect(screenStep(lightness)).toBeCloseTo((greys[above] as number) - (greys[above - 1] as number), 3);
});

test('exaggeration keeps the mean and multiplies the difference', () => {
  const [first, second] = exaggerated([25, 1, -2], [26, 0, -1], 10);
  expect(first).toEqual([20.5, 5.5, -6.5]);
  expect(second).toEqual([30.5, -4.5, 3.5]);
});

test('the ellipse of round spread is a circle of the 95 % radius', () => {
  // Four spots at distance 1 on the axes: covariance 2/3 on both, none between; chi-square of 2 degrees, 95 %: 5.991 (standard tables).
  const spots = [[1, 0], [-1, 0], [0, 1], [0, -1]].map(([a, b]) => ({ name: '', lab: [30, a, b] as const as [number, number, number] }));
  for (const [a, b] of spreadEllipse(spots)) expect(Math.hypot(a, b)).toBeCloseTo(Math.sqrt((5.991 * 2) / 3), 3);
});

test('two spots have no ellipse', () => {
  expect(spreadEllipse([{ name: '', lab: [30, 0, 0] }, { name: '', lab: [30, 1, 1] }])).toEqual([]);
});
