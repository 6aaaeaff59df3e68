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

/** A criterion made ready for many draws around one pair of means. */
export interface CriterionTest {
  /** From the difference alone: 1 holds, 0 fails, -1 too near the limit to say. */
  readonly quick: (dL: number, da: number, db: number) => number;
  readonly exact: (standard: Lab, trial: Lab) => boolean;
}

const undecided = (): number => -1;

/**
 * Ready-made test of a criterion for draws around one pair. Far from the limit the formula's local quadratic form
 * decides, near it the formula itself: the width of "near" is four times the largest departure of the one from the
 * other among `pilot` draws, so that a wrong call needs a draw four times as odd as the oddest of the pilot.
 */
export function criterionTest(criterion: Criterion, standard: Lab, trial: Lab, pilot: readonly (readonly [Lab, Lab])[]): CriterionTest {
  const exact = (first: Lab, second: Lab): boolean => criterionHolds(criterion, first, second);
  return { quick: criterion.kind === 'component' ? quickComponent(criterion) : quickDifference(criterion, standard, trial, pilot), exact };
}

function quickComponent(criterion: Extract<Criterion, { kind: 'component' }>): CriterionTest['quick'] {
  const axis = ['dL', 'da', 'db'].indexOf(criterion.component);
  if (axis < 0) return undecided;
  const [low, high] = criterionRange(criterion);
  const sign = criterion.absolute === true;
  return (dL, da, db) => {
    const signed = axis === 0 ? dL : axis === 1 ? da : db;
    const value = sign ? Math.abs(signed) : signed;
    return value >= low && value <= high ? 1 : 0;
  };
}

function quickDifference(
  criterion: Extract<Criterion, { kind: 'difference' }>, standard: Lab, trial: Lab, pilot: readonly (readonly [Lab, Lab])[],
): CriterionTest['quick'] {
  const metric = localMetric(criterion.formula, standard, trial);
  if (criterion.stricterDirection || !metric.every(Number.isFinite)) return undecided;
  const [low, high] = criterionRange(criterion);
  const form = (dL: number, da: number, db: number): number => Math.sqrt(Math.max(0, quadraticForm3(metric, dL, da, db)));
  let departure = 0;
  for (const [first, second] of pilot) {
    const quick = form(second[0] - first[0], second[1] - first[1], second[2] - first[2]);
    departure = Math.max(departure, Math.abs(quick - criterionValue(criterion, first, second)));
  }
  const band = 4 * departure + 1e-9;
  return (dL, da, db) => {
    const value = form(dL, da, db);
    if (value > low + band && value < high - band) return 1;
    return value < low - band || value > high + band ? 0 : -1;
  };
}
