import { compareTexture } from '../../texture/compare-texture.ts';
import type { TextureCriterion, TextureCriterionName } from '../../texture/compare-texture.ts';
import type { ArealName, TextureSample } from '../../readings/texture-sample.ts';
import { isRelative } from '../../readings/texture-sample.ts';
import { instrumentCorrelation } from '../../readings/instrument-correlation.ts';
import type { MeasuredSide } from '../../readings/instrument-correlation.ts';
import { scalarInstrumentVariance } from '../../readings/instrument-term.ts';
import { scalarDifferenceVariance } from '../../readings/scalar-variance.ts';
import type { ArealParameters } from '../../readings/reading.ts';
import { decided } from '../decided.ts';
import type { CheckResult } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';
import { withinBand } from '../scalar-comparison.ts';
import type { ScalarComparison } from '../scalar-comparison.ts';
import { certainty, figure, percentOfLimit } from '../wording.ts';
import type { JointInput } from './joint-input.ts';
import { borrowings } from './joint-input.ts';

const parameterOf: Record<TextureCriterionName, ArealName> = {
  'Sa ratio': 'saUm', 'Sal ratio': 'salMm', 'Str difference': 'str', 'VDI 3400 class difference': 'vdiClass',
};

/** Spread of one reading of Str and of the VDI class, which are not ratios. Assumption, no source. */
const shapeSd = { str: 0.03, vdiClass: 0.3 } as const;

interface JudgedCriterion extends TextureCriterion {
  readonly comparison: ScalarComparison;
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
  const { criteria } = compareTexture(standard, trial, rule.texture);
  const judged = criteria.map((criterion) => judge(criterion, input));
  const worst = [...judged].sort((first, second) => first.comparison.within - second.comparison.within || second.limitUse - first.limitUse)[0];
  if (worst === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', cause: 'missing data', sentence: 'Texture: the two sides have no areal parameter in common.' };
  }
  const contrast = rule.intent.texture === 'contrast';
  const together = {
    within: judged.reduce((product, { comparison }) => product * comparison.within, 1),
    excess: Math.max(...judged.map(({ comparison }) => comparison.excess)),
    inside: judged.every(({ comparison }) => comparison.inside),
  };
  const asked = contrast ? { within: 1 - together.within, excess: -together.excess, inside: !together.inside } : together;
  const { verdict, simple } = decided(book.decision, asked);
  const phrase = `${worst.name} of ${names.trial} and ${names.standard} ${figure(worst.value)}, ${figure(worst.limit)} allowed (${percentOfLimit(worst.limitUse)} of the limit${isRelative(parameterOf[worst.name]) ? ', ratios by their logarithm' : ''})`;
  return {
    ...base, verdict, simple, criterion: worst.name, value: worst.value, limit: worst.limit, limitUse: worst.limitUse,
    uncertainty: worst.uncertainty, withinProbability: asked.within,
    ...(verdict === 'open' ? { cause: 'on the limit' as const } : {}),
    sentence: `Texture: ${phrase}${contrast ? '; a contrast is wanted' : ''}; ${certainty(verdict, asked.within, verdict === 'open' ? 'on the limit' : undefined, undefined)}. By rule ${rule.id}, on ${sides[1].texture?.sample.spots} and ${sides[0].texture?.sample.spots} spots.${borrowings(input, 'texture')}`,
  };
}

/** A ratio is judged as its logarithm, whose spread does not depend on its size; a ratio below its limit is a use in the same scale. */
function judge(criterion: TextureCriterion, input: JointInput): JudgedCriterion {
  const name = parameterOf[criterion.name];
  const relative = isRelative(name);
  const value = relative ? Math.log(criterion.value) : criterion.value;
  const limit = relative ? Math.log(criterion.limit) : criterion.limit;
  const uncertainty = Math.sqrt(variance(name, input));
  return {
    ...criterion,
    comparison: withinBand(value, uncertainty, limit),
    uncertainty: relative ? criterion.value * uncertainty : uncertainty,
    limitUse: limit > 0 ? value / limit : 1000,
  };
}

function variance(name: ArealName, input: JointInput): number {
  const { assumed } = input.book;
  const samples = input.sides.map((side) => side.texture?.sample);
  const assumedSd = name === 'str' ? shapeSd.str : name === 'vdiClass' ? shapeSd.vdiClass : assumed.textureRelativeSd;
  const side = (sample: TextureSample | undefined) => ({ sd: sample?.sd[name] ?? 0, spots: Math.max(1, sample?.spots ?? 1), assumedSd });
  const measured = (index: number): MeasuredSide => input.sides[index].texture?.measured ?? { instrument: undefined };
  const [first, second] = [measured(0), measured(1)];
  const correlation = instrumentCorrelation(first, second, { likeSurfaces: true }, assumed.correlation);
  const agreement = ({ instrument }: MeasuredSide): number =>
    (isRelative(name) ? instrument?.agreement?.textureRelativeSd ?? assumed.textureAgreementRelativeSd : 0);
  return scalarDifferenceVariance(side(samples[0]), side(samples[1]), assumed.priorReadings, scalarInstrumentVariance(agreement(first), agreement(second), correlation));
}
