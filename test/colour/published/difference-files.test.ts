/** The values that `verify` recomputes of differences, appearance, adaptation and metamerism are those of the files, and the program meets the files. */
import { expect, test } from 'vitest';
import { cam16 } from '../../../src/colour/appearance/cam16.ts';
import { ciecam02 } from '../../../src/colour/appearance/ciecam02.ts';
import { uniformColour } from '../../../src/colour/appearance/uniform-space.ts';
import { averageSurround } from '../../../src/colour/appearance/viewing-conditions.ts';
import { din99Constants, din99oDifference, labToDin99o } from '../../../src/colour/differences/din99o.ts';
import { additiveIndex, cmccat2000, colourInconstancy, difference, lightByName, metamerism, multiplicativeIndex, spectrumToLab, spectrumToXyz, weightsOf } from '../../../src/colour/index.ts';
import type { DifferenceFormula } from '../../../src/colour/index.ts';
import { visualDifference } from '../../../src/colour/power-function.ts';
import { inconstancies, workedCmccat2000 } from '../../../src/colour/published/adaptation.ts';
import { appearanceExamples, uniformSpaceExamples } from '../../../src/colour/published/appearance-examples.ts';
import { cie94AndCmcExamples } from '../../../src/colour/published/cie94-cmc-examples.ts';
import { formulaComparison } from '../../../src/colour/published/formula-comparison.ts';
import { analyticIndices, analyticSums, analyticTolerance, waveDifferences, workedAdditive, workedMultiplicative } from '../../../src/colour/published/metamerism.ts';
import { din99Example, din99oExample, greyScaleAnchors, greyScaleExamples, powerFunctionExample, stressExample } from '../../../src/colour/published/other-examples.ts';
import { stress } from '../../../src/colour/stress.ts';
import { numbersOf, recordsOf, referenceTable } from '../../support/reference-table.ts';

type Row = Record<string, string>;
const rowsOf = (path: string): Row[] => recordsOf(referenceTable(path));
const numbers = (row: Row, ...columns: string[]): never => columns.map((column) => Number(row[column])) as never;
const far = (a: ArrayLike<number>, b: ArrayLike<number>): number => Math.max(...Array.from(a, (value, i) => Math.abs(value - b[i]!)));
const first = ['L1', 'a1', 'b1'];
const second = ['L2', 'a2', 'b2'];

const examples = [...rowsOf('cie-116/cie94-examples.csv'), ...rowsOf('iso-105/cmc-examples.csv')];

test('CIE94 and CMC: the examples held are those of the files', () => {
  expect(cie94AndCmcExamples.map(({ formula, standard, trial, expected }) => [formula.name, ...standard, ...trial, expected]))
    .toEqual(examples.map((row) => [row['formula'], ...numbers(row, ...first, ...second, 'difference') as number[]]));
});

test.each(examples)('$formula of ($L1, $a1, $b1) and ($L2, $a2, $b2), 8 decimals', (row) => {
  const formula = { name: row['formula'] } as DifferenceFormula;
  expect(Math.abs(difference(formula, numbers(row, ...first), numbers(row, ...second)) - Number(row['difference']))).toBeLessThanOrEqual(5.1e-9);
});

const tenFormulas: Record<string, DifferenceFormula> = {
  cie76: { name: 'cie76' }, cie94: { name: 'cie94' }, cie94Textile: { name: 'cie94Textile' }, cmc21: { name: 'cmc' }, cmc11: { name: 'cmc', l: 1, c: 1 },
  ciede2000: { name: 'ciede2000' }, ciede2000kL2: { name: 'ciede2000', kL: 2 }, din99o: { name: 'din99o' },
  cam16ucs: { name: 'cam16ucs' }, cam02ucs: { name: 'cam02ucs' },
};
const fivePairs = rowsOf('ciede2000/five-pairs.csv').flatMap((row) => Object.keys(tenFormulas).map((column) => ({ row, column })));

