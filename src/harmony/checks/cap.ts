import type { Cap } from '../../cabin/cabin.ts';
import type { JudgedLight } from '../../readings/colour-sample.ts';
import { agreementCovariance } from '../../readings/instrument-term.ts';
import { measuredSide } from '../../readings/measured-side.ts';
import type { OpenScalarCheck } from '../../readings/open-scalar-check.ts';
import { scalarDifferenceVariance } from '../../readings/scalar-variance.ts';
import type { ScalarSide } from '../../readings/scalar-variance.ts';
import { rotationsPerSpot } from '../../readings/spots.ts';
import { decided } from '../decided.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { CheckResult } from '../judgement.ts';
import { causeOfOpenScalar } from '../open-cause.ts';
import type { PartBasis } from '../part-basis.ts';
import { atMost } from '../scalar-comparison.ts';
import { certainty, figure, percentOfLimit } from '../wording.ts';

/** Caps that hold for a part: those of its zone in the cabin, and those of the book for a zone of that name that the cabin does not set itself. */
export function capsOf(context: JudgeContext, zone: string): readonly Cap[] {
  const own = context.index.zones.get(zone)?.caps ?? [];
  const fromBook = context.book.caps.filter((cap) => cap.zone === zone && !own.some((other) => other.quantity === cap.quantity && other.angle === cap.angle));
  return [...own, ...fromBook];
}

/** A part's value that a cap limits, as one-dimensional statistics, and what to call it. */
export interface CappedValue {
  readonly question: OpenScalarCheck;
  readonly what: string;
  readonly instrument: string;
  /** Geometry, or the angle of gloss, as requests name it. */
  readonly geometry: string;
}

/** One cap of a part's zone on its gloss or lightness, judged one-sided. */
export function capCheck(context: JudgeContext, basis: PartBasis, cap: Cap): CheckResult {
  const { book, names } = context;
  const name = names.get(basis.part.id) ?? basis.part.name;
  const base = {
    check: 'cap' as const, subject: cap.id, standing: book.standing.cap, unit: cap.quantity === 'gloss' ? 'GU' : 'L*', basis: cap.basis, lights: [],
    cautions: cap.caution === undefined ? [] : [cap.caution],
    ...(cap.quantity === 'gloss' ? { criterion: `${cap.angle ?? 60}°` } : { light: 'D65' }),
  };
  if (cap.quantity === 'gloss' && basis.materialClass?.gloss.kind === 'not applicable') {
    return { ...base, verdict: 'not applicable', simple: 'not applicable', limit: cap.max, sentence: `${name}: ${basis.materialClass.gloss.reason}; the gloss cap of its zone does not apply.` };
  }
  const found = cappedValue(context, basis, cap);
  if (found === undefined) {
    const what = cap.quantity === 'gloss' ? `gloss at ${cap.angle ?? 60}°` : 'lightness under D65';
    return { ...base, verdict: 'no data', simple: 'no data', limit: cap.max, cause: 'missing data', sentence: `${name}: no reading of ${what} for the cap of its zone.` };
  }
  const { question, what } = found;
  const { difference: value, first, second, priorReadings, instrumentVariance } = question;
  const uncertainty = Math.sqrt(scalarDifferenceVariance(first, second, priorReadings, instrumentVariance));
  const comparison = atMost(value, uncertainty, cap.max);
  const { verdict, simple } = decided(book.decision, comparison);
  const limitUse = value / cap.max;
  const open = verdict === 'open'
    ? { ...causeOfOpenScalar({ checks: [question], wanted: 'all' }, book.assumed.maximumSpots), spotsOn: 'part' as const } : undefined;
  return {
    ...base, verdict, simple, ...open, value, limit: cap.max, limitUse, uncertainty, withinProbability: comparison.within,
    sentence: `${name}: ${what} ${figure(value)}, the zone allows ${figure(cap.max)} (${percentOfLimit(limitUse)} of the cap); ${certainty(verdict, comparison.within, open, 'part')}.`,
  };
}

/** The value of a part that a cap limits; undefined without a reading of it. */
export const cappedValue = (context: JudgeContext, basis: PartBasis, cap: Cap): CappedValue | undefined =>
  (cap.quantity === 'gloss' ? cappedGloss(context, basis, cap.angle ?? 60, cap.max) : cappedLightness(context, basis, cap.max));

/** A cap has one side: the other is the limit itself, which is certain. */
const certainSide: ScalarSide = { sd: 0, spots: 1, assumedSd: 0 };

const againstCap = ({ book }: JudgeContext, side: ScalarSide, value: number, instrumentVariance: number, max: number): OpenScalarCheck => ({
  first: certainSide, second: side, grows: 'second', priorReadings: book.assumed.priorReadings, confidence: book.decision.confidence,
  instrumentVariance, difference: value, compare: (difference, uncertainty) => atMost(difference, uncertainty, max),
});

const instrumentName = (context: JudgeContext, id: string): string => context.index.instruments.get(id)?.name ?? id;

function cappedGloss(context: JudgeContext, basis: PartBasis, angle: number, max: number): CappedValue | undefined {
  const sample = basis.gloss?.samples.find((candidate) => candidate.angle === angle);
  if (sample === undefined) return undefined;
  const { assumed } = context.book;
  const side = { sd: sample.sd, spots: sample.spots, assumedSd: basis.materialClass?.glossSd ?? assumed.agreementGlossSd };
  const agreement = basis.gloss?.measured.instrument?.agreement?.glossSd ?? assumed.agreementGlossSd;
  return {
    question: againstCap(context, side, sample.mean, agreement * agreement, max),
    what: `gloss at ${angle}°`, instrument: instrumentName(context, sample.instruments[0] ?? ''), geometry: `${angle}°`,
  };
}

function cappedLightness(context: JudgeContext, basis: PartBasis, max: number): CappedValue | undefined {
  const light = context.light('D65');
  if (light === undefined || basis.colour === undefined) return undefined;
  const asked: JudgedLight = { name: 'D65', light, observer: context.book.observer };
  for (const geometry of context.book.geometryOrder) {
    const group = basis.colour.groups.find((candidate) => candidate.geometryClass === geometry);
    const sample = group === undefined ? undefined : context.sample(group, [asked]);
    const mean = sample?.means[0];
    if (group === undefined || sample === undefined || mean === undefined) continue;
    const { assumed } = context.book;
    const side = { sd: Math.sqrt(sample.covariance[0]), spots: sample.spots, assumedSd: (basis.materialClass?.readingSd[0] ?? assumed.agreementSd[0]) / Math.sqrt(rotationsPerSpot(group.readings)) };
    const { instrument } = measuredSide(group, context.index.instruments);
    return {
      question: againstCap(context, side, mean[0], agreementCovariance(instrument, assumed.agreementSd).covariance[0], max),
      what: `L* under D65 at ${geometry}`, instrument: instrumentName(context, group.instrument), geometry,
    };
  }
  return undefined;
}
