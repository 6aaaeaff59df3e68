import { formulaLabel } from '../../colour/formula-label.ts';
import { contrastCriteria } from '../../readings/stacked-event.ts';
import type { Criterion } from '../../readings/stacked-event.ts';
import { comparisonPhrase } from '../colour-wording.ts';
import type { ColourQuestion } from '../colour-evaluation.ts';
import { causeOfOpenColour, evaluateColour, printedCriterion } from '../colour-evaluation.ts';
import type { CheckResult } from '../judgement.ts';
import type { CauseOfOpen } from '../open-cause.ts';
import { certainty, listed } from '../wording.ts';
import { colourQuestion } from './colour.ts';
import type { JointInput } from './joint-input.ts';
import { ruleFormula } from './joint-input.ts';

/** What keeps two colours clearly apart: enough lightness for a tone step, enough difference for a contrast. */
function apartDemand(input: JointInput): readonly Criterion[] {
  const { toneStep, contrast } = input.rule.colour;
  return input.rule.intent.colour === 'tone-step'
    ? [{ kind: 'component', component: 'dL', min: toneStep.minDL, absolute: true }]
    : contrastCriteria(ruleFormula(input.rule), contrast.minDifference);
}

/** The question of the near-miss check; a light's factor widens limits and so plays no part in a least distance. */
export function nearMissQuestion(input: JointInput): ColourQuestion {
  const question = colourQuestion(input);
  return { ...question, demands: question.demands.map((demand) => ({ ...demand, criteria: apartDemand(input) })) };
}

/**
 * For tone steps and contrasts: whether the two colours are clearly apart. What lies between a match and a clear step reads as
 * a failed match (design heuristic after the ambiguity regions of Moon and Spencer, J. Opt. Soc. Am. 34, 1944).
 * Undefined for other intents.
 */
export function nearMissCheck(input: JointInput): CheckResult | undefined {
  const { rule, colour } = input;
  const intent = rule.intent.colour;
  if ((intent !== 'tone-step' && intent !== 'contrast') || rule.colour.notJudged !== undefined) return undefined;
  const standing = rule.nearMiss.standing;
  const basis = intent === 'tone-step' ? rule.colour.toneStep.basis : rule.colour.contrast.basis;
  const base = { check: 'near-miss' as const, standing, unit: '', formula: formulaLabel(ruleFormula(rule)), basis, cautions: [] };
  if (typeof colour === 'string') {
    return { ...base, verdict: 'no data', simple: 'no data', cause: 'missing data', lights: [], sentence: `Near miss: ${colour}.` };
  }
  const question = nearMissQuestion(input);
  const { worst, lights, verdict, simple, within } = evaluateColour(colour, question);
  if (worst === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', cause: 'missing data', lights, sentence: `Near miss: no data under ${listed(colour.missing)}.` };
  }
  const values = {
    light: worst.light.light, ...printedCriterion(worst.criterion), limitUse: worst.criterion.limitUse,
    uncertainty: worst.criterion.uncertainty, withinProbability: within,
    ...(worst.criterion.name === 'ΔE' ? {} : { criterion: worst.criterion.name }),
    ...(colour.missing.length > 0 ? { missingLights: colour.missing } : {}),
  };
  const phrase = comparisonPhrase(input.names, worst.light, worst.criterion, question.formula);
  if (colour.indicative) {
    return {
      ...base, ...values, lights, verdict: 'open', simple: 'open', cause: 'conditions', indicative: true,
      sentence: `${phrase}. This is indicative only: ${colour.conditionsReason ?? 'the conditions are unlike'}. ${input.grounds}.`,
    };
  }
  const wanting = verdict === 'holds' && colour.missing.length > 0;
  const open: CauseOfOpen | undefined = wanting ? { cause: 'missing data' } : verdict === 'open' ? causeOfOpenColour(colour, question, input.book.assumed.maximumSpots) : undefined;
  const wanted = intent === 'tone-step' ? 'A clear tone step is wanted' : 'A clear contrast is wanted';
  const end = verdict === 'clashes' ? ', and what lies between a match and a clear step reads as a failed match' : '';
  return {
    ...base, ...values, ...open, lights, verdict: wanting ? 'open' : verdict, simple: simple === 'holds' && wanting ? 'open' : simple,
    sentence: `${phrase}. ${wanted}${end}; ${certainty(wanting ? 'open' : verdict, within, open)}. ${input.grounds}.`,
  };
}
