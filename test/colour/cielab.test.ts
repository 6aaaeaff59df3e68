import { converter } from 'culori';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Lab, Xyz } from '../../src/quantities.ts';
import { compressionSlope, displayWhite, labToLch, labToXyz, lchToLab, xyzToLab } from '../../src/colour/index.ts';
import { workedCielab, workedLightness } from '../../src/colour/published/cielab.ts';
import { cielab } from '../support/independent-colorimetry.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

const white: Xyz = [94.811, 100, 107.304];
const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyLab: fc.Arbitrary<Lab> = fc.tuple(finite(0, 120), finite(-150, 150), finite(-150, 150));
const anyXyz: fc.Arbitrary<Xyz> = fc.tuple(finite(0, 130), finite(0, 130), finite(0, 130));
const far = (a: readonly number[], b: readonly number[]) => Math.max(...a.map((value, i) => Math.abs(value - b[i]!)));

describe('worked values', () => {
  test.each(workedCielab)('$source', ({ xyz, white: worked, lab, tolerance }) => {
    expect(far(xyzToLab(xyz, worked), lab)).toBeLessThanOrEqual(tolerance);
  });

  test.each(workedLightness)('L* of Y = $y is $lightness (ISO/CIE 11664-4:2019)', ({ y, lightness }) => {
    expect(xyzToLab([y, y, y], [100, 100, 100])[0]).toBeCloseTo(lightness, 4);
  });
});

test('agrees with culori, a general colour library, on 1,000 seeded colours against its D65 white', () => {
  const toLab65 = converter('lab65');
  const random = seededNumbers(3);
  for (let i = 0; i < 1000; i += 1) {
    const xyz: Xyz = [95 * random() ** 2, 100 * random() ** 2, 108 * random() ** 2];
    const oracle = toLab65({ mode: 'xyz65', x: xyz[0] / 100, y: xyz[1] / 100, z: xyz[2] / 100 });
    expect(far(xyzToLab(xyz, displayWhite), [oracle.l, oracle.a, oracle.b])).toBeLessThan(1e-9);
  }
});

test('agrees with the two-piece form of CIE 15:2004, 8.2.1', () => {
  fc.assert(fc.property(anyXyz, (xyz) => far(xyzToLab(xyz, white), cielab(xyz, white)) < 1e-11));
});

test('tristimulus values come back from CIELAB', () => {
  fc.assert(fc.property(anyLab, (lab) => far(xyzToLab(labToXyz(lab, white), white), lab) < 1e-10));
  fc.assert(fc.property(anyXyz, (xyz) => far(labToXyz(xyzToLab(xyz, white), white), xyz) < 1e-10));
});

test('CIELAB comes back from LCh, with the hue inside one turn', () => {
  fc.assert(fc.property(anyLab, (lab) => {
    const lch = labToLch(lab);
    return lch[2] >= 0 && lch[2] < 360 && lch[1] >= 0 && far(lchToLab(lch), lab) < 1e-11;
  }));
});

test('hue angles on the axes, and just below one turn', () => {
  expect([[1, 0], [0, 1], [-1, 0], [0, -1], [0, 0]].map(([a, b]) => labToLch([50, a!, b!])[2])).toEqual([0, 90, 180, 270, 0]);
  expect(labToLch([50, 1, -1e-300])[2]).toBe(0);
  expect(labToLch([50, 0, -0])[2]).toBe(0);
});

test('the white itself is exactly (100, 0, 0) and black exactly 0', () => {
  fc.assert(fc.property(fc.tuple(finite(1, 200), finite(1, 200), finite(1, 200)), (any) => {
    expect(xyzToLab(any, any)).toEqual([100, 0, 0]);
  }));
  expect(xyzToLab([0, 0, 0], white)[0]).toBeCloseTo(0, 14);
});

test('the slope of the compression function is that of a finite difference on both sides of the junction', () => {
  for (const t of [-0.01, 0.001, 0.0088, 0.0089, 0.05, 0.5, 1.2]) {
    const step = 1e-6 * Math.max(t, 1e-3);
    const f = (at: number) => (xyzToLab([50, 100 * at, 50], [100, 100, 100])[0] + 16) / 116;
    expect(compressionSlope(t)).toBeCloseTo((f(t + step) - f(t - step)) / (2 * step), 5);
  }
});

test('values that are not finite give NaN or infinity, never an exception', () => {
  const values = [-1, 0, 1, Infinity, -Infinity, NaN];
  for (const x of values) for (const y of values) for (const z of values) {
    const lab = xyzToLab([x, y, z], white);
    expect(lab.every(Number.isFinite)).toBe([x, y, z].every(Number.isFinite));
    expect(labToXyz([x, y, z], white)).toHaveLength(3);
    expect(labToLch([x, y, z])).toHaveLength(3);
    expect(lchToLab([x, y, z])).toHaveLength(3);
  }
});
