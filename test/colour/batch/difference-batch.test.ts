import { differenceCie76, differenceCie94, differenceCiede2000, differenceCmc, type Lab65 } from 'culori';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { differenceBatch, labColumns, type LabColumns } from '../../../src/colour/batch/index.ts';
import { ciede2000InPlainNumbers } from '../../../src/colour/batch/ciede2000-batch.ts';
import { ciede2000BySimd } from '../../../src/colour/batch/simd/ciede2000-kernel.ts';
import { difference } from '../../../src/colour/difference.ts';
import type { DifferenceFormula } from '../../../src/colour/difference-formula.ts';
import { formulaLabel } from '../../../src/colour/formula-label.ts';
import { cie94AndCmcExamples } from '../../../src/colour/published/cie94-cmc-examples.ts';
import { ciede2000Pairs } from '../../../src/colour/published/ciede2000-pairs.ts';
import { formulaComparison } from '../../../src/colour/published/formula-comparison.ts';
import type { Lab } from '../../../src/quantities.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';
import { allFormulas } from '../differences/all-formulas.ts';
import { farPairs, nearPairs, type Pair } from '../differences/seeded-pairs.ts';

function columnsOf(pairs: readonly Pair[]): readonly [LabColumns, LabColumns] {
  const sides = [labColumns(pairs.length), labColumns(pairs.length)] as const;
  pairs.forEach((pair, place) => {
    sides.forEach((columns, side) => {
      [columns.L[place], columns.a[place], columns.b[place]] = pair[side]!;
    });
  });
  return sides;
}

function batch(formula: DifferenceFormula, pairs: readonly Pair[]): Float64Array {
  const [standard, trial] = columnsOf(pairs);
  return differenceBatch(formula, standard, trial, new Float64Array(pairs.length));
}

const published = [...ciede2000Pairs, ...cie94AndCmcExamples, ...formulaComparison];

test.each(published)('published: $formula.name of $standard and $trial is $expected', ({ formula, standard, trial, expected, decimals }) => {
  expect(Math.abs(batch(formula, [[standard, trial]])[0]! - expected)).toBeLessThanOrEqual(0.5 * 10 ** -decimals * 1.0001);
});

const radians = Math.PI / 180;
const polar = (L: number, chroma: number, hue: number): Lab => [L, chroma * Math.cos(hue * radians), chroma * Math.sin(hue * radians)];

/** Pairs about the places where the formulas turn a corner: hue 0, quarter turns, the edges of CMC at 164 and 345 degrees, opposite hues. */
function cornerPairs(): Pair[] {
  const random = seededNumbers(31);
  const hues = [0, 90, 164, 180, 270, 275, 345, 360].flatMap((hue) => [-1e-7, -1e-3, -0.2, 1e-7, 1e-3, 0.2].map((off) => hue + off));
  return hues.flatMap((hue) => [0.3, 12, 70].flatMap((chroma) => [1e-6, 1e-3, 0.5, 20, 179, 179.9999].flatMap((step): Pair[] => {
    const [L, stretch] = [100 * random(), 1 + 0.2 * random()];
    return [[polar(L, chroma, hue), polar(L + random(), stretch * chroma, hue + step)], [polar(L, chroma, hue), polar(L + random(), stretch * chroma, hue - step)]];
  })));
}

/** Hues exactly opposite, in either order and from either half of the plane. */
function oppositePairs(): Pair[] {
  const corners: readonly (readonly [number, number])[] = [[1, 0], [0, 1], [-1, 0], [0, -1], [1, 1], [-1, 1], [-1, -1], [1, -1], [2.49, -0.001], [-2.49, 0.001]];
  return corners.flatMap(([a, b]) => [0.25, 1, 4].map((share): Pair => [[50, a, b], [51, -share * a, -share * b]]));
}

function neutralPairs(): Pair[] {
  const colours: readonly Lab[] = [[0, 0, 0], [50, 0, 0], [50, -0, 0], [50, 0, -0], [12, 1e-60, 0], [12, 0, -1e-12], [30, 3, -4], [30, 1e-9, 2e-9], [100, 0, 0]];
  return colours.flatMap((first) => colours.map((second): Pair => [first, second]));
}

const sets: readonly (readonly [string, readonly Pair[]])[] = [
  ['far', farPairs(4000, 20301)],
  ['near', nearPairs(4000, 20302, 1, 60)],
  ['near grey', nearPairs(4000, 20303, 0.5, 1.5)],
  ['near black', nearPairs(2000, 20304, 0.4, 0.4).map(([[, a1, b1], [, a2, b2]], place): Pair => [[0.001 * place, a1, b1], [0.0009 * place, a2, b2]])],
  ['equal', farPairs(500, 20305).map(([colour]): Pair => [colour, colour])],
  ['neutral', neutralPairs()],
  ['at the corners of hue', cornerPairs()],
  ['opposite in hue', oppositePairs()],
  ['out of all bounds', farPairs(500, 20306).map(([[L1, a1, b1], [L2, a2, b2]]): Pair => [[L1 * 1e4, a1 * 1e6, b1], [L2, a2 * 1e6, b2 * 1e-20]])],
];

const cases = allFormulas.flatMap((formula) => sets.map(([kind, pairs]) => [formulaLabel(formula), kind, formula, pairs] as const));