test('the comparison of ten formulas held is that of the file', () => {
  expect(formulaComparison.map(({ formula, standard, trial, expected }) => [formula, ...standard, ...trial, expected]))
    .toEqual(fivePairs.map(({ row, column }) => [tenFormulas[column], ...numbers(row, ...first, ...second, column) as number[]]));
});

test.each(fivePairs)('$column of the trim pair at L* $row.L1, 4 decimals', ({ row, column }) => {
  expect(Math.abs(difference(tenFormulas[column]!, numbers(row, ...first), numbers(row, ...second)) - Number(row[column]))).toBeLessThanOrEqual(5.1e-5);
});

const correlates = ['J', 'C', 'M', 'h'];
const appearance = rowsOf('cie-248/appearance-examples.csv');
const models = { CIECAM02: ciecam02, CAM16: cam16 } as const;

test('appearance models: the examples held are those of the files, and are met', () => {
  expect(appearanceExamples.map(({ model, xyz, white, adaptingLuminance, lightness, chroma, colourfulness, hue }) =>
    [model, ...xyz, ...white, adaptingLuminance, lightness, chroma, colourfulness, hue]))
    .toEqual(appearance.map((row) => [row['model'], ...numbers(row, 'X', 'Y', 'Z', 'Xw', 'Yw', 'Zw', 'LA', ...correlates) as number[]]));
  for (const row of appearance) {
    const conditions = { white: numbers(row, 'Xw', 'Yw', 'Zw'), adaptingLuminance: Number(row['LA']), background: 20, surround: averageSurround };
    const { lightness, chroma, colourfulness, hue } = models[row['model'] as 'CAM16'](conditions)(numbers(row, 'X', 'Y', 'Z'));
    [lightness, chroma, colourfulness, hue].forEach((value, i) => {
      const printed = row[correlates[i]!]!;
      const decimals = printed.length - printed.indexOf('.') - 1;
      expect(Math.abs(value - Number(printed)), `${row['model']} ${correlates[i]}`).toBeLessThanOrEqual(0.51 * 10 ** -decimals);
    });
  }
});

test('uniform coordinates are those of the file, and are met', () => {
  const rows = rowsOf('cie-248/uniform-space-examples.csv');
  expect(uniformSpaceExamples.map(({ model, expected, origin }) => [model, ...expected, origin.kind]))
    .toEqual(rows.map((row) => [row['model'], ...numbers(row, 'J', 'a', 'b') as number[], row['kind']]));
  for (const row of rows) {
    const conditions = { white: [95.05, 100, 108.88], adaptingLuminance: 318.31, background: 20, surround: averageSurround } as const;
    const got = uniformColour(models[row['model'] as 'CAM16'](conditions)([19.01, 20, 21.78]));
    expect(far(got, numbers(row, 'J', 'a', 'b'))).toBeLessThanOrEqual(5.1e-6);
  }
});

