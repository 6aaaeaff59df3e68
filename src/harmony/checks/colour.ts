import { isOrdered } from '../../colour/difference.ts';
import { formulaLabel } from '../../colour/formula-label.ts';
import { matchCriteria } from '../../readings/stacked-event.ts';
import type { Criterion } from '../../readings/stacked-event.ts';
import type { ResolvedLight } from '../../rules/rule-book.ts';
import { comparisonPhrase } from '../colour-wording.ts';
import type { ColourEvaluation, ColourQuestion } from '../colour-evaluation.ts';
import { causeOfOpenColour, evaluateColour, printedCriterion } from '../colour-evaluation.ts';
import type { ColourPair } from '../colour-pair.ts';
import type { CheckResult, CheckVerdict } from '../judgement.ts';
import type { CauseOfOpen } from '../open-cause.ts';
import { certainty, listed } from '../wording.ts';
import type { JointInput } from './joint-input.ts';
import { ruleFormula } from './joint-input.ts';
import { optionalFactorNotes } from './optional-factor-notes.ts';

/** What a match asks for under one light, by the rule. */
function matchDemand(input: JointInput, light: ResolvedLight): readonly Criterion[] {
  const formula = ruleFormula(input.rule);
  return matchCriteria(formula, light.limit, input.rule.colour.components, isOrdered(formula) && !input.hasReference);
}

/** What a tone step asks for beside being clearly apart: not too far, and the hue kept; the light's factor widens both. */
function toneStepDemand(input: JointInput, light: ResolvedLight): readonly Criterion[] {
  const { toneStep, limit } = input.rule.colour;
  const factor = limit > 0 ? light.limit / limit : 1;
  return [
    { kind: 'component', component: 'dL', max: toneStep.maxDL * factor, absolute: true },
    { kind: 'component', component: 'dH', max: toneStep.maxDH * factor, absolute: true },
  ];
}

/** The question that the colour check puts to a pair; no criteria where the intent is `contrast` or `free`. */
export function colourQuestion(input: JointInput): ColourQuestion {
  const { rule, book } = input;
  const demand = rule.intent.colour === 'match' ? matchDemand : rule.intent.colour === 'tone-step' ? toneStepDemand : () => [];
  const formula = ruleFormula(rule);
  return {
    formula,
    decision: book.decision,
    stricterDirection: isOrdered(formula) && !input.hasReference,
    demands: rule.colour.lights.map((light) => ({ light: light.light, standing: light.standing, criteria: demand(input, light) })),
  };
}

/** Colour of a joint: one event over all required lights and component limits. */
export function colourCheck(input: JointInput): CheckResult {
  const { rule, colour } = input;
  const base = {
    check: 'colour' as const, standing: rule.colour.standing, unit: '', formula: formulaLabel(ruleFormula(rule)), basis: rule.colour.basis,
    lights: [], cautions: [],
  };
  const asked = rule.intent.colour === 'match' || rule.intent.colour === 'tone-step';
  if (rule.colour.notJudged !== undefined) {
    return asked
      ? { ...base, verdict: 'open', simple: 'open', cause: rule.colour.notJudgedKind === 'no rule' ? 'missing data' : 'judged by eye', sentence: `Colour of ${input.names.trial} and ${input.names.standard}: ${rule.colour.notJudged}.` }
      : { ...base, verdict: 'not applicable', simple: 'not applicable', sentence: `Colour of ${input.names.trial} and ${input.names.standard}: ${rule.colour.notJudged}.` };
  }
  if (typeof colour === 'string') {
    const verdict = asked ? 'no data' : 'not applicable';
    return { ...base, verdict, simple: verdict, ...(asked ? { cause: 'missing data' as const } : {}), sentence: `Colour: ${colour}.` };
  }
  const question = colourQuestion(input);
  const evaluation = evaluateColour(colour, question);
  if (!asked) return shownOnly(input, { ...base, lights: evaluation.lights, cautions: colour.cautions }, evaluation);
  const factorNotes = optionalFactorNotes(colour, rule.optionalFactors, question, (other) => colourQuestion({ ...input, rule: { ...rule, colour: other } }));
  const shared = { ...base, lights: evaluation.lights, cautions: colour.cautions, ...(factorNotes.length === 0 ? {} : { factorNotes }) };
  const worst = evaluation.worst;
  if (worst === undefined) {
    return {
      ...shared, verdict: 'no data', simple: 'no data', cause: 'missing data', missingLights: colour.missing,
      sentence: `Colour: no data under ${listed(colour.missing)}.`,
    };
  }
  const values = {
    light: worst.light.light, ...printedCriterion(worst.criterion), limitUse: worst.criterion.limitUse,
    uncertainty: worst.criterion.uncertainty, withinProbability: evaluation.within,
    ...(worst.criterion.name === 'ΔE' ? {} : { criterion: worst.criterion.name }),
    ...(colour.missing.length > 0 ? { missingLights: colour.missing } : {}),
  };
  const phrase = comparisonPhrase(input.names, worst.light, worst.criterion, question.formula);
  if (colour.indicative) {
    return {
      ...shared, ...values, verdict: 'open', simple: 'open', cause: 'conditions', indicative: true,
      sentence: `${phrase}. This is indicative only: ${colour.conditionsReason ?? 'the conditions are unlike'}. ${input.grounds}.`,
    };
  }
  const { verdict, open } = verdictWithCause(input, colour, question, evaluation);
  const simple = evaluation.simple === 'holds' && colour.missing.length > 0 ? 'open' : evaluation.simple;
  const missing = colour.missing.length > 0 ? ` There is no data under ${listed(colour.missing)}.` : '';
  return {
    ...shared, ...values, verdict, simple, ...open,
    sentence: `${phrase}; ${certainty(verdict, evaluation.within, open)}.${missing} ${input.grounds}.`,
  };
}

/** The verdict of the evaluation, with the cause where it is open and the want of required lights taken into account. */
function verdictWithCause(
  input: JointInput, pair: ColourPair, question: ColourQuestion, evaluation: ColourEvaluation,
): { readonly verdict: CheckVerdict; readonly open?: CauseOfOpen } {
  if (evaluation.verdict === 'holds' && pair.missing.length > 0) return { verdict: 'open', open: { cause: 'missing data' } };
  if (evaluation.verdict !== 'open') return { verdict: evaluation.verdict };
  return { verdict: 'open', open: causeOfOpenColour(pair, question, input.book.assumed.maximumSpots) };
}

function shownOnly(input: JointInput, shared: Omit<CheckResult, 'verdict' | 'simple' | 'sentence'>, evaluation: ColourEvaluation): CheckResult {
  const first = evaluation.lights[0];
  const why = input.rule.intent.colour === 'contrast' ? 'a contrast is wanted, which the near-miss check judges' : 'the intent is free: shown, not judged';
  const phrase = first === undefined ? 'Colour' : comparisonPhrase(input.names, first, undefined, ruleFormula(input.rule));
  return {
    ...shared, verdict: 'not applicable', simple: 'not applicable',
    ...(first === undefined ? {} : { light: first.light, value: first.value, uncertainty: first.uncertainty }),
    sentence: `${phrase}; ${why}.`,
  };
}
