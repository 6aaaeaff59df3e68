import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Light, Observer } from '../../src/colour/index.ts';
import { lightByName, lightNames, spectrumToLab, spectrumToXyz, weightsFor, whitePoint } from '../../src/colour/index.ts';
import { e2022Weights } from '../../src/colour/e2022.ts';
import { productsOf } from '../../src/colour/products.ts';
import { printedWeights } from '../../src/colour/published/e308-weights.ts';
import { workedSpectrum, workedSums } from '../../src/colour/published/summation.ts';
import { carryTo1nm, lightAt1nm, sumAt1nm } from '../support/independent-colorimetry.ts';
import { numbersOf, recordsOf, referenceTable } from '../support/reference-table.ts';

const light = (name: string): Light => lightByName(name)!;

/** Illuminant A and D65 from 360 nm to 830 nm, as far as the printed tables go. */
function wideLight(name: string): Light {
  const nanometres = Array.from({ length: 471 }, (_, i) => 360 + i);
  if (name === 'A') {
    // ISO/CIE 11664-2:2022, equation of illuminant A.
    const radiance = (nm: number) => nm ** -5 / (Math.exp(1.435e7 / (2848 * nm)) - 1);
    return { name, spd: Float64Array.from(nanometres, (nm) => (100 * radiance(nm)) / radiance(560)) };
  }
  // CIE 15:2004: S0 + M1 S1 + M2 S2 with M1, M2 to 3 decimals, T = 6500 K x 1.4388 / 1.4380.
  const parts = referenceTable('cie-015/cie-daylight-components.csv');
  const [s0, s1, s2] = ['S0', 'S1', 'S2'].map((column) => numbersOf(parts, column).slice(12));
  const kelvin = (6500 * 1.4388) / 1.438;
  const x = -4.607e9 / kelvin ** 3 + 2.9678e6 / kelvin ** 2 + 99.11 / kelvin + 0.244063;
  const y = -3 * x * x + 2.87 * x - 0.275;
  const m = 0.0241 + 0.2562 * x - 0.7341 * y;
  const m1 = Math.round((1000 * (-1.3515 - 1.7703 * x + 5.9114 * y)) / m) / 1000;
  const m2 = Math.round((1000 * (0.03 - 31.4424 * x + 30.0717 * y)) / m) / 1000;
  const five = s0!.map((value, i) => value + m1 * s1![i]! + m2 * s2![i]!);
  return { name, spd: Float64Array.from(nanometres, (_, i) => five[Math.floor(i / 5)]! * (1 - (i % 5) / 5) + (five[Math.floor(i / 5) + 1] ?? 0) * ((i % 5) / 5)) };
}

describe.each(printedWeights)('ASTM E308-15, printed weights of $light, $observer deg, $x.stepNm nm', (printed) => {
  test.each(['x', 'y', 'z'] as const)('W%s to their 3 decimals', (axis) => {
    const table = e2022Weights(productsOf(wideLight(printed.light), printed.observer), printed[axis].stepNm);
    expect(table[axis]).toHaveLength(printed[axis].values.length);
    const worst = Math.max(...Array.from(table[axis], (weight, i) => Math.abs(weight - printed[axis].values[i]!)));
    expect(worst).toBeLessThanOrEqual(5e-4);
  });
});

const computed = recordsOf(referenceTable('astm-e308/astm-e308-weights-computed.csv'));
const tables = new Map<string, Record<string, string>[]>();
for (const row of computed) {
  const key = [row['illuminant'], row['observer_deg'], row['step_nm']].join(' ');
  tables.set(key, [...(tables.get(key) ?? []), row]);
}

test.each([...tables.keys()])('weights of %s agree with a table computed by an independent program after ASTM E2022-11, 6 decimals', (key) => {
  const [name, observer, step] = key.split(' ');
  const rows = tables.get(key)!;
  const weights = weightsFor(light(name!), Number(observer) as Observer, 360, Number(step), rows.length);
  expect(weights.method).toBe('e308');
  rows.forEach((row, i) => {
    expect(Math.abs(weights.x[i]! - Number(row['Wx']))).toBeLessThan(1.1e-6);
    expect(Math.abs(weights.y[i]! - Number(row['Wy']))).toBeLessThan(1.1e-6);
    expect(Math.abs(weights.z[i]! - Number(row['Wz']))).toBeLessThan(1.1e-6);
  });
});

test.each(workedSums.filter((sum) => sum.light === 'D65'))('worked sum, $light, $method: $source', ({ method, xyz, tolerance }) => {
  const got = spectrumToXyz(workedSpectrum.values, weightsFor(light('D65'), 2, 400, 20, 16, method));
  got.forEach((value, i) => expect(Math.abs(value - xyz[i]!)).toBeLessThanOrEqual(tolerance));
});

