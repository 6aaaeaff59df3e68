import type { Joint } from '../../cabin/cabin.ts';
import { colourQuestion } from '../../harmony/checks/colour.ts';
import { ruleFormula } from '../../harmony/checks/joint-input.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import { jointInput } from '../../harmony/judge-joint.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import { formulaLabel } from '../../colour/formula-label.ts';
import type { IsoDate } from '../../quantities.ts';
import type { JudgedLight } from '../../readings/colour-sample.ts';
import type { GlossAngle } from '../../readings/reading.ts';
import { lotSeries } from '../lots/lot-series.ts';
import { leastLotsForTrend } from '../trend/fit-trend.ts';
import { commonScale } from './common-scale.ts';
import type { AskedLight, PairCourse, UseAt } from './crossing.ts';
import { lookAhead } from './look-ahead.ts';
import { sideCourse } from './side-course.ts';
import type { CourseKind, SideCourse } from './side-course.ts';

/** What is to be expected of a joint's colour or gloss if its lots go on as they went. */
export type ForecastState =
  /** Neither part has a trend: `too few lots` where neither has enough of them to tell. */
  | 'no trend' | 'too few lots'
  /** The lines come over the limit on the day or at the lot given. */
  | 'will clash'
  /** They already are at the latest lot. */
  | 'over its limit'
  /** They stay within it as far as is looked ahead. */
  | 'stays within'
  /** Colour is not judged there, or cannot be compared. */
  | 'not judged';

/** A place in time on the common scale of both parts. */
export interface ForecastPlace {
  /** Days, or lots, after the latest lot. */
  readonly ahead: number;
  readonly day?: IsoDate;
}

export interface JointForecast {
  readonly joint: string;
  readonly check: 'colour' | 'gloss';
  /** Of gloss, degrees. */
  readonly angle?: GlossAngle;
  readonly state: ForecastState;
  readonly unit: 'day' | 'lot';
  /** What each part is taken to do, the standard first. */
  readonly sides: readonly { readonly part: string; readonly course: CourseKind; readonly lots: number }[];
  /** Day of the latest lot, from which the forecast looks ahead. */
  readonly from?: IsoDate;
  readonly formula?: string;
  /** By the lines at the latest lot. */
  readonly now?: UseAt;
  /** Where it comes over the limit, and what uses it there. */
  readonly when?: ForecastPlace;
  readonly there?: UseAt;
  /** The earliest and the latest place that the lines leave room for; no latest one where they leave room for none at all. */
  readonly earliest?: ForecastPlace;
  readonly latest?: ForecastPlace;
  /** Farther ahead than the time that the lots cover: a long way to carry a line. */
  readonly beyondLots?: boolean;
  /** Why it is not judged. */
  readonly reason?: string;
  /** Use of the limit ahead, for a picture: evenly spaced places from the latest lot on. */
  readonly course?: readonly { readonly ahead: number; readonly use: number; readonly least: number; readonly most: number }[];
}

export interface ForecastOptions {
  readonly confidence: number;
  /** How many days, and how many lots, are looked ahead. */
  readonly days: number;
  readonly lots: number;
}

/**
 * When a joint comes over the limits of its colour check if the trends of its two parts go on. A part without a significant trend stays where it is. The
 * range is where the bands of the lines cross the limit (inverse regression after E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175): what a
 * single lot scatters about the line is not in it. Gloss is looked at by `glossForecast()`, texture is not.
 */
export function jointForecast(context: JudgeContext, joint: Joint, bases: ReadonlyMap<string, PartBasis>, options: ForecastOptions): JointForecast {
  const { input, pairing } = jointInput(context, joint, bases);
  const parts = input.sides.map(({ part }) => part.id);
  const none = (reason: string): JointForecast =>
    ({ joint: joint.id, check: 'colour', state: 'not judged', unit: 'day', sides: parts.map((part) => ({ part, course: 'as it stands', lots: 0 })), reason });
  const pair = input.colour;
  const intent = input.rule.intent.colour;
  if (input.rule.colour.notJudged !== undefined) return none(input.rule.colour.notJudged);
  if (intent !== 'match' && intent !== 'tone-step') return none(`the intent for colour is ${intent}`);
  if (typeof pair === 'string') return none(pair);
  if (pair.indicative || pairing.groups === undefined) return none(pair.conditionsReason ?? 'the two sides may not be compared');
  const asked = colourQuestion(input).demands.filter(({ standing, criteria }) => standing === 'required' && criteria.length > 0)
    .flatMap(({ light, criteria }) => {
      const index = pair.lights.findIndex((known) => known.light === light);
      const spectral = context.light(light);
      return index < 0 || spectral === undefined ? [] : [{ light, criteria, index, judged: { name: light, light: spectral, observer: pair.lights[index].observer } satisfies JudgedLight }];
    });
  if (asked.length === 0) return none('there is no data under the lights of its rule');
  const lights = asked.map(({ judged }) => judged);
  const series = pairing.groups.map((group, side) => lotSeries(context, input.sides[side], group, lights));
  const [standard, trial] = series.map((own, side) => sideCourse(own, pair, side as 0 | 1, asked.map(({ index }) => index), options.confidence)) as [SideCourse, SideCourse];
  const sides = [standard, trial].map(({ kind, lots }, side) => ({ part: parts[side], course: kind, lots }));
  const moving = series.filter((_, side) => [standard, trial][side].kind === 'trend');
  const unit = moving.every((own) => own.unit === 'day') ? 'day' : 'lot';
  const base = { joint: joint.id, check: 'colour', unit, sides, formula: formulaLabel(ruleFormula(input.rule)) } as const;
  if (moving.length === 0) {
    const few = [standard, trial].every(({ lots }) => lots < leastLotsForTrend(3));
    return { ...base, state: few ? 'too few lots' : 'no trend' };
  }
  if (moving.some((own) => own.unit !== unit)) return { ...base, state: 'not judged', reason: 'the lots of one part have days and those of the other have none' };
  const placed = series.map((own) => ({ unit: own.unit, lots: own.lots.map(({ place, lot }) => ({ place, ...(lot.producedOn === undefined ? {} : { producedOn: lot.producedOn }) })) }));
  const scale = commonScale(placed, [standard, trial].map(({ kind }) => kind === 'trend'), unit);
  const question: PairCourse = {
    standard, trial, places: scale.places, confidence: options.confidence,
    asked: asked.map(({ light, criteria }): AskedLight => ({ light, criteria })),
  };
  const ahead = unit === 'day' ? options.days : options.lots;
  return { ...base, ...(scale.from === undefined ? {} : { from: scale.from }), ...lookAhead(question, scale, ahead) };
}
