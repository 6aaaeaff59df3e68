import { components } from '../colour/components.ts';
import { differenceWords } from '../colour/difference-words.ts';
import type { DifferenceFormula } from '../colour/difference-formula.ts';
import { colourSpotsNeeded } from '../readings/colour-spots-needed.ts';
import type { OpenColourCheck } from '../readings/colour-spots-needed.ts';
import { differenceCovariance } from '../readings/difference-covariance.ts';
import { judgeEvent } from '../readings/judge-event.ts';
import type { EventVerdict } from '../readings/judge-event.ts';
import type { Matrix3 } from '../quantities.ts';
import type { GrowingSides } from '../readings/spots-that-decide.ts';
import type { Criterion } from '../readings/stacked-event.ts';
import { criterionState, lightCovariance } from '../readings/stacked-excess.ts';
import type { CriterionState } from '../readings/stacked-excess.ts';
import { stackedProbability } from '../readings/stacked-probability.ts';
import type { ColourPair, PairLight } from './colour-pair.ts';
import { spreadUnder } from './colour-pair.ts';
import type { DecisionRule } from './decided.ts';
import type { CriterionResult, LightResult, Verdict } from './judgement.ts';
import { causeOfOpen, manyTimes } from './open-cause.ts';
import type { CauseOfOpen } from './open-cause.ts';

/** Draws for lights that are shown only: their probability is information, not a verdict. */
const shownPoints = 512;

/** What is asked of the pair under one light; none where the light only shows the difference. */
export interface LightDemand {
  readonly light: string;
  readonly standing: 'required' | 'shown';
  readonly criteria: readonly Criterion[];
}

export interface ColourQuestion {
  /** The formula whose value is printed under every light. */
  readonly formula: DifferenceFormula;
  readonly demands: readonly LightDemand[];
  readonly decision: DecisionRule;
  /** Ordered formulas without a reference part: the larger of both directions is printed. */
  readonly stricterDirection: boolean;
}

export interface ColourEvaluation {
  readonly verdict: Verdict;
  readonly simple: Verdict;
  readonly within: number;
  /** Required lights first in the order of the rule, then the shown ones. */
  readonly lights: readonly LightResult[];
  /** The required light with the lowest probability and, in it, the criterion that decides; undefined with no required light. */
  readonly worst: { readonly light: LightResult; readonly criterion: CriterionResult } | undefined;
}

interface AskedLight {
  readonly demand: LightDemand;
  readonly index: number;
  readonly at: PairLight;
}

/** The lights of the question for which the pair has data. */
function askedLights(pair: ColourPair, question: ColourQuestion): readonly AskedLight[] {
  return question.demands.flatMap((demand) => {
    const index = pair.lights.findIndex((light) => light.light === demand.light);
    return index < 0 ? [] : [{ demand, index, at: pair.lights[index] }];
  });
}

const isJudged = ({ demand }: AskedLight): boolean => demand.standing === 'required' && demand.criteria.length > 0;

/** The event that decides, with what its uncertainty is made of: all required lights of the question together. */
export function colourEvent(pair: ColourPair, question: ColourQuestion): OpenColourCheck {
  const judged = askedLights(pair, question).filter(isJudged);
  return {
    lights: judged.map(({ demand, at }) => ({ standard: at.standard, trial: at.trial, criteria: demand.criteria })),
    spread: spreadUnder(pair.spread, pair.lights.length, judged.map(({ index }) => index)),
    confidence: question.decision.confidence,
  };
}

/** Judges one pair of sides in colour: one event over all required lights, and every light on its own for the table. */
export function evaluateColour(pair: ColourPair, question: ColourQuestion): ColourEvaluation {
  const covariance = differenceCovariance(pair.spread);
  const asked = askedLights(pair, question);
  const judged = asked.filter(isJudged);
  const { lights, spread } = colourEvent(pair, question);
  const outcome = judgeEvent({ lights, covariance: differenceCovariance(spread) }, question.decision.rule, question.decision.confidence);
  const results = asked.map((light) => {
    const position = judged.indexOf(light);
    const own = lightCovariance(covariance, 3 * pair.lights.length, light.index);
    return position >= 0
      ? lightResult(question, light, own, outcome.excess.criteria[position], outcome.probability.criteria[position], outcome.probability.each[position])
      : shownResult(question, light, own);
  });
  return { ...verdictOf(outcome, judged.length), lights: results, worst: worstOf(results.filter((_, index) => isJudged(asked[index]))) };
}