const grids = [
  [360, 10, 43], [400, 10, 31], [380, 10, 36], [360, 20, 22], [400, 20, 16], [420, 20, 10], [380, 5, 81], [400, 1, 301], [360, 1, 421],
  [405, 10, 30], [350, 10, 50], [300, 5, 107], [400, 3.5, 80], [500, 10, 1], [400, 20, 2], [400, 30, 5],
] as const;

test('a white tile is exactly (100, 0, 0) under every light, observer, grid and method, and black has L* 0', () => {
  for (const name of lightNames) for (const observer of [2, 10] as const) for (const [startNm, stepNm, count] of grids) {
    for (const method of ['auto', '1nm'] as const) {
      const tile = (level: number) => ({ startNm, stepNm, values: Array.from({ length: count }, () => level) });
      expect(spectrumToLab(tile(1), light(name), observer, method)).toEqual([100, 0, 0]);
      expect(spectrumToLab(tile(0), light(name), observer, method)[0]).toBeCloseTo(0, 12);
    }
  }
});

test('the white of any weights is the 1 nm white point', () => {
  for (const name of lightNames) for (const [startNm, stepNm, count] of grids) {
    const { white } = weightsFor(light(name), 10, startNm, stepNm, count);
    white.forEach((value, i) => expect(value).toBeCloseTo(whitePoint(light(name), 10)[i]!, 9));
  }
});

test('weights of missing ends are added to the end values (ASTM E308-15)', () => {
  const whole = weightsFor(light('A'), 10, 360, 20, 22);
  const cut = weightsFor(light('A'), 10, 400, 20, 16);
  expect(cut.x[0]).toBeCloseTo(whole.x[0]! + whole.x[1]! + whole.x[2]!, 12);
  expect(cut.y[15]).toBeCloseTo(whole.y.slice(17).reduce((sum, value) => sum + value, 0), 12);
  expect(Array.from(cut.z.slice(1, 15))).toEqual(Array.from(whole.z.slice(3, 17)));
});

test('data beyond 360 nm to 780 nm weigh nothing in the tables', () => {
  const whole = weightsFor(light('D65'), 10, 360, 10, 43);
  const wide = weightsFor(light('D65'), 10, 340, 10, 48);
  expect(Array.from(wide.y)).toEqual([0, 0, ...whole.y, 0, 0, 0]);
});

test('1 nm weights are the sum of interpolated data, and 1 nm data are not interpolated', () => {
  const values = [0.1, 0.4, 0.2, 0.7, 0.3, 0.6, 0.5, 0.9];
  const expected = sumAt1nm(carryTo1nm(values, 410, 45), lightAt1nm('FL11'), 2);
  spectrumToXyz(values, weightsFor(light('FL11'), 2, 410, 45, 8)).forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 5));
  const products = productsOf(light('FL11'), 2);
  expect(Array.from(weightsFor(light('FL11'), 2, 360, 1, 421).x)).toEqual(Array.from(products.x));
});

test('tristimulus values are linear in reflectance', () => {
  const values = fc.array(fc.double({ min: 0, max: 1.2, noNaN: true }), { minLength: 31, maxLength: 31 });
  const weights = weightsFor(light('FL11'), 10, 400, 10, 31);
  fc.assert(fc.property(values, values, fc.double({ min: -2, max: 2, noNaN: true }), (a, b, share) => {
    const [xa, xb, mixed] = [a, b, a.map((value, i) => value + share * b[i]!)].map((each) => spectrumToXyz(each, weights));
    return mixed!.every((value, i) => Math.abs(value - xa![i]! - share * xb![i]!) < 1e-9);
  }));
});

test('weights are made once for a light object, observer, grid and method', () => {
  const first = weightsFor(light('D50'), 10, 400, 10, 31);
  expect(weightsFor(light('D50'), 10, 400, 10, 31, 'e308')).toBe(first);
  expect(weightsFor(light('D50'), 10, 400, 10, 31, '1nm')).not.toBe(first);
  expect(weightsFor(light('D50'), 2, 400, 10, 31)).not.toBe(first);
  expect(weightsFor({ ...light('D50') }, 10, 400, 10, 31)).not.toBe(first);
});

test('a grid that is none is refused, values that are not finite come through as NaN', () => {
  for (const [startNm, stepNm, count] of [[400, 0, 31], [400, -10, 31], [400, NaN, 31], [NaN, 10, 31], [400, 10, 0], [400, 10, NaN]] as const) {
    expect(() => weightsFor(light('D65'), 10, startNm, stepNm, count)).toThrow(RangeError);
  }
  const weights = weightsFor(light('D65'), 10, 400, 10, 31);
  const tile = Array.from({ length: 31 }, () => 0.5);
  expect(spectrumToXyz(tile.with(5, NaN), weights).every(Number.isNaN)).toBe(true);
  expect(spectrumToXyz(tile.slice(0, 30), weights).every(Number.isNaN)).toBe(true);
  expect(spectrumToXyz(tile.with(5, Infinity), weights).some(Number.isFinite)).toBe(false);
});
