import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { chooseAngle, fresnelGloss, fresnelReflectance, glossAngles, hazeIndex, verifyGloss } from '../../src/gloss/index.ts';

test('the tables of polished and of rough surfaces are met', () => {
  const rows = verifyGloss();
  expect(rows.length).toBe(7 * 9 + 5 * 3);
  expect(rows.filter((row) => !row.ok)).toEqual([]);
});

// Independent form of Fresnel's equations, by angles (Hecht, Optics): sine law, then sine and tangent ratios.
function byAngles(n: number, degrees: number): number {
  const incident = (degrees * Math.PI) / 180;
  const refracted = Math.asin(Math.sin(incident) / n);
  const across = Math.sin(incident - refracted) / Math.sin(incident + refracted);
  const along = Math.tan(incident - refracted) / Math.tan(incident + refracted);
  return (across ** 2 + along ** 2) / 2;
}

test('reflectance agrees with the form by angles', () => {
  fc.assert(fc.property(fc.double({ min: 1.2, max: 2.6, noNaN: true }), fc.double({ min: 1, max: 89, noNaN: true }), (n, angle) => {
    expect(fresnelReflectance(n, angle)).toBeCloseTo(byAngles(n, angle), 10);
  }));
});

test('reflectance at its ends', () => {
  // Normal incidence: ((n - 1) / (n + 1))^2; grazing: all; no step in index: none.
  expect(fresnelReflectance(1.5, 0)).toBeCloseTo(0.04, 15);
  expect(fresnelReflectance(1.5, 90)).toBe(1);
  expect([fresnelReflectance(1, 0), fresnelReflectance(1, 60), fresnelReflectance(1, 90)]).toEqual([0, 0, 0]);
  // At Brewster's angle the part along the plane vanishes: half of ((n^2 - 1) / (n^2 + 1))^2 is left.
  expect(fresnelReflectance(1.5, (Math.atan(1.5) * 180) / Math.PI)).toBeCloseTo(((2.25 - 1) / (2.25 + 1)) ** 2 / 2, 12);
});

test('outside the domain there is no value', () => {
  for (const [n, angle] of [[0.9, 20], [NaN, 20], [Infinity, 20], [1.5, -1], [1.5, 91], [1.5, NaN]] as const) {
    expect(fresnelReflectance(n, angle)).toBeNaN();
  }
});

test('black glass has 100 gloss units, and gloss grows with the index', () => {
  for (const angle of glossAngles) {
    expect(fresnelGloss(1.567, angle)).toBe(100);
    expect(fresnelGloss(1.6, angle)).toBeGreaterThan(fresnelGloss(1.5, angle));
  }
});

test('60 degrees for grained parts whatever their level, 20 for two glossy ones, 85 only on request', () => {
  const smooth = (gloss60?: number) => ({ grained: false, gloss60 });
  const grained = (gloss60?: number) => ({ grained: true, gloss60 });
  expect(chooseAngle([smooth(88), smooth(71)])).toBe(20);
  expect(chooseAngle([smooth(88), smooth(70)])).toBe(60);
  expect(chooseAngle([smooth(70), smooth(88)])).toBe(60);
  expect(chooseAngle([grained(88), smooth(88)])).toBe(60);
  expect(chooseAngle([smooth(88), grained(88)])).toBe(60);
  expect(chooseAngle([smooth(88), smooth()])).toBe(60);
  expect(chooseAngle([grained(2), grained(1.5)])).toBe(60);
  expect(chooseAngle([grained(2), grained(1.5)], 85)).toBe(85);
});

test('haze index', () => {
  // ASTM D4039: gloss at 60 less gloss at 20 degrees.
  expect(hazeIndex(84, 91)).toBe(7);
});
