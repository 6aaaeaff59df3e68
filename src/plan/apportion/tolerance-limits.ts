import type { JointInput } from '../../harmony/checks/joint-input.ts';
import { contrastFactor } from '../../harmony/checks/gloss.ts';
import { localMetric } from '../../colour/local-metric.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import { criterionRange, criterionValue } from '../../readings/criterion-test.ts';
import type { Criterion } from '../../readings/stacked-event.ts';
import { colourDemands } from '../mend/mend-limits.ts';
import type { ShiftResponse } from '../mend/shift-response.ts';
import type { ApportionLimit } from './apportion-problem.ts';
import { largestAlong, largestIn } from './ellipsoid.ts';
import type { Ellipsoid } from './ellipsoid.ts';

/** One criterion of a joint under one light, with its sides on target: what both the linear limit and the search are made from. */
export interface ToleranceTerm {
  readonly joint: number;
  readonly light: string;
  readonly criterion: Criterion;
  readonly standard: Lab;
  readonly trial: Lab;
  readonly parts: readonly [string, string];
  readonly responses: readonly [Matrix3, Matrix3];
}

/** All criteria of a joint under its required lights; none where colour is not judged by numbers. */
export function toleranceTerms(joint: number, input: JointInput, response: ShiftResponse): readonly ToleranceTerm[] {
  const asked = colourDemands(input);
  if (asked === undefined) return [];
  const parts = input.sides.map((side) => side.part.id) as unknown as readonly [string, string];
  return asked.demands.flatMap((demand) => {
    const at = asked.pair.lights.find(({ light }) => light === demand.light);
    if (at === undefined) return [];
    return demand.criteria.map((criterion) => ({
      joint, light: demand.light, criterion, standard: at.standard, trial: at.trial, parts,
      responses: [response(parts[0], demand.light), response(parts[1], demand.light)] as const,
    }));
  });
}

/**
 * What a criterion asks of the two radii. A difference that must stay small is bounded by its local metric at the pair's midpoint and the
 * triangle inequality there; everything else by its slope at the targets.
 */
export function limitsOfTerm(term: ToleranceTerm, items: readonly [number, number], shapes: readonly [Ellipsoid, Ellipsoid]): readonly ApportionLimit[] {
  const { criterion, standard, trial, responses, joint } = term;
  const value = criterionValue(criterion, standard, trial);
  const [low, high] = criterionRange(criterion);
  const straight = (side: 0 | 1): number => largestAlong(slope(criterion, standard, trial, side), responses[side], shapes[side]);
  const limits: ApportionLimit[] = [];
  if (Number.isFinite(high)) {
    const metric = criterion.kind === 'difference' ? localMetric(criterion.formula, standard, trial) : undefined;
    const scale = (side: 0 | 1): number => (metric === undefined ? straight(side) : largestIn(metric, responses[side], shapes[side]));
    limits.push({ joint, items, scales: [scale(0), scale(1)], offset: value, limit: high });
  }
  // What must stay above a limit leaves what it is above it.
  if (Number.isFinite(low)) limits.push({ joint, items, scales: [straight(0), straight(1)], offset: -value, limit: -low });
  return limits;
}

const stepSize = 1e-3;

function slope(criterion: Criterion, standard: Lab, trial: Lab, side: number): Lab {
  const at = (axis: number, by: number): number => {
    const moved = (lab: Lab): Lab => lab.map((each, index) => (index === axis ? each + by : each)) as unknown as Lab;
    return side === 0 ? criterionValue(criterion, moved(standard), trial) : criterionValue(criterion, standard, moved(trial));
  };
  // The size of a component has a corner at nought, where its slopes from both sides cancel: the one that is there counts.
  return [0, 1, 2].map((axis) => {
    const [here, up, down] = [at(axis, 0), at(axis, stepSize), at(axis, -stepSize)];
    const [forward, backward] = [(up - here) / stepSize, (here - down) / stepSize];
    return Math.sign(forward) === Math.sign(backward) ? (forward + backward) / 2 : Math.max(Math.abs(forward), Math.abs(backward));
  }) as unknown as Lab;
}

/** What the gloss of a joint asks of the two bands; undefined where it is not compared. */
export function glossLimit(joint: number, input: JointInput, items: readonly [number, number]): ApportionLimit | undefined {
  const { gloss, intent } = input.rule;
  if (!gloss.applicable || intent.gloss === 'free' || gloss.standing === 'advisory') return undefined;
  const means = input.sides.map((side) => side.gloss?.samples.find((sample) => sample.angle === gloss.angle)?.mean);
  if (means[0] === undefined || means[1] === undefined) return undefined;
  const apart = Math.abs(means[1] - means[0]);
  return intent.gloss === 'contrast'
    ? { joint, items, scales: [1, 1], offset: -apart, limit: -contrastFactor * gloss.limit }
    : { joint, items, scales: [1, 1], offset: apart, limit: gloss.limit };
}
