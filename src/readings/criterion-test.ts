import { difference } from '../colour/index.ts';
import { hueDifference } from '../colour/hue-difference.ts';
import type { Lab } from '../quantities.ts';
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

/** The smallest and the largest allowed value of a criterion, infinite where a side is free. */
export const smallestAllowed = (criterion: Criterion): number => (criterion.kind === 'component' ? criterion.min : criterion.atLeast) ?? -Infinity;
export const largestAllowed = (criterion: Criterion): number => (criterion.kind === 'component' ? criterion.max : criterion.atMost) ?? Infinity;

/** Asked a hundred times for every open joint, so it makes nothing that has to be cleared away. */
export function allFinite(values: ArrayLike<number>): boolean {
  for (let at = 0; at < values.length; at++) if (!Number.isFinite(values[at])) return false;
  return true;
}

/** Both in one. */
export const criterionRange = (criterion: Criterion): readonly [low: number, high: number] => [smallestAllowed(criterion), largestAllowed(criterion)];

export function componentValue(component: DifferenceComponent, standard: Lab, trial: Lab): number {
  if (component === 'dL') return trial[0] - standard[0];
  if (component === 'da') return trial[1] - standard[1];
  if (component === 'db') return trial[2] - standard[2];
  const chroma1 = Math.sqrt(standard[1] * standard[1] + standard[2] * standard[2]);
  const chroma2 = Math.sqrt(trial[1] * trial[1] + trial[2] * trial[2]);
  return component === 'dC' ? chroma2 - chroma1 : hueDifference(standard[1], standard[2], chroma1, trial[1], trial[2], chroma2);
}
