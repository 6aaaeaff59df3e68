import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { difference, isOrdered } from '../../../src/colour/difference.ts';
import { formulaLabel } from '../../../src/colour/formula-label.ts';
import type { DifferenceFormula } from '../../../src/colour/difference-formula.ts';
import type { Lab } from '../../../src/quantities.ts';
import { allFormulas } from './all-formulas.ts';

const coordinate = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const anyLab: fc.Arbitrary<Lab> = fc.tuple(coordinate(0, 100), coordinate(-100, 100), coordinate(-100, 100));
const labelled = allFormulas.map((formula) => [formulaLabel(formula), formula] as const);

test.each(labelled)('%s: equal colours differ by exactly 0, others never by less', (_, formula) => {
  fc.assert(fc.property(anyLab, anyLab, (standard, trial) => {
    expect(difference(formula, standard, [...standard])).toBe(0);
    expect(difference(formula, standard, trial)).toBeGreaterThanOrEqual(0);
  }));
});

test.each(labelled.filter(([, formula]) => !isOrdered(formula)))('%s: swapping the colours changes nothing', (_, formula) => {
  fc.assert(fc.property(anyLab, anyLab, (standard, trial) => {
    const there = difference(formula, standard, trial);
    expect(Math.abs(difference(formula, trial, standard) - there)).toBeLessThanOrEqual(1e-12 * (1 + there));
  }));
});

test.each(labelled.filter(([, formula]) => isOrdered(formula)))('%s: swapping the colours changes the value', (_, formula) => {
  expect(difference(formula, [40, 10, 5], [42, 16, 9])).not.toBeCloseTo(difference(formula, [42, 16, 9], [40, 10, 5]), 3);
});

const factored: readonly (readonly [string, (k: number) => DifferenceFormula])[] = [
  ['CIE94', (kL) => ({ name: 'cie94', kL })], ['CIE94 textile', (kL) => ({ name: 'cie94Textile', kL })], ['CMC', (l) => ({ name: 'cmc', l })],
  ['CIEDE2000', (kL) => ({ name: 'ciede2000', kL })], ['DIN99o', (kL) => ({ name: 'din99o', kL })],
  ['CAM02-UCS', (kL) => ({ name: 'cam02ucs', kL })], ['CAM16-UCS', (kL) => ({ name: 'cam16ucs', kL })],
];

test.each(factored)('%s: a larger lightness factor never gives a larger difference', (_, formula) => {
  fc.assert(fc.property(anyLab, anyLab, coordinate(0.5, 3), coordinate(0, 2), (standard, trial, factor, more) => {
    const smaller = difference(formula(factor + more), standard, trial);
    const larger = difference(formula(factor), standard, trial);
    expect(smaller).toBeLessThanOrEqual(larger * (1 + 1e-12) + 1e-12);
  }));
  // Pure lightness: the factor divides.
  expect(difference(formula(2), [40, 0, 0], [42, 0, 0])).toBeCloseTo(difference(formula(1), [40, 0, 0], [42, 0, 0]) / 2, 2);
});

test('factors left out are the usual ones', () => {
  const [standard, trial]: readonly [Lab, Lab] = [[32, 38, 18], [32.8, 39.5, 17.2]];
  const pairs: readonly (readonly [DifferenceFormula, DifferenceFormula])[] = [
    [{ name: 'cmc' }, { name: 'cmc', l: 2, c: 1 }],
    [{ name: 'cie94Textile' }, { name: 'cie94Textile', kL: 2, kC: 1, kH: 1 }],
    [{ name: 'cie94' }, { name: 'cie94', kL: 1, kC: 1, kH: 1 }],
    [{ name: 'ciede2000' }, { name: 'ciede2000', kL: 1, kC: 1, kH: 1 }],
  ];
  for (const [short, full] of pairs) expect(difference(short, standard, trial)).toBe(difference(full, standard, trial));
});
