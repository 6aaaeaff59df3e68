import { expect, test } from 'vitest';
import { labColumns, spectraToLab } from '../../../src/colour/batch/index.ts';
import { spectraOneByOne } from '../../../src/colour/batch/spectra-to-lab.ts';
import { lightByName, spectrumToLab, weightsFor } from '../../../src/colour/index.ts';
import type { Light } from '../../../src/colour/index.ts';
import { independentLab } from '../../support/independent-colorimetry.ts';
import { seededNumbers, smoothReflectance } from '../../support/seeded-numbers.ts';

const names = ['D65', 'A', 'FL11', 'D50', 'FL2', 'LED-B3'];
const lights = names.map((name): Light => lightByName(name)!);
const layouts = [[400, 10, 31], [360, 10, 43], [400, 20, 16], [380, 5, 81], [405, 10, 30]] as const;

function spectra(count: number, [startNm, stepNm, bands]: readonly [number, number, number]): Float64Array {
  const random = seededNumbers(count + bands);
  const values = new Float64Array(count * bands);
  for (let row = 0; row < count; row += 1) {
    const curve = smoothReflectance(random);
    for (let band = 0; band < bands; band += 1) values[row * bands + band] = curve(startNm + band * stepNm);
  }
  return values;
}

test.each(layouts.flatMap((layout) => [0, 1, 3, 4, 5, 23].map((count) => [count, layout] as const)))('%i spectra on %j under six lights: the colours of one by one, to the last bit without vectors', (count, layout) => {
  const [startNm, stepNm, bands] = layout;
  const values = spectra(count, layout);
  const weights = lights.map((light) => weightsFor(light, 10, startNm, stepNm, bands));
  const [into, plain] = [lights.map(() => labColumns(count)), lights.map(() => labColumns(count))];
  spectraToLab(values, weights, into);
  spectraOneByOne(values, weights, plain);
  lights.forEach((light, at) => {
    for (let row = 0; row < count; row += 1) {
      const alone = spectrumToLab({ startNm, stepNm, values: values.slice(row * bands, (row + 1) * bands) }, light, 10);
      expect([plain[at]!.L[row], plain[at]!.a[row], plain[at]!.b[row]]).toEqual([...alone]);
      // 1e-11: what spectraToLab states, for cube roots without Math.cbrt.
      [into[at]!.L[row]!, into[at]!.a[row]!, into[at]!.b[row]!].forEach((value, axis) => expect(Math.abs(value - alone[axis]!)).toBeLessThan(1e-11));
    }
  });
});

test('the colours are those of an independent computation from the published tables', () => {
  const layout = layouts[0];
  const values = spectra(9, layout);
  const tabulated = ['D65', 'A', 'FL11'];
  const into = tabulated.map(() => labColumns(9));
  spectraToLab(values, tabulated.map((name) => weightsFor(lightByName(name)!, 10, layout[0], layout[1], layout[2])), into);
  // Five decimals: the derived table of lights has six.
  tabulated.forEach((name, at) => {
    for (let row = 0; row < 9; row += 1) {
      const expected = independentLab(Array.from(values.slice(row * 31, row * 31 + 31)), { startNm: layout[0], stepNm: layout[1], count: 31 }, name, 10);
      [into[at]!.L[row]!, into[at]!.a[row]!, into[at]!.b[row]!].forEach((value, axis) => expect(value).toBeCloseTo(expected[axis]!, 5));
    }
  });
});

test('a missing value spoils its own spectrum and no other', () => {
  const values = spectra(6, layouts[0]);
  values[2 * 31 + 7] = NaN;
  const into = [labColumns(6)];
  spectraToLab(values, [weightsFor(lights[0]!, 10, 400, 10, 31)], into);
  expect([...into[0]!.L].map(Number.isNaN)).toEqual([false, false, true, false, false, false]);
});

test('lengths that do not fit are refused', () => {
  const weights = [weightsFor(lights[0]!, 10, 400, 10, 31)];
  expect(() => spectraToLab(new Float64Array(32), weights, [labColumns(2)])).toThrow(RangeError);
  expect(() => spectraToLab(new Float64Array(62), weights, [labColumns(1)])).toThrow(RangeError);
  expect(() => spectraToLab(new Float64Array(62), weights, [])).toThrow(RangeError);
});

test('flat reflectances from none to more than white have the L* of CIELAB on both sides of its linear part', () => {
  // ISO/CIE 11664-4:2019, 4.1: L* = 116 f(Y/Yn) - 16, f the cube root above (6/29)^3 and linear below.
  const flat = [0, 1e-9, 1e-4, 0.008, 0.00885, 0.00886, 0.009, 0.04, 0.5, 1, 1.7];
  const values = Float64Array.from(flat.flatMap((value) => Array.from({ length: 31 }, () => value)));
  const into = lights.map(() => labColumns(flat.length));
  spectraToLab(values, lights.map((light) => weightsFor(light, 10, 400, 10, 31)), into);
  for (const { L, a, b } of into) {
    flat.forEach((t, row) => {
      const f = t > (6 / 29) ** 3 ? Math.cbrt(t) : (841 / 108) * t + 4 / 29;
      expect(L[row]).toBeCloseTo(116 * f - 16, 10);
      expect(a[row]).toBeCloseTo(0, 10);
      expect(b[row]).toBeCloseTo(0, 10);
    });
  }
});
