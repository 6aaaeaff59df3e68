import { components, difference, localMetric } from '../colour/index.ts';
import type { Lab } from '../quantities.ts';
import { quadraticForm3 } from './matrix3.ts';
import type { Criterion, DifferenceComponent } from './stacked-event.ts';

/** Size of a criterion's quantity for a pair of colours: the difference, or the component (its size where only that counts). */
export function criterionValue(criterion: Criterion, standard: Lab, trial: Lab): number {
  if (criterion.kind === 'component') {
    const value = componentValue(criterion.component, standard, trial);
    return criterion.absolute ? Math.abs(value) : value;
  }
  const forward = difference(criterion.formula, standard, trial);
  return criterion.stricterDirection ? Math.max(forward, difference(criterion.formula, trial, standard)) : forward;
}

/** Smallest and largest allowed value of a criterion, infinite where a side is free. */
export const criterionRange = (criterion: Criterion): readonly [low: number, high: number] => (criterion.kind === 'component'
  ? [criterion.min ?? -Infinity, criterion.max ?? Infinity]
  : [criterion.atLeast ?? -Infinity, criterion.atMost ?? Infinity]);

export function criterionHolds(criterion: Criterion, standard: Lab, trial: Lab): boolean {
  const [low, high] = criterionRange(criterion);
  const value = criterionValue(criterion, standard, trial);
  return value >= low && value <= high;
}

export function componentValue(component: DifferenceComponent, standard: Lab, trial: Lab): number {
  if (component === 'dL') return trial[0] - standard[0];
  if (component === 'da') return trial[1] - standard[1];
  if (component === 'db') return trial[2] - standard[2];
  return components(standard, trial)[component];
}

/**
 * A criterion made ready for many draws around one pair of means: a number from the difference d alone that says
 * yes inside `sure`, no outside `possible`, and leaves the rest to `exact`.
 */
export interface CriterionTest {
  /** Coefficients of dL^2, da^2, db^2, dL da, dL db, da db, dL, da, db. */
  readonly coefficients: readonly number[];
  readonly sure: readonly [low: number, high: number];
  readonly possible: readonly [low: number, high: number];
  readonly exact: (standard: Lab, trial: Lab) => boolean;
}

const never = [Infinity, -Infinity] as const;
const always = [-Infinity, Infinity] as const;

/**
 * Ready-made test of a criterion for draws around one pair. Far from the limit the formula's local quadratic form
 * decides, near it the formula itself: the width of "near" is four times the largest departure of the one from the
 * other among `pilot` draws, so that a wrong call needs a draw four times as odd as the oddest of the pilot.
 */
export function criterionTest(criterion: Criterion, standard: Lab, trial: Lab, pilot: readonly (readonly [Lab, Lab])[]): CriterionTest {
  const exact = (first: Lab, second: Lab): boolean => criterionHolds(criterion, first, second);
  const quick = criterion.kind === 'component' ? quickComponent(criterion) : quickDifference(criterion, standard, trial, pilot);
  return { ...(quick ?? { coefficients: [0, 0, 0, 0, 0, 0, 0, 0, 0], sure: never, possible: always }), exact };
}

type QuickTest = Omit<CriterionTest, 'exact'>;

function quickComponent(criterion: Extract<Criterion, { kind: 'component' }>): QuickTest | undefined {
  const axis = ['dL', 'da', 'db'].indexOf(criterion.component);
  if (axis < 0) return undefined;
  const [low, high] = criterionRange(criterion);
  const coefficients = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  coefficients[criterion.absolute ? axis : 6 + axis] = 1;
  const range = criterion.absolute ? squaredRange(low, high) : ([low, high] as const);
  return { coefficients, sure: range, possible: range };
}

function quickDifference(
  criterion: Extract<Criterion, { kind: 'difference' }>, standard: Lab, trial: Lab, pilot: readonly (readonly [Lab, Lab])[],
): QuickTest | undefined {
  const m = localMetric(criterion.formula, standard, trial);
  if (criterion.stricterDirection || !m.every(Number.isFinite)) return undefined;
  const [low, high] = criterionRange(criterion);
  let departure = 0;
  for (const [first, second] of pilot) {
    const square = quadraticForm3(m, second[0] - first[0], second[1] - first[1], second[2] - first[2]);
    departure = Math.max(departure, Math.abs(Math.sqrt(Math.max(0, square)) - criterionValue(criterion, first, second)));
  }
  const band = 4 * departure + 1e-9;
  return {
    coefficients: [m[0], m[4], m[8], m[1] + m[3], m[2] + m[6], m[5] + m[7], 0, 0, 0],
    sure: squaredRange(low + band, high - band),
    possible: squaredRange(low - band, high + band),
  };
}

/** Range of the square of a size that lies in a range; a size is never below zero. */
const squaredRange = (low: number, high: number): readonly [number, number] =>
  [low <= 0 ? -Infinity : low * low, high < 0 ? -Infinity : high * high];
