import { inv, multiply, transpose } from 'mathjs';
import { expect, test } from 'vitest';
import type { Lab } from '../../src/quantities.ts';
import { additiveIndex, lightByName, metamerism, multiplicativeIndex, parametricMatch, spectrumToLab, weightsOf } from '../../src/colour/index.ts';
import {
  analyticIndices, analyticSpectra, analyticSums, analyticTolerance, waveDifferences, workedAdditive, workedMultiplicative,
} from '../../src/colour/published/metamerism.ts';
import { spectrumToXyz } from '../../src/colour/index.ts';
import { carryTo1nm, cielab, independentLab, lightAt1nm, sumAt1nm } from '../support/independent-colorimetry.ts';
import { seededNumbers, smoothReflectance } from '../support/seeded-numbers.ts';

const cie76 = { name: 'cie76' } as const;
const light = (name: string) => lightByName(name)!;
const conditions = (test: string) => ({ reference: light('D65'), test: light(test), observer: 10, formula: cie76 }) as const;
const { flat, wave, mismatch } = analyticSpectra;
const distance = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((value, i) => value - b[i]!));

test('multiplicative and additive index, worked examples (ISO 18314-4:2024; colour-science, 4 decimals)', () => {
  const { standard, trial, testWhite, index } = workedMultiplicative;
  expect(multiplicativeIndex(standard, trial, testWhite, cie76)).toBeCloseTo(index, 4);
  expect(additiveIndex(workedAdditive.standard, workedAdditive.trial, cie76)).toBeCloseTo(workedAdditive.index, 4);
});

test.each(analyticSums)('tristimulus values of $spectrum (independent program to 830 nm, 6 decimals)', ({ spectrum, xyz }) => {
  const got = spectrumToXyz(analyticSpectra[spectrum].values, weightsOf(analyticSpectra[spectrum], light('D65'), 10));
  got.forEach((value, i) => expect(Math.abs(value - xyz[i]!)).toBeLessThan(1.2e-5));
});

test.each(waveDifferences)('difference of flat and wave under $light (independent program, 4 decimals)', (row) => {
  const got = distance(spectrumToLab(flat, light(row.light), 10), spectrumToLab(wave, light(row.light), 10));
  expect(Math.abs(got - row.cie76)).toBeLessThan(analyticTolerance);
});

test.each(analyticIndices)('indices of flat and $trial from D65 to $test (independent program, 4 decimals)', (row) => {
  const got = metamerism(flat, analyticSpectra[row.trial], conditions(row.test));
  for (const index of ['residual', 'multiplicative', 'additive', 'parametric'] as const) {
    const expected = row[index];
    if (expected !== undefined) expect(Math.abs(got[index] - expected), index).toBeLessThan(analyticTolerance);
  }
});

/** Indices straight from the formulas, on the independent colorimetry and a projector made by mathjs. */
function independentIndices(standard: readonly number[], trial: readonly number[], test: string) {
  const layout = { startNm: 400, stepNm: 10, count: 31 };
  const xyz = (values: readonly number[], name: string) => sumAt1nm(carryTo1nm(values, 400, 10), lightAt1nm(name), 10);
  const ones = standard.map(() => 1);
  const lab = (values: readonly number[], name: string) => independentLab(values, layout, name, 10);
  // The weights of a band are the tristimulus values of a spectrum that is 1 in it and 0 elsewhere.
  const a = standard.map((_, band) => xyz(ones.map((__, i) => (i === band ? 1 : 0)), 'D65'));
  const projector = multiply(multiply(a, inv(multiply(transpose(a), a))), transpose(a)) as number[][];
  const fundamental = (values: readonly number[]) => multiply(projector, [...values]) as number[];
  const matched = trial.map((value, i) => value - fundamental(trial)[i]! + fundamental(standard)[i]!);
  const shifted = xyz(trial, test).map((value, i) => (value * xyz(standard, 'D65')[i]!) / xyz(trial, 'D65')[i]!);
  const moved = lab(trial, test).map((value, i) => value - lab(trial, 'D65')[i]! + lab(standard, 'D65')[i]!);
  return {
    residual: distance(lab(standard, 'D65'), lab(trial, 'D65')),
    multiplicative: distance(lab(standard, test), cielab(shifted, xyz(ones, test))),
    additive: distance(lab(standard, test), moved),
    parametric: distance(lab(standard, test), lab(matched, test)),
  };
}

