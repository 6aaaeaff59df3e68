import { instrumentCorrelation } from '../../readings/instrument-correlation.ts';
import { scalarInstrumentVariance } from '../../readings/instrument-term.ts';
import { measuredDays } from '../../readings/measured-side.ts';
import type { OpenScalarCheck } from '../../readings/open-scalar-check.ts';
import type { GlossAngle, Reading } from '../../readings/reading.ts';
import { glossSamples } from '../../readings/gloss-sample.ts';
import type { GlossSample } from '../../readings/gloss-sample.ts';
import { scalarDifferenceVariance } from '../../readings/scalar-variance.ts';
import { decided } from '../decided.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { CheckResult } from '../judgement.ts';
import { causeAgainstMaster, causeOfOpenScalar } from '../open-cause.ts';
import type { PartBasis } from '../part-basis.ts';
import { withinBand } from '../scalar-comparison.ts';
import { certainty, figure, percentOfLimit } from '../wording.ts';
import { masterCautions, masterOf, masterPhrase } from './held-to.ts';

const limitOf = ({ part, materialClass }: PartBasis): number | undefined => part.target?.glossLimit ?? materialClass?.masterGlossLimit;

/** Gloss of a part against that of its master as one-dimensional statistics; the master is the first side. */
export interface MasterGlossQuestion {
  readonly question: OpenScalarCheck;
  readonly angle: GlossAngle;
  readonly instrument: string;
}

/** The gloss question of a part against its master, at 60 degrees where both have it, else 20, else 85; undefined without a limit or an angle in common. */
export function masterGlossQuestion(context: JudgeContext, basis: PartBasis): MasterGlossQuestion | undefined {
  const { assumed, decision } = context.book;
  const master = masterOf(context, basis);
  const limit = limitOf(basis);
  if (master === undefined || limit === undefined) return undefined;
  const references = glossSamples(master.readings, context.index.conditions);
  const own = basis.gloss?.samples ?? [];
  const angle = ([60, 20, 85] as const).find((candidate) => references.some((sample) => sample.angle === candidate) && own.some((sample) => sample.angle === candidate));
  const reference = references.find((sample) => sample.angle === angle);
  const trial = own.find((sample) => sample.angle === angle);
  if (reference === undefined || trial === undefined || angle === undefined) return undefined;
  const assumedSd = basis.materialClass?.glossSd ?? assumed.agreementGlossSd;
  const side = ({ sd, spots }: GlossSample) => ({ sd, spots, assumedSd });
  const instrumentOf = (sample: GlossSample) => context.index.instruments.get(sample.instruments[0] ?? '');
  const agreement = (sample: GlossSample): number => instrumentOf(sample)?.agreement?.glossSd ?? assumed.agreementGlossSd;
  const days = (readings: readonly Reading[]) => measuredDays(readings.filter((reading) => reading.quantity === 'gloss'));
  const correlation = instrumentCorrelation(
    { instrument: instrumentOf(reference), ...days(master.readings) }, basis.gloss?.measured ?? { instrument: undefined }, { likeSurfaces: true }, assumed.correlation,
  );
  return {
    angle, instrument: instrumentOf(trial)?.name ?? trial.instruments[0] ?? '',
    question: {
      first: side(reference), second: side(trial), priorReadings: assumed.priorReadings, confidence: decision.confidence,
      instrumentVariance: scalarInstrumentVariance(agreement(reference), agreement(trial), correlation),
      difference: trial.mean - reference.mean, compare: (difference, uncertainty) => withinBand(difference, uncertainty, limit),
    },
  };
}

/** Gloss of a part against its recorded master; undefined where no gloss is asked of it. */
export function masterGloss(context: JudgeContext, basis: PartBasis): CheckResult | undefined {
  const { book, names } = context;
  const master = masterOf(context, basis);
  const limit = limitOf(basis);
  if (master === undefined || limit === undefined || basis.materialClass?.gloss.kind === 'not applicable') return undefined;
  const name = names.get(basis.part.id) ?? basis.part.name;
  const base = {
    check: 'master' as const, subject: 'gloss', standing: book.standing.master, unit: 'GU', lights: [],
    basis: basis.part.target?.glossLimit === undefined ? basis.materialClass?.bases?.masterGlossLimit ?? basis.materialClass?.basis ?? '' : 'agreed for this part in the cabin',
    cautions: masterCautions(context, basis),
  };
  const asked = masterGlossQuestion(context, basis);
  if (asked === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', limit, cause: 'missing data', sentence: `${name} against ${masterPhrase(master)}: no gloss at an angle that both have.` };
  }
  const { question, angle } = asked;
  const { first, second, priorReadings, instrumentVariance, difference } = question;
  const uncertainty = Math.sqrt(scalarDifferenceVariance(first, second, priorReadings, instrumentVariance));
  const comparison = question.compare(difference, uncertainty);
  const { verdict, simple } = decided(book.decision, comparison);
  const value = Math.abs(difference);
  const open = verdict === 'open'
    ? causeAgainstMaster((grows) => causeOfOpenScalar({ checks: [{ ...question, grows }], wanted: 'all' }, book.assumed.maximumSpots)) : undefined;
  return {
    ...base, criterion: `${angle}°`, verdict, simple, ...open, value, limit, limitUse: value / limit, uncertainty, withinProbability: comparison.within,
    sentence: `${name} is ${figure(value)} GU from ${masterPhrase(master)} at ${angle}°, ${figure(limit)} GU allowed (${percentOfLimit(value / limit)} of the limit); `
      + `${certainty(verdict, comparison.within, open, 'part')}.`,
  };
}