test.each(cases)('%s agrees with its definition on pairs %s', (_, __, formula, pairs) => {
  const found = batch(formula, pairs);
  let worst = 0;
  pairs.forEach(([standard, trial], place) => {
    const expected = difference(formula, standard, trial);
    worst = Math.max(worst, Math.abs(found[place]! - expected) / Math.max(1, 1e-3 * expected));
  });
  expect(worst).toBeLessThan(1e-9);
});

const notFinite = [NaN, Infinity, -Infinity, 1e200].flatMap((value): Pair[] => [[[value, 1, 2], [3, 4, 5]], [[3, 4, 5], [3, value, 5]], [[3, 4, value], [3, 4, -5]]]);

test.each([...sets, ['not finite', notFinite] as const])('CIEDE2000 by vectors and in plain numbers are the same to the last bit: pairs %s', (_, pairs) => {
  const [standard, trial] = columnsOf(pairs);
  const [byVectors, plain] = [new Float64Array(pairs.length), new Float64Array(pairs.length)];
  expect(ciede2000BySimd(standard, trial, byVectors, 1.2, 0.9, 1.1)).toBe(true);
  ciede2000InPlainNumbers(standard, trial, plain, 1.2, 0.9, 1.1);
  expect([...byVectors].map((value) => (Number.isFinite(value) ? value : NaN))).toEqual([...plain].map((value) => (Number.isFinite(value) ? value : NaN)));
});

test('CIEDE2000 in plain numbers, which few pairs and engines without vectors get, agrees with its definition', () => {
  const pairs = [...nearPairs(2000, 20321, 1, 60), ...farPairs(2000, 20322), ...oppositePairs(), ...neutralPairs()];
  const [standard, trial] = columnsOf(pairs);
  const found = new Float64Array(pairs.length);
  ciede2000InPlainNumbers(standard, trial, found, 1, 1, 1);
  expect(Math.max(...pairs.map(([first, second], place) => Math.abs(found[place]! - difference({ name: 'ciede2000' }, first, second))))).toBeLessThan(1e-9);
});

/** culori 4.0.2; its mode `lab65` takes CIELAB as it is. */
const colour = ([l, a, b]: Lab): Lab65 => ({ mode: 'lab65', l, a, b });
const oracles: readonly (readonly [DifferenceFormula, (standard: Lab65, trial: Lab65) => number])[] = [
  [{ name: 'cie76' }, differenceCie76()], [{ name: 'cie94' }, differenceCie94()], [{ name: 'cie94Textile' }, differenceCie94(2, 0.048, 0.014)],
  [{ name: 'cmc' }, differenceCmc(2, 1)], [{ name: 'ciede2000', kL: 1.5, kC: 1.2, kH: 0.8 }, differenceCiede2000(1.5, 1.2, 0.8)],
];

test.each(oracles)('$name agrees with culori on 3,000 pairs', (formula, oracle) => {
  const pairs = [...farPairs(1000, 20311), ...nearPairs(1000, 20312, 1, 60), ...nearPairs(1000, 20313, 0.5, 1.5)];
  const found = batch(formula, pairs);
  expect(Math.max(...pairs.map(([standard, trial], place) => Math.abs(found[place]! - oracle(colour(standard), colour(trial)))))).toBeLessThan(1e-6);
});

const coordinate = fc.oneof(fc.double({ min: -200, max: 200, noNaN: true }), fc.constantFrom(0, -0, 25, 50, -50, 1e-12, -1e-12, 16));
const anyColour = fc.tuple(coordinate, coordinate, coordinate);

// No L* below zero: the definitions have poles there, CMC at -56.7 and DIN99o at -256.
const anyPair = fc.tuple(anyColour, anyColour).map(([[L1, ...first], [L2, ...second]]): Pair => [[Math.abs(L1), ...first], [Math.abs(L2), ...second]]);

test('any colours, in columns of any length', () => {
  fc.assert(fc.property(fc.constantFrom(...allFormulas.slice(0, 8)), fc.array(anyPair, { maxLength: 20 }), fc.constantFrom(0, 236, 250, 500), (formula, pairs, before) => {
    const padded: Pair[] = [...Array.from({ length: before }, (): Pair => [[1, 2, 3], [4, 5, 6]]), ...pairs];
    const found = batch(formula, padded);
    padded.forEach(([standard, trial], place) => expect(Math.abs(found[place]! - difference(formula, standard, trial))).toBeLessThan(1e-8));
  }), { seed: 8, numRuns: 300 });
});

test.each(allFormulas.map((formula) => [formulaLabel(formula), formula] as const))('%s: NaN for every coordinate that is not finite, and for its own pair only', (_, formula) => {
  const base: Pair = [[40, 3, -7], [41, 2, -6]];
  const pairs = [0, 1].flatMap((side) => [0, 1, 2].flatMap((axis) => [NaN, Infinity, -Infinity].flatMap((value): Pair[] => {
    const broken = base.map((one, at) => one.map((entry, place) => (at === side && place === axis ? value : entry))) as unknown as Pair;
    return [broken, base];
  })));
  const found = batch(formula, pairs);
  found.forEach((value, place) => (place % 2 === 0 ? expect(value).toBeNaN() : expect(value).toBeCloseTo(difference(formula, ...base), 9)));
});

test('a column shorter than the room for the differences is refused', () => {
  expect(() => differenceBatch({ name: 'cie76' }, labColumns(3), labColumns(2), new Float64Array(3))).toThrow(RangeError);
});
