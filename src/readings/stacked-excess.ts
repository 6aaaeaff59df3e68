import { isOrdered, difference } from '../colour/index.ts';
import type { Lab, Matrix3 } from '../quantities.ts';
import { criterionRange, criterionValue } from './criterion-test.ts';
import { correctedValue, limitExcess } from './limit-excess.ts';
import { quadraticForm3 } from './matrix3.ts';
import type { Criterion, DifferenceComponent, StackedEvent } from './stacked-event.ts';

/** Where one criterion stands: its value, first-order uncertainty and distance from the nearer limit. */
export interface CriterionState {
  readonly value: number;
  readonly uncertainty: number;
  readonly inside: boolean;
  /** Standard uncertainties that the noise-corrected value lies beyond the nearer limit; negative inside. */
  readonly excess: number;
  /** The limit that `excess` was taken from; undefined where nothing is limited. */
  readonly limit: number | undefined;
}

export interface StackedExcess {
  /** Largest excess of all; -Infinity where nothing is asked for. */
  readonly excess: number;
  /** All values are inside their limits. */
  readonly inside: boolean;
  readonly criteria: readonly (readonly CriterionState[])[];
}

/** Value against limit for every criterion of an event, each with the 3 x 3 covariance of its own light. */
export function stackedExcess({ lights, covariance }: Pick<StackedEvent, 'lights' | 'covariance'>): StackedExcess {
  const size = 3 * lights.length;
  const criteria = lights.map(({ standard, trial, criteria: asked }, light) => {
    const own = lightCovariance(covariance, size, light);
    return asked.map((criterion) => criterionState(criterion, standard, trial, own));
  });
  const flat = criteria.flat();
  return {
    excess: flat.reduce((largest, state) => Math.max(largest, state.excess), -Infinity),
    inside: flat.every((state) => state.inside),
    criteria,
  };
}

/** The 3 x 3 block of one light in a row-major stacked covariance of `size` rows. */
export function lightCovariance(covariance: ArrayLike<number>, size: number, light: number): Matrix3 {
  const entry = (i: number, j: number): number => covariance[(3 * light + i) * size + 3 * light + j];
  return [entry(0, 0), entry(0, 1), entry(0, 2), entry(1, 0), entry(1, 1), entry(1, 2), entry(2, 0), entry(2, 1), entry(2, 2)];
}

export function criterionState(criterion: Criterion, standard: Lab, trial: Lab, covariance: Matrix3): CriterionState {
  const [low, high] = criterionRange(criterion);
  const value = criterionValue(criterion, standard, trial);
  let uncertainty: number;
  let corrected = value;
  if (criterion.kind === 'difference') {
    const turned = criterion.stricterDirection === true && isOrdered(criterion.formula)
      && difference(criterion.formula, trial, standard) > difference(criterion.formula, standard, trial);
    ({ uncertainty, corrected } = turned
      ? correctedValue(criterion.formula, trial, standard, covariance)
      : correctedValue(criterion.formula, standard, trial, covariance));
  } else {
    const [x, y, z] = componentGradient(criterion.component, standard, trial);
    uncertainty = Math.sqrt(Math.max(0, quadraticForm3(covariance, x, y, z)));
  }
  const overHigh = high === Infinity ? -Infinity : limitExcess(corrected, uncertainty, high);
  const underLow = low === -Infinity ? -Infinity : limitExcess(corrected, uncertainty, low, 'at least');
  return {
    value,
    uncertainty,
    inside: value >= low && value <= high,
    excess: Math.max(overHigh, underLow),
    limit: overHigh >= underLow ? finiteOrNone(high) : finiteOrNone(low),
  };
}

const finiteOrNone = (limit: number): number | undefined => (Number.isFinite(limit) ? limit : undefined);

/** Gradient of a component in the difference: along the mean hue for dC*, across it for dH*; hue 0 for a neutral pair. */
function componentGradient(component: DifferenceComponent, standard: Lab, trial: Lab): Lab {
  if (component === 'dL') return [1, 0, 0];
  if (component === 'da') return [0, 1, 0];
  if (component === 'db') return [0, 0, 1];
  const a = standard[1] + trial[1];
  const b = standard[2] + trial[2];
  const chroma = Math.sqrt(a * a + b * b);
  const [cos, sin] = chroma > 1e-12 ? [a / chroma, b / chroma] : [1, 0];
  return component === 'dC' ? [0, cos, sin] : [0, -sin, cos];
}
