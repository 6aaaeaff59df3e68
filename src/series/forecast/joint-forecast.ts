import { dayAfter, dayCount } from '../../cabin/day-count.ts';
import type { Joint } from '../../cabin/cabin.ts';
import { colourQuestion } from '../../harmony/checks/colour.ts';
import { ruleFormula } from '../../harmony/checks/joint-input.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import { jointInput } from '../../harmony/judge-joint.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import { formulaLabel } from '../../colour/formula-label.ts';
import type { IsoDate } from '../../quantities.ts';
import type { JudgedLight } from '../../readings/colour-sample.ts';
import { lotSeries } from '../lots/lot-series.ts';
import { leastLotsForTrend } from '../trend/fit-trend.ts';
import { firstAbove, useAt } from './crossing.ts';
import type { AskedLight, PairCourse, UseAt } from './crossing.ts';
import { sideCourse } from './side-course.ts';
import type { CourseKind, SideCourse } from './side-course.ts';

/** What is to be expected of a joint's colour if its lots go on as they went. */
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

/** Points of the course that is given for a picture. */
const coursePoints = 25;

/**
 * When a joint comes over the limits of its colour check if the trends of its two parts go on. A part without a significant trend stays where it is. The
 * range is where the bands of the lines cross the limit (inverse regression after E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175): what a
 * single lot scatters about the line is not in it. Gloss and texture are not looked at.
 */
export function jointForecast(context: JudgeContext, joint: Joint, bases: ReadonlyMap<string, PartBasis>, options: ForecastOptions): JointForecast {
  const { input, pairing } = jointInput(context, joint, bases);
  const parts = input.sides.map(({ part }) => part.id);
  const none = (reason: string): JointForecast =>
    ({ joint: joint.id, state: 'not judged', unit: 'day', sides: parts.map((part) => ({ part, course: 'as it stands', lots: 0 })), reason });
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
  const base = { joint: joint.id, unit, sides, formula: formulaLabel(ruleFormula(input.rule)) } as const;
  if (moving.length === 0) {
    const few = [standard, trial].every(({ lots }) => lots < leastLotsForTrend(3));
    return { ...base, state: few ? 'too few lots' : 'no trend' };
  }
  if (moving.some((own) => own.unit !== unit)) return { ...base, state: 'not judged', reason: 'the lots of one part have days and those of the other have none' };
  const scale = commonScale(moving, series, unit);
  const question: PairCourse = {
    standard, trial, places: scale.places, confidence: options.confidence,
    asked: asked.map(({ light, criteria }): AskedLight => ({ light, criteria })),
  };
  const ahead = unit === 'day' ? options.days : options.lots;
  return { ...base, ...(scale.from === undefined ? {} : { from: scale.from }), ...lookAhead(question, scale, ahead) };
}

/** How places ahead of the latest lot are those of each series. */
interface CommonScale {
  readonly from: IsoDate | undefined;
  readonly places: (ahead: number) => readonly [number, number];
  /** Days or lots that the lots of the longest trend cover. */
  readonly span: number;
  readonly placeOf: (ahead: number) => ForecastPlace;
}

function commonScale(moving: readonly ReturnType<typeof lotSeries>[], series: readonly ReturnType<typeof lotSeries>[], unit: 'day' | 'lot'): CommonScale {
  const last = (own: ReturnType<typeof lotSeries>): number => own.lots.at(-1)?.place ?? 0;
  const span = Math.max(...moving.map((own) => last(own) - (own.lots[0]?.place ?? 0)));
  if (unit === 'lot') {
    // The next lot of one part meets the next lot of the other.
    return { from: undefined, span, places: (ahead) => [last(series[0]) + ahead, last(series[1]) + ahead], placeOf: (ahead) => ({ ahead: Math.ceil(ahead - 1e-6) }) };
  }
  const firstDay = (own: ReturnType<typeof lotSeries>): IsoDate => own.lots[0]?.lot.producedOn ?? '';
  // A side without a trend is where it is on any day, so that its own days do not matter.
  const from = moving.map((own) => dayAfter(firstDay(own), last(own) - own.lots[0].place)).sort().at(-1) ?? '';
  const origin = (own: ReturnType<typeof lotSeries>): number => (moving.includes(own) ? dayCount(firstDay(own), from) + own.lots[0].place : 0);
  const [first, second] = [origin(series[0]), origin(series[1])];
  return {
    from, span, places: (ahead) => [first + ahead, second + ahead],
    placeOf: (ahead) => ({ ahead: Math.ceil(ahead - 1e-6), day: dayAfter(from, Math.ceil(ahead - 1e-6)) }),
  };
}

function lookAhead(question: PairCourse, { span, placeOf }: CommonScale, ahead: number): Omit<JointForecast, 'joint' | 'unit' | 'sides'> {
  const now = useAt(question, 0);
  const at = (which: 'use' | 'least' | 'most') => firstAbove((place) => useAt(question, place)[which], 0, ahead);
  const when = at('use');
  const shown = when === undefined ? ahead : Math.min(ahead, Math.max(1.5 * when, 0.25 * span));
  const course = Array.from({ length: coursePoints }, (_, k) => {
    const place = (shown * k) / (coursePoints - 1);
    const { use, least, most } = useAt(question, place);
    return { ahead: place, use, least, most };
  });
  if (when === undefined) {
    const earliest = at('most');
    return { state: 'stays within', now, course, ...(earliest === undefined ? {} : { earliest: placeOf(earliest) }) };
  }
  if (when === 0) return { state: 'over its limit', now, there: now, course, when: placeOf(0) };
  const [earliest, latest] = [at('most') ?? when, at('least')];
  return {
    state: 'will clash', now, there: useAt(question, when), course, when: placeOf(when), earliest: placeOf(earliest), beyondLots: when > span,
    ...(latest === undefined ? {} : { latest: placeOf(latest) }),
  };
}
