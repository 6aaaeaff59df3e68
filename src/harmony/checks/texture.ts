import { compareTexture } from '../../texture/compare-texture.ts';
import type { TextureCriterion, TextureCriterionName } from '../../texture/compare-texture.ts';
import type { ArealName, TextureSample } from '../../readings/texture-sample.ts';
import { isRelative } from '../../readings/texture-sample.ts';
import { instrumentCorrelation } from '../../readings/instrument-correlation.ts';
import type { MeasuredSide } from '../../readings/instrument-correlation.ts';
import { scalarInstrumentVariance } from '../../readings/instrument-term.ts';
import { scalarDifferenceVariance } from '../../readings/scalar-variance.ts';
import type { OpenScalarCheck } from '../../readings/open-scalar-check.ts';
import type { ArealParameters } from '../../readings/reading.ts';
import { scalarEventState } from '../../readings/scalar-event.ts';
import type { ScalarEvent } from '../../readings/scalar-event.ts';
import { decided } from '../decided.ts';
import type { CheckResult } from '../judgement.ts';
import { causeOfOpenScalar } from '../open-cause.ts';
import type { PartBasis } from '../part-basis.ts';
import { withinBand } from '../scalar-comparison.ts';
import { certainty, figure, percentOfLimit } from '../wording.ts';
import type { JointInput } from './joint-input.ts';
import { borrowings } from './joint-input.ts';

const parameterOf: Record<TextureCriterionName, ArealName> = {
  'Sa ratio': 'saUm', 'Sal ratio': 'salMm', 'Str difference': 'str', 'VDI 3400 class difference': 'vdiClass',
};

/** Spread of one reading of Str and of the VDI class, which are not ratios. Assumption, no source. */
const shapeSd = { str: 0.03, vdiClass: 0.3 } as const;

interface JudgedCriterion extends Omit<TextureCriterion, 'within'> {
  readonly question: OpenScalarCheck;
  readonly within: number;
  /** Of the value as printed: ratio or difference. */
  readonly uncertainty: number;
  readonly limitUse: number;
}

/** Areal parameters with the VDI class that the grain states where none was measured. */
function comparable(side: PartBasis): ArealParameters | undefined {
  const measured = side.texture?.sample.parameters;
  const stated = side.source.grain?.vdiClass;
  if (measured === undefined) return undefined;
  return measured.vdiClass === undefined && stated !== undefined ? { ...measured, vdiClass: stated } : measured;
}

/** Texture of a joint by areal parameters (ISO 25178-2): each criterion in one dimension, all of them asked for together. */
export function textureCheck(input: JointInput): CheckResult {
  const { rule, book, names, sides } = input;
  const base = { check: 'texture' as const, standing: rule.texture.standing, basis: rule.texture.basis, unit: '', lights: [], cautions: [] };
  const [standard, trial] = [comparable(sides[0]), comparable(sides[1])];
  if (rule.intent.texture === 'free') {
    return { ...base, verdict: 'not applicable', simple: 'not applicable', sentence: 'Texture is free here: the grains are not meant to be alike.' };
  }
  if (standard === undefined || trial === undefined) {
    const without = [names.standard, names.trial].filter((_, index) => [standard, trial][index] === undefined);
    return {
      ...base, verdict: 'no data', simple: 'no data', cause: 'missing data',
      sentence: `Texture: no areal parameters of ${without.join(' or ')}; the same grain on the drawing is no proof.`,
    };
  }
  const judged = judgedCriteria(input);
  const worst = [...judged].sort((first, second) => first.within - second.within || second.limitUse - first.limitUse)[0];
  if (worst === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', cause: 'missing data', sentence: 'Texture: the two sides have no areal parameter in common.' };
  }
  const event = eventOf(judged, input);
  const state = scalarEventState(event, event.checks.map(({ difference }) => difference), event.checks.map(uncertaintyOf));
  const { verdict, simple } = decided(book.decision, state);
  const open = verdict === 'open' ? causeOfOpenScalar(event, book.assumed.maximumSpots) : undefined;
  const phrase = `${worst.name} of ${names.trial} and ${names.standard} ${figure(worst.value)}, ${figure(worst.limit)} allowed (${percentOfLimit(worst.limitUse)} of the limit${isRelative(parameterOf[worst.name]) ? ', ratios by their logarithm' : ''})`;
  return {
    ...base, verdict, simple, ...open, criterion: worst.name, value: worst.value, limit: worst.limit, limitUse: worst.limitUse,
    uncertainty: worst.uncertainty, withinProbability: state.within,
    sentence: `Texture: ${phrase}${rule.intent.texture === 'contrast' ? '; a contrast is wanted' : ''}; ${certainty(verdict, state.within, open)}. By rule ${rule.id}, on ${sides[1].texture?.sample.spots} and ${sides[0].texture?.sample.spots} spots.${borrowings(input, 'texture')}`,
  };
}

