import { expect, test } from 'vitest';
import { components } from '../../../src/colour/components.ts';
import { differenceWords } from '../../../src/colour/difference-words.ts';
import { formulaLabel } from '../../../src/colour/formula-label.ts';
import type { DifferenceFormula } from '../../../src/colour/difference-formula.ts';
import type { Lab } from '../../../src/quantities.ts';
import { farPairs } from './seeded-pairs.ts';

test('components are trial minus standard, and chroma and hue carry what a* and b* do', () => {
  for (const [standard, trial] of farPairs(1000, 20272)) {
    const { dL, da, db, dC, dH } = components(standard, trial);
    expect([dL, da, db]).toEqual([trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]]);
    expect(dC * dC + dH * dH).toBeCloseTo(da * da + db * db, 8);
    // ISO/CIE 11664-4: dH = 2 sqrt(C1 C2) sin(dh / 2), by angles here.
    const [c1, c2] = [Math.hypot(standard[1], standard[2]), Math.hypot(trial[1], trial[2])];
    const turn = Math.atan2(trial[2], trial[1]) - Math.atan2(standard[2], standard[1]);
    const wrapped = turn > Math.PI ? turn - 2 * Math.PI : turn <= -Math.PI ? turn + 2 * Math.PI : turn;
    expect(dH).toBeCloseTo(2 * Math.sqrt(c1 * c2) * Math.sin(wrapped / 2), 9);
    expect(components(trial, standard).dH).toBeCloseTo(-dH, 9);
  }
});

test('the hue difference of a neutral colour is 0, of opposite hues positive', () => {
  expect(components([50, 0, 0], [50, 3, 4])).toEqual({ dL: 0, da: 3, db: 4, dC: 5, dH: 0 });
  expect(components([50, 3, 4], [50, -3, -4]).dH).toBeCloseTo(10, 12);
});

test('the hue difference of near hues keeps its digits', () => {
  // Exact: cross product 3e-7 over chroma 30, to first order.
  expect(components([50, 30, 0], [50, 30, 1e-8]).dH).toBeCloseTo(1e-8, 20);
});

const polar = (L: number, chroma: number, degrees: number): Lab =>
  [L, chroma * Math.cos((degrees * Math.PI) / 180), chroma * Math.sin((degrees * Math.PI) / 180)];

// Directions as in ISO 105-J03 and ASTM D2244.
const said: readonly (readonly [string, Lab, Lab, readonly string[]])[] = [
  ['a dark grey gone light, green and blue', [27.5, 0.2, -0.6], [28.1, 0.05, -0.95], ['lighter', 'greener', 'bluer']],
  ['a grey gone dark, red and yellow', [50, 0, 0], [49, 1, 2], ['darker', 'redder', 'yellower']],
  ['a grey whose hue swings with noise', [50, 0.04, 0], [50, -0.04, 0], []],
  ['equal colours', [50, 10, 20], [50, 10, 20], []],
  ['a red gone yellower', polar(40, 50, 0), polar(40, 50, 4), ['yellower']],
  ['a red gone bluer and less chromatic', polar(40, 50, 0), polar(40, 45, -4), ['bluer', 'less chromatic']],
  ['an orange gone redder', polar(60, 55, 45), polar(60, 55, 41), ['redder']],
  ['an orange gone yellower', polar(60, 55, 45), polar(60, 55, 49), ['yellower']],
  ['a yellow gone greener', polar(80, 60, 90), polar(80, 60, 93), ['greener']],
  ['a yellow gone redder', polar(80, 60, 90), polar(80, 60, 87), ['redder']],
  ['a green gone bluer', polar(50, 40, 180), polar(50, 40, 184), ['bluer']],
  ['a green gone yellower', polar(50, 40, 180), polar(50, 40, 176), ['yellower']],
  ['a yellowish green gone greener', polar(50, 40, 133), polar(50, 40, 137), ['greener']],
  ['a blue gone redder', polar(30, 40, 270), polar(30, 40, 274), ['redder']],
  ['a blue gone greener and more chromatic', polar(30, 40, 270), polar(30, 44, 266), ['greener', 'more chromatic']],
  ['a purple gone bluer', polar(40, 40, 315), polar(40, 40, 310), ['bluer']],
];

test.each(said)('%s', (_, standard, trial, words) => {
  expect(differenceWords(standard, trial)).toEqual(words);
});

test('components below the threshold are not named', () => {
  expect(differenceWords([50, 0, 0], [50.5, 0.2, -0.05])).toEqual(['lighter', 'redder']);
  expect(differenceWords([50, 0, 0], [50.5, 0.2, -0.05], 0.3)).toEqual(['lighter']);
  expect(differenceWords([50, 0, 0], [50.5, 0.2, -0.05], 0)).toEqual(['lighter', 'redder', 'bluer']);
});

test('swapping the colours turns every word round', () => {
  const opposite: Readonly<Record<string, string>> = {
    'lighter': 'darker', 'redder': 'greener', 'yellower': 'bluer', 'more chromatic': 'less chromatic',
    'darker': 'lighter', 'greener': 'redder', 'bluer': 'yellower', 'less chromatic': 'more chromatic',
  };
  for (const [standard, trial] of farPairs(200, 20273)) {
    // Muted colours only: between two axes a chromatic hue turns to one or the other, which are no opposites.
    const muted = ([L, a, b]: Lab): Lab => [L, a / 10, b / 10];
    expect(differenceWords(muted(trial), muted(standard))).toEqual(differenceWords(muted(standard), muted(trial)).map((word) => opposite[word]));
  }
});

const labels: readonly (readonly [DifferenceFormula, string])[] = [
  [{ name: 'cie76' }, 'CIE76'], [{ name: 'cie94' }, 'CIE94'], [{ name: 'cie94', kL: 2 }, 'CIE94 (kL 2)'],
  [{ name: 'cie94Textile' }, 'CIE94 (textile)'], [{ name: 'cie94Textile', kL: 1 }, 'CIE94 (textile, kL 1)'],
  [{ name: 'cmc' }, 'CMC(2:1)'], [{ name: 'cmc', l: 1, c: 1 }, 'CMC(1:1)'],
  [{ name: 'ciede2000' }, 'CIEDE2000'], [{ name: 'ciede2000', kL: 2 }, 'CIEDE2000 (kL 2)'],
  [{ name: 'ciede2000', kL: 1, kC: 1.5, kH: 0.8 }, 'CIEDE2000 (kC 1.5, kH 0.8)'],
  [{ name: 'din99o' }, 'DIN99o'], [{ name: 'din99o', kL: 2 }, 'DIN99o (kE 2, kCH 0.5)'],
  [{ name: 'cam02ucs' }, 'CAM02-UCS'], [{ name: 'cam16ucs', kL: 1.2 }, 'CAM16-UCS (KL 1.2)'],
];

test.each(labels)('label of %o', (formula, label) => {
  expect(formulaLabel(formula)).toBe(label);
});
