import { expect, test } from 'vitest';
import { bodyGloss, facetsOfGloss, facetsUnderGrain, sharpestFacets } from '../../src/gloss/index.ts';
import { simulatedGloss, simulatedGlossIndex } from '../../src/gloss/published/simulated-gloss.ts';

const n = simulatedGlossIndex;

test.each(simulatedGloss)('a plain black surface has the width that the check values of the glossmeter tell: $alpha', ({ alpha, gloss }) => {
  const found = facetsOfGloss({ gloss: gloss[60], angle: 60, n, reflectance: 0 });
  expect(found.met).toBe('yes');
  // The printed gloss has three figures, so the width has hardly more.
  expect(Math.abs(found.alpha / alpha - 1)).toBeLessThan(0.005);
});

test('slopes of a grain take their part of the spread off: alpha 0.3 with a mean square slope of 0.05 leaves the root of 0.09 - 0.05', () => {
  const { gloss } = simulatedGloss.find(({ alpha }) => alpha === 0.3)!;
  const { alpha } = facetsOfGloss({ gloss: gloss[60], angle: 60, n, reflectance: 0 });
  expect(Math.abs(facetsUnderGrain(alpha, 0.05) - 0.2)).toBeLessThan(0.002);
  expect(facetsUnderGrain(alpha, 0.5)).toBe(sharpestFacets);
});

test('what the body scatters into the glossmeter is no gloss of the surface', () => {
  const { alpha, gloss } = simulatedGloss.find((row) => row.alpha === 0.2)!;
  const found = facetsOfGloss({ gloss: gloss[60] + bodyGloss(0.7, 60), angle: 60, n, reflectance: 0.7 });
  expect(Math.abs(found.alpha / alpha - 1)).toBeLessThan(0.005);
});

test('a gloss that the model cannot reach is told as matt or as a mirror', () => {
  expect(facetsOfGloss({ gloss: 0.01, angle: 60, n, reflectance: 0 })).toEqual({ alpha: 1, met: 'matt' });
  expect(facetsOfGloss({ gloss: 95, angle: 60, n, reflectance: 0 })).toEqual({ alpha: sharpestFacets, met: 'mirror' });
  expect(facetsOfGloss({ gloss: 0.5, angle: 60, n, reflectance: 0.8 }).met).toBe('matt');
});