test('indices of random pairs agree with an independent computation', () => {
  const random = seededNumbers(21);
  for (let i = 0; i < 6; i += 1) {
    const [first, second] = [smoothReflectance(random), smoothReflectance(random)];
    const standard = Array.from({ length: 31 }, (_, k) => first(400 + 10 * k));
    const trial = standard.map((value, k) => 0.9 * value + 0.1 * second(400 + 10 * k));
    for (const test of ['A', 'FL11', 'LED-B3']) {
      const got = metamerism({ startNm: 400, stepNm: 10, values: standard }, { startNm: 400, stepNm: 10, values: trial }, conditions(test));
      const expected = independentIndices(standard, trial, test);
      for (const index of ['residual', 'multiplicative', 'additive', 'parametric'] as const) {
        expect(got[index], `${index} ${test}`).toBeCloseTo(expected[index], 5);
      }
    }
  }
});

test('the matched spectrum has the colour of the standard under the reference, and the metameric black of the trial', () => {
  const weights = weightsOf(flat, light('D65'), 10);
  const matched = parametricMatch(flat.values, mismatch.values, weights);
  const [standard, got] = [spectrumToXyz(flat.values, weights), spectrumToXyz(matched, weights)];
  got.forEach((value, i) => expect(value).toBeCloseTo(standard[i]!, 10));
  // What was added lies in the span of the weights: fitting it by them leaves nothing.
  const again = parametricMatch(matched, mismatch.values, weights);
  again.forEach((value, i) => expect(value).toBeCloseTo(matched[i]!, 10));
});

test('a pair of equal spectra has no metamerism, and a pair that matches exactly has the same index in every way', () => {
  const none = metamerism(wave, wave, conditions('FL11'));
  Object.values(none).forEach((value) => expect(value).toBeLessThan(1e-12));
  const matched = { ...wave, values: parametricMatch(flat.values, wave.values, weightsOf(flat, light('D65'), 10)) };
  const got = metamerism(flat, matched, conditions('FL11'));
  expect(got.residual).toBeLessThan(1e-10);
  expect(got.multiplicative).toBeCloseTo(got.additive, 9);
  expect(got.parametric).toBeCloseTo(got.additive, 9);
  expect(got.additive).toBeGreaterThan(1);
});

test('under the reference light itself every index vanishes', () => {
  const { multiplicative, additive, parametric } = metamerism(flat, mismatch, conditions('D65'));
  [multiplicative, additive, parametric].forEach((value) => expect(value).toBeLessThan(1e-9));
});

test('spectra on different grids are brought to 1 nm', () => {
  const fine = { startNm: 400, stepNm: 5, values: Array.from({ length: 61 }, (_, i) => 0.06 + 0.012 * Math.sin((2 * Math.PI * i) / 20)) };
  const got = metamerism(flat, fine, conditions('FL11'));
  const same = metamerism(flat, wave, conditions('FL11'));
  expect(got.multiplicative).toBeCloseTo(same.multiplicative, 1);
  expect(got.multiplicative).not.toBe(same.multiplicative);
});

test('black pairs and short spectra: no exception, the parametric index NaN below three bands', () => {
  const black = { startNm: 400, stepNm: 10, values: new Float64Array(31) };
  const toBlack = metamerism(flat, black, conditions('A'));
  expect(Object.values(toBlack).every(Number.isFinite)).toBe(true);
  expect(Object.values(metamerism(black, black, conditions('A'))).every((value) => value === 0)).toBe(true);
  const short = { startNm: 500, stepNm: 10, values: [0.2, 0.3] };
  expect(metamerism(short, short, conditions('A'))).toMatchObject({ residual: 0, multiplicative: 0, additive: 0, parametric: NaN });
});

test('the additive index takes the standard as the reference of an ordered formula', () => {
  const [s, t]: [Lab, Lab] = [[50, 40, 0], [50, 44, 0]];
  const cmc = { name: 'cmc', l: 1, c: 1 } as const;
  const there = additiveIndex({ reference: s, test: s }, { reference: s, test: t }, cmc);
  const back = additiveIndex({ reference: t, test: t }, { reference: t, test: s }, cmc);
  expect(there).toBeGreaterThan(back);
});
