import { inv, multiply } from 'mathjs';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Xyz } from '../../src/quantities.ts';
import { adaptXyz, cmccat2000, cmccat2000Degree, colourInconstancy, lightByName, whitePoint } from '../../src/colour/index.ts';
import { coneResponses } from '../../src/colour/cone-response.ts';
import { inverse3 } from '../../src/colour/three-by-three.ts';
import { inconstancies, workedCmccat2000 } from '../../src/colour/published/adaptation.ts';
import { analyticSpectra } from '../../src/colour/published/metamerism.ts';

const transforms = ['cat16', 'cat02', 'cmccat2000'] as const;
const light = (name: string) => lightByName(name)!;
const whiteOf = (name: string) => whitePoint(light(name), 10);
const far = (a: readonly number[], b: readonly number[]) => Math.max(...a.map((value, i) => Math.abs(value - b[i]!)));

test('CMCCAT2000, worked example (Li et al. 2002; colour-science 0.4.6)', () => {
  const { xyz, white, referenceWhite, fields, corresponding } = workedCmccat2000;
  expect(far(cmccat2000(xyz, white, referenceWhite, fields), corresponding)).toBeLessThan(5e-7);
});

test.each(transforms)('%s agrees with the matrix product M^-1 diag(Mwr/Mw) M by mathjs', (name) => {
  const rows = [0, 3, 6].map((i) => coneResponses[name].forward.slice(i, i + 3));
  const response = (xyz: Xyz) => multiply(rows, [...xyz]) as number[];
  const xyz: Xyz = [30, 25, 12];
  const scaled = response(xyz).map((value, i) => (value * response(whiteOf('D65'))[i]!) / response(whiteOf('A'))[i]!);
  expect(far(adaptXyz(xyz, whiteOf('A'), whiteOf('D65'), name), multiply(inv(rows), scaled) as number[])).toBeLessThan(1e-11);
});

test.each(transforms)('%s takes white to white, undoes itself, and does nothing without adaptation', (name) => {
  const value = fc.double({ min: 0, max: 110, noNaN: true });
  fc.assert(fc.property(fc.tuple(value, value, value), (xyz) => {
    const there = adaptXyz(xyz, whiteOf('A'), whiteOf('D65'), name);
    return far(adaptXyz(there, whiteOf('D65'), whiteOf('A'), name), xyz) < 1e-10
      && far(adaptXyz(xyz, whiteOf('A'), whiteOf('D65'), name, 0), xyz) < 1e-10
      && far(adaptXyz(xyz, whiteOf('A'), whiteOf('A'), name, 0.7), xyz) < 1e-10;
  }));
  expect(far(adaptXyz(whiteOf('FL11'), whiteOf('FL11'), whiteOf('D65'), name), whiteOf('D65'))).toBeLessThan(1e-11);
});

test('degree of adaptation of CMCCAT2000 is cut to 0..1 and falls with a dim surround', () => {
  // 0.08 lg 200 + 0.76 = 0.944082; times 0.8 in a dim surround (Li et al. 2002).
  expect(cmccat2000Degree({ testLuminance: 200, referenceLuminance: 200 })).toBeCloseTo(0.944082, 6);
  expect(cmccat2000Degree({ testLuminance: 200, referenceLuminance: 200, surround: 'dim' })).toBeCloseTo(0.755266, 6);
  expect(cmccat2000Degree({ testLuminance: 1e6, referenceLuminance: 1e6 })).toBe(1);
  expect(cmccat2000Degree({ testLuminance: 1, referenceLuminance: 1e-12, surround: 'dark' })).toBeGreaterThanOrEqual(0);
});

test('CMCCAT2000 with complete adaptation scales by the luminance of the whites', () => {
  const dim: Xyz = [55.575, 50, 17.6];
  const bright: Xyz = [94.81, 100, 107.3];
  const full = { testLuminance: 1e6, referenceLuminance: 1e6 };
  // D = 1: the test white keeps its own Y, as Yw/Ywr in the formula says.
  expect(far(cmccat2000(dim, dim, bright, full), [47.405, 50, 53.65])).toBeLessThan(1e-10);
});

const formulas = { cie76: { name: 'cie76' }, cmc11: { name: 'cmc', l: 1, c: 1 }, ciede2000: { name: 'ciede2000' } } as const;

test.each(inconstancies)('inconstancy of the wave from $test to D65 by $transform (independent program, 4 decimals)', (row) => {
  for (const name of ['cie76', 'cmc11', 'ciede2000'] as const) {
    const conditions = { reference: light('D65'), test: light(row.test), observer: 10, transform: row.transform, formula: formulas[name] } as const;
    expect(Math.abs(colourInconstancy(analyticSpectra.wave, conditions) - row[name])).toBeLessThan(5.1e-5);
  }
});

test('a neutral part is constant, and any part is under the reference light itself', () => {
  for (const transform of transforms) {
    const conditions = { reference: light('D65'), test: light('FL11'), observer: 10, transform, formula: { name: 'ciede2000' } } as const;
    expect(colourInconstancy(analyticSpectra.flat, conditions)).toBeLessThan(1e-9);
    expect(colourInconstancy(analyticSpectra.wave, { ...conditions, test: light('D65') })).toBeLessThan(1e-9);
  }
});

test('values that are not finite come through and throw nothing', () => {
  const values = [-1, 0, 1, Infinity, -Infinity, NaN];
  for (const x of values) for (const y of values) for (const z of values) {
    const got = adaptXyz([x, y, z], whiteOf('A'), whiteOf('D65'), 'cat16');
    expect(got.every(Number.isFinite)).toBe([x, y, z].every(Number.isFinite));
  }
});

test('the inverse of 3 x 3 matrices agrees with mathjs', () => {
  const entry = fc.double({ min: -3, max: 3, noNaN: true });
  fc.assert(fc.property(fc.array(entry, { minLength: 9, maxLength: 9 }), (m) => {
    // A strong diagonal keeps the matrices away from singular ones.
    const rows = [0, 1, 2].map((i) => m.slice(3 * i, 3 * i + 3).map((value, j) => value + (i === j ? 10 : 0)));
    return far(inverse3(rows.flat()), (inv(rows) as number[][]).flat()) < 1e-10;
  }));
});
