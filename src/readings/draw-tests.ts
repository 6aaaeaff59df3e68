import { localMetric } from '../colour/index.ts';
import type { Lab } from '../quantities.ts';
import { allFinite, criterionValue, largestAllowed, smallestAllowed } from './criterion-test.ts';
import type { StackedDraw } from './stacked-draw.ts';
import { departureOf } from './stacked-draw.ts';
import type { Criterion, StackedLight } from './stacked-event.ts';

const PILOT_PAIRS = 16;
/** Written over at every pilot. */
let movedBy = new Float64Array(0);

/** Numbers of one criterion in the table of a `DrawTests`. */
export const testWidth = 15;

/** Criteria of an event made ready for many draws, in the order of lights and criteria: numbers alone, so that drawing stays fast. */
export interface DrawTests {
  /** Mean differences, stacked. */
  readonly means: Float64Array;
  /** Mean midpoints of the two sides, stacked. */
  readonly middles: Float64Array;
  /** Number of criteria under each light. */
  readonly perLight: Int32Array;
  /**
   * Per criterion the coefficients of dL^2, da^2, db^2, dL da, dL db, da db, dL, da, db, whose sum says yes from [9] to [10] and
   * no outside [11] to [12]; between them the value itself is asked, which is allowed from [13] to [14].
   */
  readonly table: Float64Array;
  /** Per criterion its value for two colours. */
  readonly values: readonly ((standard: Lab, trial: Lab) => number)[];
}

/** A difference whose local form stands in the table, its limits not yet widened by what the formula departs from it. */
interface LocalForm {
  readonly test: number;
  readonly light: number;
  departure: number;
}

/**
 * Tests for draws around the means of an event. Far from the limit the formula's local quadratic form decides, near it the formula
 * itself: the width of "near" is four times the largest departure of the one from the other in a pilot spread evenly over the
 * draws, so that a wrong call needs a draw four times as odd as the oddest of the pilot. They are good until tests are made for another
 * event of as many lights and criteria.
 */
export function drawTests(lights: readonly StackedLight[], draw: StackedDraw): DrawTests {
  const criteria = lights.flatMap((light) => light.criteria);
  const { means, middles, perLight, table } = roomFor(lights.length, criteria.length);
  const forms: LocalForm[] = [];
  let test = 0;
  for (let light = 0; light < lights.length; light++) {
    const { standard, trial, criteria: own } = lights[light];
    perLight[light] = own.length;
    for (let i = 0; i < 3; i++) {
      means[3 * light + i] = trial[i] - standard[i];
      middles[3 * light + i] = 0.5 * (standard[i] + trial[i]);
    }
    for (const criterion of own) {
      if (setTest(table, test * testWidth, criterion, standard, trial)) forms.push({ test, light, departure: 0 });
      test += 1;
    }
  }
  const tests: DrawTests = {
    means, middles, perLight, table, values: criteria.map((criterion) => (standard, trial) => criterionValue(criterion, standard, trial)),
  };
  if (forms.length > 0) pilot(tests, draw, forms);
  for (const { test: at, departure } of forms) widen(table, at * testWidth, 4 * departure + 1e-9);
  return tests;
}

type Room = Pick<DrawTests, 'means' | 'middles' | 'perLight' | 'table'>;

const rooms = new Map<number, Room>();

/** Numbers for an event of so many lights and criteria, written over by the next one of that size: searches ask a hundred times about one joint. */
function roomFor(lights: number, criteria: number): Room {
  const key = 1024 * lights + criteria;
  const known = rooms.get(key);
  if (known !== undefined) {
    known.table.fill(0);
    return known;
  }
  const made = { means: new Float64Array(3 * lights), middles: new Float64Array(3 * lights), perLight: new Int32Array(lights), table: new Float64Array(testWidth * criteria) };
  if (criteria < 1024) rooms.set(key, made);
  return made;
}

