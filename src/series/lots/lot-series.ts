import { dayCount } from '../../cabin/day-count.ts';
import { colourSideOf } from '../../harmony/colour-side.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import type { JudgedLight } from '../../readings/colour-sample.ts';
import { carriedCovariance } from '../../readings/lab-carrier.ts';
import { covarianceOfSd, scaleMatrix3 } from '../../readings/matrix3.ts';
import type { ReadingGroup } from '../../readings/reading-groups.ts';
import { pooledCovariance } from '../../readings/sample-covariance.ts';
import { rotationsPerSpot } from '../../readings/spots.ts';
import { lightCovariance } from '../../readings/stacked-excess.ts';
import { partLots } from './part-lots.ts';
import type { Lot } from './part-lots.ts';

/** A lot's colour as read under the conditions of the series. */
export interface LotColour {
  readonly lot: Lot;
  /** Days since the first lot, or its number from 0. */
  readonly place: number;
  /** Mean colour under each light of the series. */
  readonly colours: readonly Lab[];
  readonly spots: number;
  /** Covariance of the mean under each light, from its spots alone. */
  readonly noise: readonly Matrix3[];
  readonly group: ReadingGroup;
}

/** Lots of a part in order of production, read under like conditions. */
export interface LotSeries {
  readonly unit: 'day' | 'lot';
  readonly lights: readonly JudgedLight[];
  readonly lots: readonly LotColour[];
  /** Lots that were read under other conditions, or not in colour. */
  readonly leftOut: readonly string[];
}

/** Whether two groups were read alike: one instrument, geometry, aperture and UV state. */
const readAlike = (first: ReadingGroup, second: ReadingGroup): boolean =>
  first.instrument === second.instrument && first.geometryClass === second.geometryClass && first.apertureClass === second.apertureClass
  && first.uv === second.uv && first.aspecularDeg === second.aspecularDeg;

/**
 * The lots of a part as read like a group of its readings, under lights. The covariance of one spot is that within the lots, pooled over them and
 * weighted with what the book assumes for the material. Lots without a colour under every light are left out.
 */
export function lotSeries(context: JudgeContext, basis: PartBasis, group: ReadingGroup, lights: readonly JudgedLight[]): LotSeries {
  const lots = partLots(context, basis);
  const from = lots[0]?.producedOn;
  const found = lots.flatMap((lot, index) => {
    const alike = lot.basis.colour?.groups.find((other) => readAlike(other, group));
    const sample = alike === undefined ? undefined : context.sample(alike, lights);
    const colours = sample?.means.filter((mean) => mean !== undefined) ?? [];
    if (alike === undefined || sample === undefined || colours.length < lights.length) return [];
    const place = from === undefined || lot.producedOn === undefined ? index : dayCount(from, lot.producedOn);
    return [{ lot, place, colours, sample, group: alike }];
  });
  const freedom = found.reduce((sum, { sample }) => sum + sample.spots - 1, 0);
  const within = new Float64Array((3 * lights.length) ** 2);
  for (const { sample } of found) for (let at = 0; at < within.length; at++) within[at] += freedom === 0 ? 0 : ((sample.spots - 1) * sample.covariance[at]) / freedom;
  const { readingSd } = colourSideOf(context, basis);
  const noiseOf = ({ sample, group: own }: (typeof found)[number]): readonly Matrix3[] => {
    const assumed = scaleMatrix3(covarianceOfSd(readingSd), 1 / rotationsPerSpot(own.readings));
    const spot = pooledCovariance(carriedCovariance(assumed, context.carrier(sample)), within, freedom + 1, context.book.assumed.priorReadings);
    return lights.map((_, light) => scaleMatrix3(lightCovariance(spot, 3 * lights.length, light), 1 / sample.spots));
  };
  return {
    unit: from === undefined ? 'lot' : 'day', lights,
    lots: found.map((each) => ({ lot: each.lot, place: each.place, colours: each.colours, spots: each.sample.spots, noise: noiseOf(each), group: each.group })),
    leftOut: lots.filter((lot) => !found.some((each) => each.lot === lot)).map(({ id }) => id),
  };
}

/** The group that most lots of a part were read like; the earlier by the order of the book among equals. Undefined where nothing was read. */
export function groupOfMostLots(context: JudgeContext, basis: PartBasis, lights: readonly JudgedLight[]): ReadingGroup | undefined {
  const order = (group: ReadingGroup): number => {
    const at = context.book.geometryOrder.indexOf(group.geometryClass);
    return at < 0 ? context.book.geometryOrder.length : at;
  };
  const counted = (basis.colour?.groups ?? []).map((group) => ({ group, lots: lotSeries(context, basis, group, lights).lots.length }));
  return counted.sort((first, second) => second.lots - first.lots || order(first.group) - order(second.group))[0]?.group;
}