test('CMCCAT2000 and colour inconstancy are those of the files, and are met', () => {
  const [row] = rowsOf('cmccat2000/corresponding-colours.csv') as [Row];
  const { xyz, white, referenceWhite, fields, corresponding } = workedCmccat2000;
  expect([...xyz, ...white, ...referenceWhite, fields.testLuminance, fields.referenceLuminance, ...corresponding])
    .toEqual(numbers(row, 'X', 'Y', 'Z', 'Xw', 'Yw', 'Zw', 'Xwr', 'Ywr', 'Zwr', 'LA1', 'LA2', 'Xc', 'Yc', 'Zc'));
  const got = cmccat2000(numbers(row, 'X', 'Y', 'Z'), numbers(row, 'Xw', 'Yw', 'Zw'), numbers(row, 'Xwr', 'Ywr', 'Zwr'),
    { testLuminance: Number(row['LA1']), referenceLuminance: Number(row['LA2']) });
  expect(far(got, numbers(row, 'Xc', 'Yc', 'Zc'))).toBeLessThanOrEqual(5.1e-7);
  const inconstancy = rowsOf('cmccat2000/inconstancy.csv');
  expect(inconstancies.map(({ transform, test: light, cie76, cmc11, ciede2000 }) => [transform, light, cie76, cmc11, ciede2000]))
    .toEqual(inconstancy.map((each) => [each['transform'], each['test'], ...numbers(each, 'cie76', 'cmc11', 'ciede2000') as number[]]));
  for (const each of inconstancy) {
    for (const name of ['cie76', 'cmc11', 'ciede2000']) {
      const value = colourInconstancy(analytic['wave']!, {
        reference: lightByName('D65')!, test: lightByName(each['test']!)!, observer: 10, transform: each['transform'] as 'cat16', formula: tenFormulas[name]!,
      });
      expect(Math.abs(value - Number(each[name]))).toBeLessThanOrEqual(5.1e-5);
    }
  }
});

/** The spectra as the header of iso-18314-4/indices.csv defines them. */
const made = (of: (w: number) => number) => ({ startNm: 400, stepNm: 10, values: Array.from({ length: 31 }, (_, i) => of(400 + 10 * i)) });
const analytic: Record<string, ReturnType<typeof made>> = {
  flat: made(() => 0.06),
  wave: made((w) => 0.06 + 0.012 * Math.sin((2 * Math.PI * (w - 400)) / 100)),
  mismatch: made((w) => 0.06 + 0.010 * Math.exp(-(((w - 620) / 30) ** 2)) - 0.004 * Math.exp(-(((w - 470) / 25) ** 2))),
};

test('corrections of ISO 18314-4 are those of the file, and are met', () => {
  const rows = rowsOf('iso-18314-4/corrections.csv');
  const at = (row: Row, side: string) => ({ reference: numbers(row, `${side}1x`, `${side}1y`, `${side}1z`), test: numbers(row, `${side}2x`, `${side}2y`, `${side}2z`) });
  [workedMultiplicative, workedAdditive].forEach(({ standard, trial, index }, i) => {
    const row = rows[i]!;
    expect({ standard, trial, index }).toEqual({ standard: at(row, 's'), trial: at(row, 't'), index: Number(row['value']) });
    const got = row['index'] === 'additive' ? additiveIndex(at(row, 's'), at(row, 't'), { name: 'cie76' })
      : multiplicativeIndex(at(row, 's'), at(row, 't'), [45.117 / 0.40594, 100, 14.289 / 0.40594], { name: 'cie76' });
    expect(Math.abs(got - Number(row['value']))).toBeLessThanOrEqual(5.1e-5);
  });
});

test('indices, differences and sums of the analytic spectra are those of the files, and are met', () => {
  const indices = ['residual', 'multiplicative', 'additive', 'parametric'] as const;
  const cell = (row: Row, column: string) => (row[column] === '' ? undefined : Number(row[column]));
  const rows = rowsOf('iso-18314-4/indices.csv');
  expect(analyticIndices.map((held) => [held.trial, held.test, ...indices.map((index) => held[index])]))
    .toEqual(rows.map((row) => [row['trial'], row['test'], ...indices.map((index) => cell(row, index))]));
  for (const row of rows) {
    const got = metamerism(analytic['flat']!, analytic[row['trial']!]!,
      { reference: lightByName('D65')!, test: lightByName(row['test']!)!, observer: 10, formula: { name: 'cie76' } });
    for (const index of indices) if (cell(row, index) !== undefined) expect(Math.abs(got[index] - cell(row, index)!)).toBeLessThanOrEqual(analyticTolerance);
  }
  const differences = rowsOf('iso-18314-4/wave-differences.csv');
  expect(waveDifferences.map(({ light, cie76, ciede2000 }) => [light, cie76, ciede2000]))
    .toEqual(differences.map((row) => [row['light'], ...numbers(row, 'cie76', 'ciede2000') as number[]]));
  for (const row of differences) {
    const lab = (name: string) => spectrumToLab(analytic[name]!, lightByName(row['light']!)!, 10);
    for (const name of ['cie76', 'ciede2000']) {
      expect(Math.abs(difference(tenFormulas[name]!, lab('flat'), lab('wave')) - Number(row[name]))).toBeLessThanOrEqual(analyticTolerance);
    }
  }
  const sums = rowsOf('iso-18314-4/sums.csv');
  expect(analyticSums.map(({ spectrum, xyz }) => [spectrum, ...xyz])).toEqual(sums.map((row) => [row['spectrum'], ...numbers(row, 'X', 'Y', 'Z') as number[]]));
  for (const row of sums) {
    const spectrum = analytic[row['spectrum']!]!;
    expect(far(spectrumToXyz(spectrum.values, weightsOf(spectrum, lightByName('D65')!, 10)), numbers(row, 'X', 'Y', 'Z'))).toBeLessThanOrEqual(1.2e-5);
  }
});

