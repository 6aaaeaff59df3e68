import { instrumentCorrelation } from '../../readings/instrument-correlation.ts';
import type { MeasuredSide } from '../../readings/instrument-correlation.ts';
import { scalarInstrumentVariance } from '../../readings/instrument-term.ts';
import type { GlossSample } from '../../readings/gloss-sample.ts';
import type { OpenScalarCheck } from '../../readings/open-scalar-check.ts';
import { scalarDifferenceVariance } from '../../readings/scalar-variance.ts';
import { decided } from '../decided.ts';
import type { CheckResult } from '../judgement.ts';
import { causeOfOpenScalar } from '../open-cause.ts';
import type { PartBasis } from '../part-basis.ts';
import { outsideBand, withinBand } from '../scalar-comparison.ts';
import { certainty, figure, percentOfLimit } from '../wording.ts';
import type { JointInput } from './joint-input.ts';
import { borrowings } from './joint-input.ts';

/** How many times the match limit two glosses must differ by to read as a wanted contrast. Assumption, no source. */
export const contrastFactor = 3;
/** Spread of one gloss reading where the book does not know the material, GU. Assumption, no source. */
const unknownMaterialSd = 0.2;

const sampleAt = (side: PartBasis, angle: number): GlossSample | undefined => side.gloss?.samples.find((sample) => sample.angle === angle);

/** The gloss question of a joint as one-dimensional statistics; undefined where it is not asked or a side has no reading at the angle. */
export function glossQuestion(input: JointInput): OpenScalarCheck | undefined {
  const { rule, book, sides } = input;
  if (!rule.gloss.applicable) return undefined;
  const [standard, trial] = [sampleAt(sides[0], rule.gloss.angle), sampleAt(sides[1], rule.gloss.angle)];
  if (standard === undefined || trial === undefined) return undefined;
  const limit = input.rule.intent.gloss === 'contrast' ? contrastFactor * rule.gloss.limit : rule.gloss.limit;
  const [first, second] = [sides[0].gloss?.measured, sides[1].gloss?.measured];
  if (first === undefined || second === undefined) return undefined;
  const sd = ({ instrument }: MeasuredSide): number => instrument?.agreement?.glossSd ?? book.assumed.agreementGlossSd;
  const likeSurfaces = sides[0].materialClass?.family === sides[1].materialClass?.family;
  const correlation = instrumentCorrelation(first, second, { likeSurfaces }, book.assumed.correlation);
  const side = (basis: PartBasis, sample: GlossSample) =>
    ({ sd: sample.sd, spots: sample.spots, assumedSd: basis.materialClass?.glossSd ?? unknownMaterialSd });
  return {
    first: side(sides[0], standard), second: side(sides[1], trial),
    priorReadings: book.assumed.priorReadings,
    instrumentVariance: scalarInstrumentVariance(sd(first), sd(second), correlation),
    confidence: book.decision.confidence,
    difference: trial.mean - standard.mean,
    compare: (difference, uncertainty) => (rule.intent.gloss === 'contrast' ? outsideBand : withinBand)(difference, uncertainty, limit),
  };
}

/** Gloss of a joint: both sides at one angle, against a limit that may depend on the level. */
export function glossCheck(input: JointInput): CheckResult {
  const { rule, book, names, sides } = input;
  const base = { check: 'gloss' as const, unit: 'GU', lights: [], cautions: [] };
  if (!rule.gloss.applicable) {
    const sentence = `Gloss is not compared: ${rule.gloss.reason}.`;
    return { ...base, standing: book.standing.gloss, basis: rule.gloss.basis, verdict: 'not applicable', simple: 'not applicable', sentence };
  }
  const { angle, standing, basis } = rule.gloss;
  const shared = { ...base, standing, basis, criterion: `${angle}°` };
  const question = glossQuestion(input);
  const free = rule.intent.gloss === 'free';
  if (question === undefined) {
    if (free) return { ...shared, verdict: 'not applicable', simple: 'not applicable', sentence: 'Gloss is free here.' };
    const without = [names.standard, names.trial].filter((_, index) => sampleAt(sides[index], angle) === undefined);
    return {
      ...shared, verdict: 'no data', simple: 'no data', cause: 'missing data',
      sentence: `Gloss: no reading at ${angle}° of ${without.join(' or ')}.`,
    };
  }
  const uncertainty = Math.sqrt(scalarDifferenceVariance(question.first, question.second, question.priorReadings, question.instrumentVariance));
  const value = Math.abs(question.difference);
  const levels = `${figure(sampleAt(sides[1], angle)?.mean ?? 0, 1)} against ${figure(sampleAt(sides[0], angle)?.mean ?? 0, 1)} GU`;
  const how = value < 0.05 ? 'as glossy as' : `${figure(value)} GU ${question.difference > 0 ? 'glossier' : 'less glossy'} than`;
  const borrowed = borrowings(input, 'gloss');
  const opening = `${names.trial} is ${how} ${names.standard} at ${angle}° (${levels})`;
  if (free) {
    return { ...shared, verdict: 'not applicable', simple: 'not applicable', value, uncertainty, sentence: `${opening}; gloss is free here: shown, not judged.` };
  }
  const contrast = rule.intent.gloss === 'contrast';
  const limit = contrast ? contrastFactor * rule.gloss.limit : rule.gloss.limit;
  const comparison = question.compare(question.difference, uncertainty);
  const { verdict, simple } = decided(book.decision, comparison);
  const open = verdict === 'open' ? causeOfOpenScalar({ checks: [question], wanted: 'all' }, book.assumed.maximumSpots) : undefined;
  const limitUse = contrast ? Math.min(1000, limit / Math.max(1e-3, value)) : value / limit;
  const asked = contrast ? `at least ${figure(limit)} GU asked` : `${figure(limit)} GU allowed`;
  return {
    ...shared, verdict, simple, ...open, value, limit, limitUse, ...(contrast ? { atLeast: true } : {}), uncertainty, withinProbability: comparison.within,
    sentence: `${opening}: ${asked} (${percentOfLimit(limitUse)} of the limit); ${certainty(verdict, comparison.within, open)}. By rule ${rule.id}, on ${question.second.spots} and ${question.first.spots} spots.${borrowed}`,
  };
}