/** Why the event is open, and how many spots a growing side would decide it, none above `maximum`. */
export function causeOfOpenColour(pair: ColourPair, question: ColourQuestion, maximum: number, grows: GrowingSides = 'both'): CauseOfOpen {
  const event = { ...colourEvent(pair, question), grows };
  return causeOfOpen(colourSpotsNeeded(event, maximum), () => {
    const spots = manyTimes * maximum;
    const instrument = new Float64Array(event.spread.instrument.length);
    const covariance = differenceCovariance({ ...event.spread, firstSpots: spots, secondSpots: spots, instrument });
    return judgeEvent({ lights: event.lights, covariance }, 'guarded', event.confidence).verdict !== 'open';
  });
}

function verdictOf(outcome: EventVerdict, lights: number): { verdict: Verdict; simple: Verdict; within: number } {
  if (lights === 0) return { verdict: 'open', simple: 'open', within: 1 };
  return { verdict: outcome.verdict, simple: outcome.simple, within: outcome.probability.all };
}

function worstOf(lights: readonly LightResult[]): ColourEvaluation['worst'] {
  const ranked = [...lights].sort((first, second) => first.withinProbability - second.withinProbability || second.limitUse - first.limitUse);
  const light = ranked[0];
  if (light === undefined) return undefined;
  const criterion = [...light.criteria]
    .sort((first, second) => first.withinProbability - second.withinProbability || second.limitUse - first.limitUse)[0];
  return criterion === undefined ? undefined : { light, criterion };
}

function lightResult(
  question: ColourQuestion, { demand, at }: AskedLight, covariance: Matrix3,
  states: readonly CriterionState[], probabilities: readonly number[], within: number,
): LightResult {
  const criteria = demand.criteria.map((criterion, position) => criterionResult(criterion, states[position], probabilities[position]));
  const printed = criterionState(
    { kind: 'difference', formula: question.formula, stricterDirection: question.stricterDirection }, at.standard, at.trial, covariance,
  );
  const limited = demand.criteria.findIndex((criterion) => criterion.kind === 'difference');
  return {
    light: at.light, observer: at.observer, standing: demand.standing,
    value: printed.value, uncertainty: printed.uncertainty,
    limit: limited < 0 ? undefined : criteria[limited].max ?? criteria[limited].min,
    limitUse: criteria.reduce((largest, criterion) => Math.max(largest, criterion.limitUse), 0),
    withinProbability: within,
    difference: components(at.standard, at.trial), words: differenceWords(at.standard, at.trial),
    standard: at.standard, trial: at.trial, criteria,
  };
}

function shownResult(question: ColourQuestion, light: AskedLight, covariance: Matrix3): LightResult {
  const { standard, trial } = light.at;
  const criteria = light.demand.criteria;
  const states = criteria.map((criterion) => criterionState(criterion, standard, trial, covariance));
  const probability = stackedProbability({ lights: [{ standard, trial, criteria }], covariance, points: shownPoints });
  return lightResult(question, light, covariance, states, probability.criteria[0], probability.all);
}

/** `ΔE`, `dL*` and so on: a criterion as results name it. */
export const criterionName = (criterion: Criterion): string => (criterion.kind === 'difference' ? 'ΔE' : `${criterion.component}*`);

function criterionResult(criterion: Criterion, state: CriterionState, withinProbability: number): CriterionResult {
  const [min, max] = criterion.kind === 'difference' ? [criterion.atLeast, criterion.atMost] : [criterion.min, criterion.max];
  return {
    name: criterionName(criterion),
    value: state.value,
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
    limitUse: limitUse(state.value, min, max),
    uncertainty: state.uncertainty,
    withinProbability,
  };
}

/**
 * The value and the limit that a criterion is printed with: the limit on the side that the value lies on, and the size of the value where
 * both limits are alike but for their sign.
 */
export function printedCriterion({ value, min, max }: CriterionResult): { readonly value: number; readonly limit: number | undefined } {
  if (min !== undefined && max !== undefined && min === -max) return { value: Math.abs(value), limit: max };
  const low = min !== undefined && (max === undefined || lowerUse(value, min) > upperUse(value, max));
  return { value, limit: low ? min : max };
}

/** Largest limit use that is told apart: beyond it the number says nothing more. */
const largestUse = 1000;

/**
 * Share of the limit that is used, 1 at the limit, at most 1000. For an upper limit value / limit; for a lower one
 * limit / value, so that above 1 always means outside; with both the larger. Signed limits: the side that the value lies on.
 */
export function limitUse(value: number, min: number | undefined, max: number | undefined): number {
  return Math.max(0, upperUse(value, max), lowerUse(value, min));
}

function upperUse(value: number, max: number | undefined): number {
  if (max === undefined || (value <= 0 && max >= 0)) return 0;
  return max > 0 ? Math.min(largestUse, value / max) : value > max ? largestUse : 0;
}

function lowerUse(value: number, min: number | undefined): number {
  if (min === undefined) return 0;
  if (min <= 0) return value >= 0 ? 0 : min === 0 ? largestUse : Math.min(largestUse, value / min);
  return value <= 0 ? largestUse : Math.min(largestUse, min / value);
}
