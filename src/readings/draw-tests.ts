import { localMetric } from '../colour/index.ts';
import { criterionRange, criterionValue } from './criterion-test.ts';
import type { StackedDraw } from './stacked-draw.ts';
import { departureOf } from './stacked-draw.ts';
import type { Criterion, StackedLight } from './stacked-event.ts';

type MutableLab = [number, number, number];

const PILOT_PAIRS = 16;

/** Numbers of one criterion in the table of a `DrawTests`. */
export const testWidth = 13;

/** Criteria of an event made ready for many draws, in the order of lights and criteria. */
export interface DrawTests {
  readonly lights: readonly StackedLight[];
  /** Mean differences, stacked. */
  readonly means: Float64Array;
  /**
   * Per criterion the coefficients of dL^2, da^2, db^2, dL da, dL db, da db, dL, da, db, whose sum says yes from [9] to [10] and
   * no outside [11] to [12]; between them the criterion itself is asked.
   */
  readonly table: Float64Array;
}

/** A difference whose local form stands in the table, its limits not yet widened by what the formula departs from it. */
interface LocalForm {
  readonly row: number;
  readonly light: number;
  readonly criterion: Criterion;
  departure: number;
}

/**
 * Tests for draws around the means of an event. Far from the limit the formula's local quadratic form decides, near it the formula
 * itself: the width of "near" is four times the largest departure of the one from the other in a pilot spread evenly over the
 * draws, so that a wrong call needs a draw four times as odd as the oddest of the pilot.
 */
export function drawTests(lights: readonly StackedLight[], draw: StackedDraw): DrawTests {
  const table = new Float64Array(testWidth * lights.reduce((sum, { criteria }) => sum + criteria.length, 0));
  const means = meanDifferences(lights);
  const forms: LocalForm[] = [];
  let row = 0;
  for (let light = 0; light < lights.length; light++) {
    for (const criterion of lights[light].criteria) {
      if (setTest(table, row, criterion, lights[light])) forms.push({ row, light, criterion, departure: 0 });
      row += testWidth;
    }
  }
  if (forms.length > 0) pilot(lights, draw, means, table, forms);
  for (const { row: at, criterion, departure } of forms) {
    const [low, high] = criterionRange(criterion);
    const band = 4 * departure + 1e-9;
    setRanges(table, at, squareFrom(low + band), squareTo(high - band), squareFrom(low - band), squareTo(high + band));
  }
  return { lights, means, table };
}

function meanDifferences(lights: readonly StackedLight[]): Float64Array {
  const means = new Float64Array(3 * lights.length);
  for (let light = 0; light < lights.length; light++) {
    const { standard, trial } = lights[light];
    for (let i = 0; i < 3; i++) means[3 * light + i] = trial[i] - standard[i];
  }
  return means;
}

/** Fills in the test of one criterion; true where that is a local form whose limits are still to be widened. */
function setTest(table: Float64Array, row: number, criterion: Criterion, { standard, trial }: StackedLight): boolean {
  if (criterion.kind === 'component') {
    const axis = criterion.component === 'dL' ? 0 : criterion.component === 'da' ? 1 : criterion.component === 'db' ? 2 : undefined;
    if (axis === undefined) return askAlways(table, row);
    const [low, high] = criterionRange(criterion);
    table[row + (criterion.absolute ? axis : 6 + axis)] = 1;
    const [from, to] = criterion.absolute ? [squareFrom(low), squareTo(high)] : [low, high];
    setRanges(table, row, from, to, from, to);
    return false;
  }
  const m = localMetric(criterion.formula, standard, trial);
  if (criterion.stricterDirection || !m.every(Number.isFinite)) return askAlways(table, row);
  table[row] = m[0];
  table[row + 1] = m[4];
  table[row + 2] = m[8];
  table[row + 3] = m[1] + m[3];
  table[row + 4] = m[2] + m[6];
  table[row + 5] = m[5] + m[7];
  return true;
}

/** The criterion itself is asked in every draw. */
function askAlways(table: Float64Array, row: number): false {
  setRanges(table, row, Infinity, -Infinity, -Infinity, Infinity);
  return false;
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
function pilot(lights: readonly StackedLight[], draw: StackedDraw, means: Float64Array, table: Float64Array, forms: readonly LocalForm[]): void {
  const pairs = Math.min(PILOT_PAIRS, Math.max(1, draw.points / 2));
  const moved = new Float64Array(means.length);
  const first: MutableLab = [0, 0, 0];
  const second: MutableLab = [0, 0, 0];
  for (let i = 0; i < pairs; i++) {
    departureOf(draw, Math.floor((i * draw.points) / (2 * pairs)), moved);
    for (let sign = 1; sign >= -1; sign -= 2) {
      for (const form of forms) {
        const at = 3 * form.light;
        const dL = means[at] + sign * moved[at];
        const da = means[at + 1] + sign * moved[at + 1];
        const db = means[at + 2] + sign * moved[at + 2];
        placeSides(lights[form.light], dL, da, db, first, second);
        const size = Math.sqrt(Math.max(0, formAt(table, form.row, dL, da, db)));
        form.departure = Math.max(form.departure, Math.abs(size - criterionValue(form.criterion, first, second)));
      }
    }
  }
}

/** The sum of a row of the table for one difference. */
export function formAt(table: Float64Array, row: number, dL: number, da: number, db: number): number {
  return dL * (table[row] * dL + table[row + 3] * da + table[row + 4] * db + table[row + 6])
    + da * (table[row + 1] * da + table[row + 5] * db + table[row + 7]) + db * (table[row + 2] * db + table[row + 8]);
}

/** Puts both sides at the mean midpoint -+ half the difference. */
export function placeSides({ standard, trial }: StackedLight, dL: number, da: number, db: number, first: MutableLab, second: MutableLab): void {
  const L = 0.5 * (standard[0] + trial[0]);
  const a = 0.5 * (standard[1] + trial[1]);
  const b = 0.5 * (standard[2] + trial[2]);
  first[0] = L - 0.5 * dL;
  first[1] = a - 0.5 * da;
  first[2] = b - 0.5 * db;
  second[0] = L + 0.5 * dL;
  second[1] = a + 0.5 * da;
  second[2] = b + 0.5 * db;
}

/** Whether a criterion holds for one difference under its light, asked of the criterion itself. */
export function holdsAt(criterion: Criterion, light: StackedLight, dL: number, da: number, db: number): boolean {
  placeSides(light, dL, da, db, askedFirst, askedSecond);
  const value = criterionValue(criterion, askedFirst, askedSecond);
  if (criterion.kind === 'component') return value >= (criterion.min ?? -Infinity) && value <= (criterion.max ?? Infinity);
  return value >= (criterion.atLeast ?? -Infinity) && value <= (criterion.atMost ?? Infinity);
}

// Written over at every question, so that a hundred thousand of them leave nothing to clear away.
const askedFirst: MutableLab = [0, 0, 0];
const askedSecond: MutableLab = [0, 0, 0];
