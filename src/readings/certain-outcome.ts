import { localMetric } from '../colour/index.ts';
import type { Lab, Matrix3 } from '../quantities.ts';
import { allFinite, criterionValue, largestAllowed, smallestAllowed } from './criterion-test.ts';
import { largestSpread } from './limit-excess.ts';
import type { Criterion } from './stacked-event.ts';

/** Standard deviations that a difference is taken to stay within: beyond, P < 2e-5 in three dimensions, less than one draw of those in use. */
const reach = 5;
/** How far the formula may depart from its local quadratic form, as a share of the value, where that form is trusted to rule a limit out. */
const departure = { small: 0.1, large: 0.2 };
/** Difference from which on the local form is trusted less. */
const large = 5;

/**
 * Whether a criterion holds, or fails, in every draw that can occur, found without drawing: by the triangle inequality in the
 * formula's local metric the value cannot leave value -+ reach x largest standard deviation. Undefined where the limit is
 * within that distance, for components of chroma and hue, and where the formula has no finite metric.
 */
export function certainOutcome(criterion: Criterion, standard: Lab, trial: Lab, covariance: Matrix3): 'holds' | 'fails' | undefined {
  const low = smallestAllowed(criterion);
  const high = largestAllowed(criterion);
  const value = criterionValue(criterion, standard, trial);
  const distance = criterion.kind === 'component' ? componentReach(criterion, covariance) : differenceReach(criterion, standard, trial, covariance);
  if (distance === undefined) return undefined;
  const margin = criterion.kind === 'component' ? 0 : (value < large ? departure.small : departure.large) * (value + distance);
  const least = value - distance - margin;
  const most = value + distance + margin;
  if (least > low && most < high) return 'holds';
  return most < low || least > high ? 'fails' : undefined;
}

function componentReach(criterion: Extract<Criterion, { kind: 'component' }>, covariance: Matrix3): number | undefined {
  const axis = ['dL', 'da', 'db'].indexOf(criterion.component);
  return axis < 0 ? undefined : reach * Math.sqrt(Math.max(0, covariance[4 * axis]));
}

function differenceReach(
  criterion: Extract<Criterion, { kind: 'difference' }>, standard: Lab, trial: Lab, covariance: Matrix3,
): number | undefined {
  const metric = localMetric(criterion.formula, standard, trial);
  if (criterion.stricterDirection === true || !allFinite(metric)) return undefined;
  return reach * Math.sqrt(largestSpread(metric, covariance));
}
