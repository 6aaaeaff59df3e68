import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { interpolant, interpolate, resampleSpectrum } from '../../src/colour/index.ts';
import { workedInterpolation } from '../../src/colour/published/interpolation.ts';
import { spragueAt } from '../support/independent-colorimetry.ts';

const value = (values: readonly number[], position: number) => interpolate(values, interpolant(0, 1, values.length, position));

test.each(workedInterpolation.at)('Sprague at $position gives $value (CIE 167:2005; colour-science 0.4.6)', ({ position, value: expected }) => {
  expect(value(workedInterpolation.values, position)).toBeCloseTo(expected, 6);
});

const table = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 6, maxLength: 40 });
const share = fc.double({ min: -0.2, max: 1.2, noNaN: true });

test('agrees with the quintic that joins values, slopes and bends of local quartics', () => {
  fc.assert(fc.property(table, share, (values, at) => {
    const position = at * (values.length - 1);
    return Math.abs(value(values, position) - spragueAt(values, 0, 1, position)) < 1e-9;
  }));
});

test('coefficients sum to 1 and stay inside the table', () => {
  fc.assert(fc.property(fc.integer({ min: 1, max: 50 }), share, (count, at) => {
    const { first, coefficients } = interpolant(400, 10, count, 400 + 10 * at * (count - 1));
    return Math.abs(coefficients.reduce((sum, c) => sum + c, 0) - 1) < 1e-12 && first >= 0 && first + coefficients.length <= count;
  }));
});

test('a quartic is met everywhere two points or more away from the ends, a straight line up to the ends', () => {
  const quartic = (t: number) => 0.3 - 0.2 * t + 0.05 * t ** 2 - 0.004 * t ** 3 + 0.0002 * t ** 4;
  const line = (t: number) => 0.3 - 0.02 * t;
  const at = (of: (t: number) => number) => Array.from({ length: 12 }, (_, i) => of(i));
  for (let position = 2; position <= 9; position += 0.125) expect(value(at(quartic), position)).toBeCloseTo(quartic(position), 12);
  for (let position = 0; position <= 11; position += 0.125) expect(value(at(line), position)).toBeCloseTo(line(position), 12);
});

test('fewer than six values are joined by straight lines, one value is held', () => {
  expect(value([1, 3, 2], 0.25)).toBe(1.5);
  expect(value([1, 3, 2], 1.5)).toBe(2.5);
  expect(value([7], 3)).toBe(7);
});

test('end values are held outside the data', () => {
  const spectrum = { startNm: 400, stepNm: 10, values: [0.1, 0.2, 0.4, 0.3, 0.2, 0.5, 0.6] };
  const { values } = resampleSpectrum(spectrum, 380, 5, 25);
  expect(Array.from(values).slice(0, 5)).toEqual([0.1, 0.1, 0.1, 0.1, 0.1]);
  expect(Array.from(values).slice(16)).toEqual(Array.from({ length: 9 }, () => 0.6));
});

test('resampling to the same grid changes nothing', () => {
  fc.assert(fc.property(table, (values) => {
    expect(Array.from(resampleSpectrum({ startNm: 380, stepNm: 10, values }, 380, 10, values.length).values)).toEqual(values);
  }));
});

test('a value that is not finite reaches only the intervals around it', () => {
  const values = Array.from({ length: 20 }, (_, i) => (i === 10 ? NaN : 0.5));
  expect(Number.isNaN(value(values, 10.5))).toBe(true);
  expect(value(values, 4.5)).toBeCloseTo(0.5, 12);
});
