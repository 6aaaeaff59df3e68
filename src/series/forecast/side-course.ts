import type { ColourPair } from '../../harmony/colour-pair.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import { addMatrix3, scaleMatrix3 } from '../../readings/matrix3.ts';
import { sampleCovariance } from '../../readings/sample-covariance.ts';
import { meanOfSpots } from '../../readings/spots.ts';
import { lightCovariance } from '../../readings/stacked-excess.ts';
import type { LotSeries } from '../lots/lot-series.ts';
import { fitTrend, trendAt } from '../trend/fit-trend.ts';
import type { Trend } from '../trend/fit-trend.ts';

/** Where a side is taken to be as time goes on: on the line of its lots, at their mean, or where it stands. */
export type CourseKind = 'trend' | 'mean of lots' | 'as it stands';

/** What a side is under one light at a place in time, and how well that is known. */
export interface SideAt {
  readonly colour: Lab;
  readonly covariance: Matrix3;
  /** Degrees of freedom of the covariance; infinite where it is taken as known. */
  readonly freedom: number;
}

export interface SideCourse {
  readonly kind: CourseKind;
  readonly lots: number;
  /** The line under the first light, where one could be drawn at all. */
  readonly trend: Trend | undefined;
  readonly at: (light: number, place: number) => SideAt;
}

/** Fewest lots whose mean stands for a part without a trend. Assumption, no source. */
export const leastLotsForMean = 3;

/**
 * The course of one side of a joint under the lights of its series. A trend is one where the line under the first light is significant; it is then
 * drawn under each light. Without one the side stays at the mean of its lots where there are three, else as the joint judges it (`side` 0 the standard).
 */
export function sideCourse(series: LotSeries, pair: ColourPair, side: 0 | 1, lightsOfPair: readonly number[], confidence: number): SideCourse {
  const lots = series.lots.length;
  const lines = series.lights.map((_, light) => fitTrend(series.lots.map(({ place, colours, noise }) => ({ place, value: colours[light], noise: noise[light] })), confidence));
  const trend = lines[0];
  if (trend?.significant === true && lines.every((line) => line !== undefined)) {
    return { kind: 'trend', lots, trend, at: (light, place) => {
      const line = lines[light];
      const { value, covariance } = trendAt(line, place);
      return { colour: asLab(value), covariance: asMatrix(covariance), freedom: line.freedom };
    } };
  }
  if (lots >= leastLotsForMean) {
    const levels = series.lights.map((_, light): SideAt => {
      const colours = series.lots.map((lot) => lot.colours[light]);
      const noise = series.lots.reduce((sum, lot) => addMatrix3(sum, scaleMatrix3(lot.noise[light], 1 / lots ** 2)), zero);
      const scatter = scaleMatrix3(asMatrix(sampleCovariance(colours)), 1 / lots);
      // Lots that happen to lie closer than their readings are known say no more than the readings.
      return { colour: asLab(meanOfSpots(colours)), covariance: trace(noise) > trace(scatter) ? noise : scatter, freedom: lots - 1 };
    });
    return { kind: 'mean of lots', lots, trend, at: (light) => levels[light] };
  }
  const size = 3 * pair.lights.length;
  const [spot, spots] = side === 0 ? [pair.spread.first, pair.spread.firstSpots] : [pair.spread.second, pair.spread.secondSpots];
  const stands = lightsOfPair.map((light): SideAt => ({
    colour: side === 0 ? pair.lights[light].standard : pair.lights[light].trial,
    covariance: scaleMatrix3(lightCovariance(spot, size, light), 1 / spots), freedom: Infinity,
  }));
  return { kind: 'as it stands', lots, trend, at: (light) => stands[light] };
}

const zero: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0];
const trace = (m: Matrix3): number => m[0] + m[4] + m[8];
const asLab = (value: readonly number[]): Lab => [value[0], value[1], value[2]];
const asMatrix = (m: ArrayLike<number>): Matrix3 => [m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8]];