/** The texture question of a joint, every criterion that both sides have; undefined where it is not asked or there is none. */
export function textureQuestion(input: JointInput): ScalarEvent | undefined {
  const judged = input.rule.intent.texture === 'free' ? [] : judgedCriteria(input);
  return judged.length === 0 ? undefined : eventOf(judged, input);
}

const eventOf = (judged: readonly JudgedCriterion[], { rule }: JointInput): ScalarEvent =>
  ({ checks: judged.map(({ question }) => question), wanted: rule.intent.texture === 'contrast' ? 'not all' : 'all' });

function judgedCriteria(input: JointInput): readonly JudgedCriterion[] {
  const [standard, trial] = [comparable(input.sides[0]), comparable(input.sides[1])];
  if (standard === undefined || trial === undefined) return [];
  return compareTexture(standard, trial, input.rule.texture).criteria.map((criterion) => judge(criterion, input));
}

const uncertaintyOf = ({ first, second, priorReadings, instrumentVariance }: OpenScalarCheck): number =>
  Math.sqrt(scalarDifferenceVariance(first, second, priorReadings, instrumentVariance));

/** A ratio is judged as its logarithm, whose spread does not depend on its size; a ratio below its limit is a use in the same scale. */
function judge(criterion: TextureCriterion, input: JointInput): JudgedCriterion {
  const relative = isRelative(parameterOf[criterion.name]);
  const value = relative ? Math.log(criterion.value) : criterion.value;
  const limit = relative ? Math.log(criterion.limit) : criterion.limit;
  const question = questionOf(parameterOf[criterion.name], value, limit, input);
  const uncertainty = uncertaintyOf(question);
  return {
    ...criterion, question,
    within: question.compare(value, uncertainty).within,
    uncertainty: relative ? criterion.value * uncertainty : uncertainty,
    limitUse: limit > 0 ? value / limit : 1000,
  };
}

function questionOf(name: ArealName, difference: number, limit: number, input: JointInput): OpenScalarCheck {
  const { assumed, decision } = input.book;
  const assumedSd = name === 'str' ? shapeSd.str : name === 'vdiClass' ? shapeSd.vdiClass : assumed.textureRelativeSd;
  const side = (index: number) => {
    const sample: TextureSample | undefined = input.sides[index].texture?.sample;
    return { sd: sample?.sd[name] ?? 0, spots: Math.max(1, sample?.spots ?? 1), assumedSd };
  };
  const measured = (index: number): MeasuredSide => input.sides[index].texture?.measured ?? { instrument: undefined };
  const [first, second] = [measured(0), measured(1)];
  const correlation = instrumentCorrelation(first, second, { likeSurfaces: true }, assumed.correlation);
  const agreement = ({ instrument }: MeasuredSide): number =>
    (isRelative(name) ? instrument?.agreement?.textureRelativeSd ?? assumed.textureAgreementRelativeSd : 0);
  return {
    first: side(0), second: side(1), priorReadings: assumed.priorReadings, confidence: decision.confidence,
    instrumentVariance: scalarInstrumentVariance(agreement(first), agreement(second), correlation),
    difference, compare: (value, uncertainty) => withinBand(value, uncertainty, limit),
  };
}