test('DIN99, DIN99o, STRESS and the visual scale are those of the files, and are met', () => {
  const [din99] = rowsOf('din-6176/din99.csv') as [Row];
  const { standard, trial, expected } = din99Example;
  expect([...standard, ...trial, expected]).toEqual(numbers(din99, ...first, ...second, 'difference'));
  expect(Math.abs(din99oDifference(numbers(din99, ...first), numbers(din99, ...second), 1, 1, din99Constants) - expected)).toBeLessThanOrEqual(5.1e-10);
  const [din99o] = rowsOf('din-6176/din99o.csv') as [Row];
  expect([...din99oExample.lab, ...din99oExample.expected]).toEqual(numbers(din99o, 'L', 'a', 'b', 'L99o', 'a99o', 'b99o'));
  expect(far(labToDin99o(numbers(din99o, 'L', 'a', 'b')), numbers(din99o, 'L99o', 'a99o', 'b99o'))).toBeLessThanOrEqual(5.1e-5);

  const table = referenceTable('ciede2000/stress.csv');
  expect([stressExample.computed, stressExample.perceived]).toEqual([numbersOf(table, 'computed'), numbersOf(table, 'perceived')]);
  expect(table.notes.join(' ')).toContain(String(stressExample.expected));
  expect(Math.abs(stress(numbersOf(table, 'computed'), numbersOf(table, 'perceived')) - 0.121170939)).toBeLessThanOrEqual(5.1e-10);
  const visual = referenceTable('ciede2000/visual-scale.csv');
  expect([powerFunctionExample.values, powerFunctionExample.expected]).toEqual([numbersOf(visual, 'difference'), numbersOf(visual, 'visual')]);
  expect(far(numbersOf(visual, 'difference').map((value) => visualDifference({ name: 'ciede2000' }, value)!), numbersOf(visual, 'visual'))).toBeLessThanOrEqual(5.1e-7);
});

test('the grey scale held is that of the files', () => {
  const pairs = rowsOf('iso-105/grey-scale-pairs.csv');
  const nominal = (grade: string) => (grade.includes('-') ? Number(grade[0]) + 0.5 : Number(grade));
  expect(greyScaleAnchors.rows).toEqual(pairs.map((row) => [nominal(row['grade']!), Number(row['difference'])]));
  const grades = rowsOf('iso-105/change-grades.csv');
  for (const { standard, trial, difference: dEF, value, grade, decimals } of greyScaleExamples) {
    const row = grades.find((each) => far(numbers(each, ...first, ...second), [...standard, ...trial]) === 0);
    expect(row?.['grade']).toBe(grade);
    expect([dEF, value]).toEqual([Number(Number(row!['difference']).toFixed(decimals[0])), Number(Number(row!['value']).toFixed(decimals[1]))]);
  }
});
