import { dayCount } from '../../cabin/day-count.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { IsoDate } from '../../quantities.ts';
import type { GlossAngle } from '../../readings/reading.ts';
import { spotVariance } from '../../readings/scalar-variance.ts';
import { fitTrend } from '../trend/fit-trend.ts';
import type { Trend } from '../trend/fit-trend.ts';
import { partLots } from './part-lots.ts';

/** Spread of one gloss reading where the book does not know the material, GU. Assumption, no source. */
const unknownMaterialSd = 0.2;

/** Gloss of the lots of a part at one angle, with its trend where there are lots enough. */
export interface GlossSeries {
  readonly angle: GlossAngle;
  readonly unit: 'day' | 'lot';
  /** `noise` is the variance of the mean that its readings leave. */
  readonly lots: readonly { readonly id: string; readonly place: number; readonly producedOn?: IsoDate; readonly mean: number; readonly spots: number; readonly noise: number }[];
  readonly trend: Trend | undefined;
}

/** At the angle given, else at the one that most lots were read at, 60 degrees among equals; undefined where no lot has gloss of its own there. */
export function glossSeries(context: JudgeContext, basis: PartBasis, confidence: number, wanted?: GlossAngle): GlossSeries | undefined {
  const lots = partLots(context, basis);
  const from = lots[0]?.producedOn;
  const own = lots.flatMap((lot, index) => (lot.basis.gloss === undefined || lot.basis.gloss === basis.gloss ? [] : [{
    id: lot.id, ...(lot.producedOn === undefined ? {} : { producedOn: lot.producedOn }), samples: lot.basis.gloss.samples, place: from === undefined || lot.producedOn === undefined ? index : dayCount(from, lot.producedOn),
  }]));
  const at = (angle: GlossAngle) => own.flatMap(({ id, place, producedOn, samples }) => {
    const sample = samples.find((each) => each.angle === angle);
    return sample === undefined ? [] : [{ id, place, ...(producedOn === undefined ? {} : { producedOn }), sample }];
  });
  const [angle, read] = (wanted === undefined ? [60, 20, 85] as const : [wanted]).map((each) => [each, at(each)] as const).sort((p, q) => q[1].length - p[1].length)[0];
  if (read.length === 0) return undefined;
  const freedom = read.reduce((sum, { sample }) => sum + sample.spots - 1, 0);
  const within = freedom === 0 ? 0 : read.reduce((sum, { sample }) => sum + (sample.spots - 1) * sample.sd ** 2, 0) / freedom;
  const spot = spotVariance({ sd: Math.sqrt(within), spots: freedom + 1, assumedSd: basis.materialClass?.glossSd ?? unknownMaterialSd }, context.book.assumed.priorReadings);
  return {
    angle, unit: from === undefined ? 'lot' : 'day',
    lots: read.map(({ sample, ...lot }) => ({ ...lot, mean: sample.mean, spots: sample.spots, noise: spot / sample.spots })),
    trend: fitTrend(read.map(({ place, sample }) => ({ place, value: [sample.mean], noise: [spot / sample.spots] })), confidence),
  };
}