/** Fills in the test of one criterion; true where that is a local form whose ranges are still to be set. */
function setTest(table: Float64Array, row: number, criterion: Criterion, standard: Lab, trial: Lab): boolean {
  const low = smallestAllowed(criterion);
  const high = largestAllowed(criterion);
  table[row + 13] = low;
  table[row + 14] = high;
  if (criterion.kind === 'component') {
    const axis = criterion.component === 'dL' ? 0 : criterion.component === 'da' ? 1 : criterion.component === 'db' ? 2 : undefined;
    if (axis === undefined) return askAlways(table, row);
    table[row + (criterion.absolute ? axis : 6 + axis)] = 1;
    const from = criterion.absolute ? squareFrom(low) : low;
    const to = criterion.absolute ? squareTo(high) : high;
    setRanges(table, row, from, to, from, to);
    return false;
  }
  const m = localMetric(criterion.formula, standard, trial);
  if (criterion.stricterDirection || !allFinite(m)) return askAlways(table, row);
  table[row] = m[0];
  table[row + 1] = m[4];
  table[row + 2] = m[8];
  table[row + 3] = m[1] + m[3];
  table[row + 4] = m[2] + m[6];
  table[row + 5] = m[5] + m[7];
  return true;
}

/** The value itself is asked in every draw. */
function askAlways(table: Float64Array, row: number): false {
  setRanges(table, row, Infinity, -Infinity, -Infinity, Infinity);
  return false;
}

function widen(table: Float64Array, row: number, band: number): void {
  const low = table[row + 13];
  const high = table[row + 14];
  setRanges(table, row, squareFrom(low + band), squareTo(high - band), squareFrom(low - band), squareTo(high + band));
}

function setRanges(table: Float64Array, row: number, sureFrom: number, sureTo: number, possibleFrom: number, possibleTo: number): void {
  table[row + 9] = sureFrom;
  table[row + 10] = sureTo;
  table[row + 11] = possibleFrom;
  table[row + 12] = possibleTo;
}

/** Ends of the range of the square of a size that lies in a range; a size is never below zero. */
const squareFrom = (low: number): number => (low <= 0 ? -Infinity : low * low);
const squareTo = (high: number): number => (high < 0 ? -Infinity : high * high);

/** Notes the largest departure of every form from its formula among pairs spread evenly over the lattice, since its first rows are neighbours. */
function pilot(tests: DrawTests, draw: StackedDraw, forms: readonly LocalForm[]): void {
  const { means, table } = tests;
  const pairs = Math.min(PILOT_PAIRS, Math.max(1, draw.points / 2));
  const moved = movedBy.length === means.length ? movedBy : (movedBy = new Float64Array(means.length));
  for (let i = 0; i < pairs; i++) {
    departureOf(draw, Math.floor((i * draw.points) / (2 * pairs)), moved);
    for (let sign = 1; sign >= -1; sign -= 2) {
      for (const form of forms) {
        const at = 3 * form.light;
        const dL = means[at] + sign * moved[at];
        const da = means[at + 1] + sign * moved[at + 1];
        const db = means[at + 2] + sign * moved[at + 2];
        const size = Math.sqrt(Math.max(0, formAt(table, form.test * testWidth, dL, da, db)));
        form.departure = Math.max(form.departure, Math.abs(size - valueAt(tests, form.test, form.light, dL, da, db)));
      }
    }
  }
}

/** The sum of a row of the table for one difference. */
export function formAt(table: Float64Array, row: number, dL: number, da: number, db: number): number {
  return dL * (table[row] * dL + table[row + 3] * da + table[row + 4] * db + table[row + 6])
    + da * (table[row + 1] * da + table[row + 5] * db + table[row + 7]) + db * (table[row + 2] * db + table[row + 8]);
}

// Written over at every question, so that a hundred thousand of them leave nothing to clear away.
const first: [number, number, number] = [0, 0, 0];
const second: [number, number, number] = [0, 0, 0];

/** A criterion's value with both sides at the mean midpoint -+ half the difference. */
export function valueAt({ middles, values }: DrawTests, test: number, light: number, dL: number, da: number, db: number): number {
  const L = middles[3 * light];
  const a = middles[3 * light + 1];
  const b = middles[3 * light + 2];
  first[0] = L - 0.5 * dL;
  first[1] = a - 0.5 * da;
  first[2] = b - 0.5 * db;
  second[0] = L + 0.5 * dL;
  second[1] = a + 0.5 * da;
  second[2] = b + 0.5 * db;
  return values[test](first, second);
}
