import type { Joint } from '../../cabin/cabin.ts';
import { glossQuestion } from '../../harmony/checks/gloss.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import { jointInput } from '../../harmony/judge-joint.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { Matrix3 } from '../../quantities.ts';
import { spotVariance } from '../../readings/scalar-variance.ts';
import { glossSeries } from '../lots/gloss-series.ts';
import type { GlossSeries } from '../lots/gloss-series.ts';
import { trendAt } from '../trend/fit-trend.ts';
import { commonScale } from './common-scale.ts';
import type { ForecastOptions, JointForecast } from './joint-forecast.ts';
import { lookAhead } from './look-ahead.ts';
import type { UseAt } from './crossing.ts';
import { leastLotsForMean } from './side-course.ts';
import type { SideAt, SideCourse } from './side-course.ts';

/**
 * When the gloss of a joint that is meant to match comes over its limit if the trends of its parts go on: the method of the colour, with gloss as the one coordinate
 * that moves. The limit is that of today's level, at the angle of the rule. Undefined where gloss is not judged as a match, or neither side has a trend at that angle.
 */
export function glossForecast(context: JudgeContext, joint: Joint, bases: ReadonlyMap<string, PartBasis>, options: ForecastOptions): JointForecast | undefined {
  const { input } = jointInput(context, joint, bases);
  const { gloss, intent } = input.rule;
  const question = glossQuestion(input);
  if (!gloss.applicable || gloss.standing === 'advisory' || intent.gloss !== 'match' || question === undefined) return undefined;
  const { angle, limit } = gloss;
  const series = input.sides.map((side) => glossSeries(context, side, options.confidence, angle));
  const courses = series.map((own, side): SideCourse => {
    const stands = side === 0 ? question.first : question.second;
    const level = input.sides[side].gloss?.samples.find((sample) => sample.angle === angle)?.mean ?? NaN;
    return glossCourse(own, { mean: level, variance: spotVariance(stands, question.priorReadings) / stands.spots });
  });
  const moves = courses.map(({ kind }) => kind === 'trend');
  if (!moves.includes(true)) return undefined;
  const sides = courses.map(({ kind, lots }, side) => ({ part: input.sides[side].part.id, course: kind, lots }));
  const moving = series.filter((_, side) => moves[side]);
  const unit = moving.every((own) => own?.unit === 'day') ? 'day' : 'lot';
  const base = { joint: joint.id, check: 'gloss', angle, unit, sides } as const;
  if (moving.some((own) => own?.unit !== unit)) return { ...base, state: 'not judged', reason: 'the lots of one part have days and those of the other have none' };
  const scale = commonScale(series.map((own) => own ?? { unit, lots: [] }), moves, unit);
  const [standard, trial] = courses as [SideCourse, SideCourse];
  const found = lookAhead({
    standard, trial, places: scale.places, confidence: options.confidence, asked: [{ light: '', criteria: [{ kind: 'component', component: 'dL', min: -limit, max: limit }] }],
  }, scale, unit === 'day' ? options.days : options.lots);
  const told = <Use extends UseAt | undefined>(use: Use): Use => (use === undefined ? use : { ...use, light: '', criterion: `${angle}°`, value: Math.abs(use.value) });
  return {
    ...base, ...(scale.from === undefined ? {} : { from: scale.from }), ...found,
    ...(found.now === undefined ? {} : { now: told(found.now) }), ...(found.there === undefined ? {} : { there: told(found.there) }),
  };
}

/** Gloss as the first of three coordinates, the others nothing: so that one coordinate goes the way of three. */
const alone = (gloss: number, variance: number, freedom: number): SideAt => ({ colour: [gloss, 0, 0], covariance: [variance, 0, 0, 0, 0, 0, 0, 0, 0] satisfies Matrix3, freedom });

function glossCourse(own: GlossSeries | undefined, stands: { readonly mean: number; readonly variance: number }): SideCourse {
  const lots = own?.lots.length ?? 0;
  const { trend } = own ?? {};
  if (trend?.significant === true) {
    return { kind: 'trend', lots, trend, at: (_, place) => {
      const { value, covariance } = trendAt(trend, place);
      return alone(value[0], covariance[0], trend.freedom);
    } };
  }
  if (own !== undefined && lots >= leastLotsForMean) {
    const mean = own.lots.reduce((sum, lot) => sum + lot.mean, 0) / lots;
    const scatter = own.lots.reduce((sum, lot) => sum + (lot.mean - mean) ** 2, 0) / (lots - 1) / lots;
    // Lots that happen to lie closer than their readings are known say no more than the readings.
    const level = alone(mean, Math.max(scatter, own.lots.reduce((sum, lot) => sum + lot.noise, 0) / lots ** 2), lots - 1);
    return { kind: 'mean of lots', lots, trend, at: () => level };
  }
  const level = alone(stands.mean, stands.variance, Infinity);
  return { kind: 'as it stands', lots, trend, at: () => level };
}
