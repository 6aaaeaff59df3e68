/** The values that `verify` recomputes from spectrum to CIELAB are those of the files, and the program meets the files. */
import { expect, test } from 'vitest';
import { correctBandpass, interpolant, interpolate, spectrumToXyz, xyzToLab } from '../../../src/colour/index.ts';
import { lightByName, userLight } from '../../../src/colour/lights.ts';
import { workedCielab, workedLightness } from '../../../src/colour/published/cielab.ts';
import { workedBandpass, workedInterpolation } from '../../../src/colour/published/interpolation.ts';
import { workedSpectrum, workedSums, workedWeights, workedWideWeights } from '../../../src/colour/published/summation.ts';
import { weightsFor } from '../../../src/colour/weights.ts';
import { numbersOf, recordsOf, referenceTable } from '../../support/reference-table.ts';

const reflectance = referenceTable('astm-e308/worked-spectrum.csv');
const sums = recordsOf(referenceTable('astm-e308/worked-sums.csv'));
const weights = recordsOf(referenceTable('astm-e308/worked-weights.csv'));
const sprague = recordsOf(referenceTable('cie-167/sprague.csv'));
const bandpass = referenceTable('astm-e2729/bandpass.csv');
const cielab = recordsOf(referenceTable('cie-11664-4/cielab.csv'));
const lightness = recordsOf(referenceTable('cie-11664-4/lightness.csv'));

const numbers = (row: Record<string, string>, ...columns: string[]): number[] => columns.map((column) => Number(row[column]));
const far = (a: ArrayLike<number>, b: ArrayLike<number>): number => Math.max(...Array.from(a, (value, i) => Math.abs(value - b[i]!)));

test('the worked spectrum, its sums and single weights are those of the files', () => {
  expect(Array.from(workedSpectrum.values, (_, i) => workedSpectrum.startNm + i * workedSpectrum.stepNm)).toEqual(numbersOf(reflectance, 'wavelength'));
  expect(workedSpectrum.values).toEqual(numbersOf(reflectance, 'reflectance'));
  expect(workedSums.map(({ light, method, xyz, tolerance, origin }) => [light, method, ...xyz, tolerance, origin.kind]))
    .toEqual(sums.map((row) => [row['light'], row['method'], ...numbers(row, 'X', 'Y', 'Z', 'tolerance'), row['kind']]));
  const rows = (range: string) => weights.filter((row) => row['range'] === range)
    .map((row) => [...numbers(row, 'wavelength', 'Wx', 'Wy', 'Wz', 'tolerance'), row['kind']]);
  const held = (list: typeof workedWeights | typeof workedWideWeights) =>
    list.map(({ wavelength, xyz, tolerance, origin }) => [wavelength, ...xyz, tolerance, origin.kind]);
  expect(held(workedWeights)).toEqual(rows('cut'));
  expect(held(workedWideWeights)).toEqual(rows('wide'));
});

test.each(sums)('sum of the worked spectrum, $light, $method ($kind)', (row) => {
  const light = row['light'] === 'E' ? userLight('E', 360, 5, Array.from({ length: 85 }, () => 1)) : lightByName(row['light']!)!;
  const table = weightsFor(light, 2, 400, 20, 16, row['method'] as 'e308' | '1nm');
  expect(far(spectrumToXyz(numbersOf(reflectance, 'reflectance'), table), numbers(row, 'X', 'Y', 'Z'))).toBeLessThanOrEqual(Number(row['tolerance']));
});

test.each(weights.filter((row) => row['range'] === 'cut'))('weight of A, 10 deg, 20 nm at $wavelength nm', (row) => {
  const table = weightsFor(lightByName('A')!, 10, 400, 20, 16, 'e308');
  const at = (Number(row['wavelength']) - 400) / 20;
  expect(far([table.x[at]!, table.y[at]!, table.z[at]!], numbers(row, 'Wx', 'Wy', 'Wz'))).toBeLessThanOrEqual(Number(row['tolerance']));
});

test('interpolation and bandpass correction are those of the files, and are met', () => {
  const given = sprague.filter((row) => row['kind'] === 'given').map((row) => Number(row['value']));
  const at = sprague.filter((row) => row['kind'] === 'worked example').map((row) => ({ position: Number(row['position']), value: Number(row['value']) }));
  expect(workedInterpolation.values).toEqual(given);
  expect(workedInterpolation.at).toEqual(at);
  // 6 decimals printed.
  for (const { position, value } of at) expect(Math.abs(interpolate(given, interpolant(0, 1, given.length, position)) - value)).toBeLessThanOrEqual(5.1e-7);
  expect([workedBandpass.measured, workedBandpass.corrected]).toEqual([numbersOf(bandpass, 'measured'), numbersOf(bandpass, 'corrected')]);
  // 5 decimals printed.
  expect(far(correctBandpass(numbersOf(bandpass, 'measured')), numbersOf(bandpass, 'corrected'))).toBeLessThanOrEqual(5.1e-6);
});

test('CIELAB is that of the files, and is met', () => {
  const xyz = ['X', 'Y', 'Z'];
  const white = ['Xn', 'Yn', 'Zn'];
  const lab = ['L', 'a', 'b'];
  expect(workedCielab).toHaveLength(cielab.length);
  workedCielab.forEach((held, i) => {
    const row = cielab[i]!;
    expect([...held.xyz, ...held.lab, held.tolerance, held.origin.kind]).toEqual([...numbers(row, ...xyz, ...lab, 'tolerance'), row['kind']]);
    // The white of the first row is worked out from its chromaticity, so it is not the same to the last bit.
    expect(far(held.white, numbers(row, ...white))).toBeLessThan(1e-12 * 100);
    expect(far(xyzToLab(numbers(row, ...xyz) as never, numbers(row, ...white) as never), numbers(row, ...lab))).toBeLessThanOrEqual(Number(row['tolerance']));
  });
  expect(workedLightness.map(({ y, lightness: value }) => [y, value])).toEqual(lightness.map((row) => numbers(row, 'Y', 'L')));
  for (const row of lightness) {
    const y = Number(row['Y']);
    expect(Math.abs(xyzToLab([y, y, y], [100, 100, 100])[0] - Number(row['L']))).toBeLessThanOrEqual(5e-5);
  }
});
