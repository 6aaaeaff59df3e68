import { expect, test } from 'vitest';
import { lightByName, spectrumToLab, weightsOf } from '../../src/colour/index.ts';
import { carryTo1nm, cielab, independentLab, lightAt1nm, sumAt1nm, tabulatedLights } from '../support/independent-colorimetry.ts';
import { numbersOf, referenceTable } from '../support/reference-table.ts';
import { seededNumbers, smoothReflectance } from '../support/seeded-numbers.ts';

const layouts = [
  { name: '360-780/10', startNm: 360, stepNm: 10, count: 43 },
  { name: '400-700/10', startNm: 400, stepNm: 10, count: 31 },
  { name: '380-730/10', startNm: 380, stepNm: 10, count: 36 },
  { name: '400-700/20', startNm: 400, stepNm: 20, count: 16 },
  { name: '380-780/5', startNm: 380, stepNm: 5, count: 81 },
  { name: '400-700/1', startNm: 400, stepNm: 1, count: 301 },
  { name: '405-695/10', startNm: 405, stepNm: 10, count: 30, sprague: true },
];

/** Five smooth curves, and one of noise: where the method of interpolation matters. */
function curves(seed: number): ((wavelength: number) => number)[] {
  const random = seededNumbers(seed);
  const noise = new Map<number, number>();
  return [
    ...Array.from({ length: 5 }, () => smoothReflectance(random)),
    (wavelength) => {
      if (!noise.has(wavelength)) noise.set(wavelength, random());
      return noise.get(wavelength)!;
    },
  ];
}

const nanometres = Array.from({ length: 421 }, (_, i) => 360 + i);

test.each(layouts)('CIELAB of $name agrees with an independent computation for every tabulated light and both observers', (layout) => {
  let worst = 0;
  for (const curve of curves(7)) {
    const values = Array.from({ length: layout.count }, (_, i) => curve(layout.startNm + i * layout.stepNm));
    // A step a hair off 10 sends the support code the way of Sprague.
    const at1nm = carryTo1nm(values, layout.startNm, layout.sprague ? layout.stepNm + 1e-12 : layout.stepNm);
    for (const light of tabulatedLights) {
      const power = lightAt1nm(light);
      for (const observer of [2, 10] as const) {
        const expected = cielab(sumAt1nm(at1nm, power, observer), sumAt1nm(nanometres.map(() => 1), power, observer));
        const got = spectrumToLab({ ...layout, values }, lightByName(light)!, observer);
        got.forEach((value, i) => { worst = Math.max(worst, Math.abs(value - expected[i]!)); });
      }
    }
  }
  // The derived 1 nm table of lights has 6 decimals.
  expect(worst).toBeLessThan(2e-6);
});

test.each([5, 10, 20])('CIELAB of the 24 measured patches at %i nm agrees with an independent computation', (step) => {
  // Reflectance: N. Ohta 1997, ISO 17321-1:2012.
  const chart = referenceTable('iso-17321-1/chart-24-patch-reflectance.csv');
  let worst = 0;
  for (const patch of chart.columns.slice(1)) {
    const values = numbersOf(chart, patch).filter((_, i) => (i * 5) % step === 0);
    for (const light of ['D65', 'FL11', 'LED-B3']) {
      const expected = independentLab(values, { startNm: 380, stepNm: step, count: values.length }, light, 10);
      const got = spectrumToLab({ startNm: 380, stepNm: step, values }, lightByName(light)!, 10);
      got.forEach((value, i) => { worst = Math.max(worst, Math.abs(value - expected[i]!)); });
    }
  }
  expect(worst).toBeLessThan(2e-6);
});

test('a finer grid of a smooth curve comes nearer to its 1 nm colour', () => {
  const random = seededNumbers(11);
  const light = lightByName('D65')!;
  const error = (step: number, curve: (wavelength: number) => number) => {
    const lab = (stepNm: number) => spectrumToLab(
      { startNm: 360, stepNm, values: Array.from({ length: 420 / stepNm + 1 }, (_, i) => curve(360 + i * stepNm)) }, light, 10);
    return Math.hypot(...lab(step).map((value, i) => value - lab(1)[i]!));
  };
  const bell = () => {
    const [height, centre, width] = [0.5 * random(), 420 + 280 * random(), 25 + 40 * random()];
    return (wavelength: number) => 0.1 + height * Math.exp(-(((wavelength - centre) / width) ** 2));
  };
  const errors = Array.from({ length: 20 }, bell).map((curve) => [20, 10, 5].map((step) => error(step, curve)));
  const mean = (column: number) => errors.reduce((sum, row) => sum + row[column]!, 0) / errors.length;
  expect(mean(1)).toBeLessThan(mean(0) / 4);
  expect(mean(2)).toBeLessThan(mean(1) / 4);
});

test('the method that was used is the one that the layout allows', () => {
  const light = lightByName('A')!;
  const used = (startNm: number, stepNm: number, count: number, method?: 'e308' | '1nm') =>
    weightsOf({ startNm, stepNm, values: new Float64Array(count) }, light, 10, method).method;
  expect(used(400, 10, 31)).toBe('e308');
  expect(used(400, 20, 16)).toBe('e308');
  expect(used(400, 10, 31, '1nm')).toBe('1nm');
  expect(used(380, 5, 81)).toBe('1nm');
  expect(used(405, 10, 31)).toBe('1nm');
  expect(used(390, 20, 16, 'e308')).toBe('1nm');
  expect(used(380, 5, 81, 'e308')).toBe('1nm');
});
