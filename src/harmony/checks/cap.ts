import type { Cap } from '../../cabin/cabin.ts';
import type { JudgedLight } from '../../readings/colour-sample.ts';
import { agreementCovariance } from '../../readings/instrument-term.ts';
import { measuredSide } from '../../readings/measured-side.ts';
import { pooledVariance } from '../../readings/sample-covariance.ts';
import { spotVariance } from '../../readings/scalar-variance.ts';
import { decided } from '../decided.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { CheckResult } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';
import { atMost } from '../scalar-comparison.ts';
import { certainty, figure, percentOfLimit } from '../wording.ts';

/** Caps that hold for a part: those of its zone in the cabin, and those of the book for a zone of that name that the cabin does not set itself. */
export function capsOf(context: JudgeContext, zone: string): readonly Cap[] {
  const own = context.index.zones.get(zone)?.caps ?? [];
  const fromBook = context.book.caps.filter((cap) => cap.zone === zone && !own.some((other) => other.quantity === cap.quantity && other.angle === cap.angle));
  return [...own, ...fromBook];
}

interface CappedValue {
  readonly value: number;
  readonly uncertainty: number;
  readonly what: string;
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
  const found = cap.quantity === 'gloss' ? cappedGloss(context, basis, cap.angle ?? 60) : cappedLightness(context, basis);
  if (found === undefined) {
    const what = cap.quantity === 'gloss' ? `gloss at ${cap.angle ?? 60}°` : 'lightness under D65';
    return { ...base, verdict: 'no data', simple: 'no data', limit: cap.max, cause: 'missing data', sentence: `${name}: no reading of ${what} for the cap of its zone.` };
  }
  const comparison = atMost(found.value, found.uncertainty, cap.max);
  const { verdict, simple } = decided(book.decision, comparison);
  const limitUse = found.value / cap.max;
  return {
    ...base, verdict, simple, value: found.value, limit: cap.max, limitUse, uncertainty: found.uncertainty, withinProbability: comparison.within,
    ...(verdict === 'open' ? { cause: 'on the limit' as const } : {}),
    sentence: `${name}: ${found.what} ${figure(found.value)}, the zone allows ${figure(cap.max)} (${percentOfLimit(limitUse)} of the cap); `
      + `${certainty(verdict, comparison.within, verdict === 'open' ? 'on the limit' : undefined, undefined)}.`,
  };
}

function cappedGloss(context: JudgeContext, basis: PartBasis, angle: number): CappedValue | undefined {
  const sample = basis.gloss?.samples.find((candidate) => candidate.angle === angle);
  if (sample === undefined) return undefined;
  const { assumed } = context.book;
  const side = { sd: sample.sd, spots: sample.spots, assumedSd: basis.materialClass?.glossSd ?? assumed.agreementGlossSd };
  const agreement = basis.gloss?.measured.instrument?.agreement?.glossSd ?? assumed.agreementGlossSd;
  return {
    value: sample.mean,
    uncertainty: Math.sqrt(spotVariance(side, assumed.priorReadings) / sample.spots + agreement * agreement),
    what: `gloss at ${angle}°`,
  };
}

function cappedLightness(context: JudgeContext, basis: PartBasis): CappedValue | undefined {
  const light = context.light('D65');
  if (light === undefined || basis.colour === undefined) return undefined;
  const asked: JudgedLight = { name: 'D65', light, observer: context.book.observer };
  for (const geometry of context.book.geometryOrder) {
    const group = basis.colour.groups.find((candidate) => candidate.geometryClass === geometry);
    const sample = group === undefined ? undefined : context.sample(group, [asked]);
    const mean = sample?.means[0];
    if (group === undefined || sample === undefined || mean === undefined) continue;
    const { assumed } = context.book;
    const assumedSd = basis.materialClass?.readingSd[0] ?? assumed.agreementSd[0];
    const { instrument } = measuredSide(group, context.index.instruments);
    const agreement = agreementCovariance(instrument, assumed.agreementSd).covariance[0];
    return {
      value: mean[0],
      uncertainty: Math.sqrt(pooledVariance(assumedSd * assumedSd, sample.covariance[0], sample.spots, assumed.priorReadings) / sample.spots + agreement),
      what: `L* under D65 at ${geometry}`,
    };
  }
  return undefined;
}
