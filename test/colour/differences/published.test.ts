import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { difference } from '../../../src/colour/difference.ts';
import { appearanceExamples } from '../../../src/colour/published/appearance-examples.ts';
import { ciede2000Pairs } from '../../../src/colour/published/ciede2000-pairs.ts';
import { formulaComparison } from '../../../src/colour/published/formula-comparison.ts';
import { verifyDifferences } from '../../../src/colour/verify-differences.ts';
import { formulaLabel } from '../../../src/colour/formula-label.ts';

const printed = readFileSync(new URL('../../reference/ciede2000/sharma-pairs.csv', import.meta.url), 'utf8')
  .split('\n').filter((line) => line !== '' && !line.startsWith('#')).slice(1).map((line) => line.split(',').map(Number));

test('the pairs in the program are the printed pairs', () => {
  expect(printed).toHaveLength(34);
  expect(ciede2000Pairs.map(({ standard, trial, expected }) => [...standard, ...trial, expected])).toEqual(printed);
});

// Sharma, Wu, Dalal 2005, table 1: four decimals, so both orders must round to the printed value.
test.each(ciede2000Pairs.map((pair, index) => [index + 1, pair] as const))('CIEDE2000 pair %i, both ways', (_, { standard, trial, expected }) => {
  expect(difference({ name: 'ciede2000' }, standard, trial).toFixed(4)).toBe(expected.toFixed(4));
  expect(difference({ name: 'ciede2000' }, trial, standard).toFixed(4)).toBe(expected.toFixed(4));
});

test('opposite hues count as opposite in spite of rounding, and only those', () => {
  // The tie of pairs 13 to 15 scaled in steps that no decimal represents exactly.
  for (const scale of [1 / 3, 1 / 7, 0.1, 0.9, 1.1, 7.7]) {
    const at = (b: number) => difference({ name: 'ciede2000' }, [50, -0.001 * scale, 2.49 * scale], [50, b * scale, -2.49 * scale]);
    expect(Math.abs(at(0.001) - at(0.0009))).toBeLessThan(1e-3 * scale);
    expect(at(0.0011)).toBeLessThan(at(0.001) - 1e-3 * scale);
  }
});

const rows = verifyDifferences();

test('every published value is met', () => {
  expect(rows.length).toBeGreaterThanOrEqual(34 + 11 + formulaComparison.length + 4 * appearanceExamples.length);
  expect(rows.filter((row) => !row.ok)).toEqual([]);
  expect(rows.filter((row) => row.source === '' || !Number.isFinite(row.expected) || !(row.tolerance > 0 && row.tolerance < 0.051))).toEqual([]);
});

// Computed independently from the published equations, 4 decimals.
test.each(formulaComparison.map((row) => [formulaLabel(row.formula), row] as const))('%s of a trim pair', (_, row) => {
  expect(Math.abs(difference(row.formula, row.standard, row.trial) - row.expected)).toBeLessThanOrEqual(0.5e-4 + 1e-9);
});
