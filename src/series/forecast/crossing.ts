import { limitUse } from '../../harmony/colour-evaluation.ts';
import { criterionName } from '../../harmony/colour-evaluation.ts';
import type { Lab } from '../../quantities.ts';
import { criterionRange, criterionValue } from '../../readings/criterion-test.ts';
import { quadraticForm3 } from '../../readings/matrix3.ts';
import { normalQuantile } from '../../readings/normal-distribution.ts';
import type { Criterion } from '../../readings/stacked-event.ts';
import { studentQuantile } from '../../readings/student-t.ts';
import type { SideAt, SideCourse } from './side-course.ts';

/** What is asked of a pair under one light, its index in the series of both sides. */
export interface AskedLight {
  readonly light: string;
  readonly criteria: readonly Criterion[];
}

/** Use of the limits at one place in time: as the lines say, and the least and most that they leave room for. */
export interface UseAt {
  readonly use: number;
  readonly least: number;
  readonly most: number;
  /** The light and the criterion that use most. */
  readonly light: string;
  readonly criterion: string;
  readonly value: number;
  readonly limit: number | undefined;
}

/** Step of a derivative, CIELAB units. */
const nudge = 1e-4;

/** How the courses of two sides use the limits of their joint over time. The standard comes first. */
export interface PairCourse {
  readonly standard: SideCourse;
  readonly trial: SideCourse;
  /** Places of the sides' own series at a common one. */
  readonly places: (place: number) => readonly [number, number];
  readonly asked: readonly AskedLight[];
  /** 0..1; the least and the most are the ends of an interval of this confidence for each criterion by itself. */
  readonly confidence: number;
}

/**
 * Use of the limits at a place: the largest over lights and criteria, with the ends of its interval. The value's uncertainty is that of the two lines
 * carried through its slope (JCGM 100, 5.1.2), with the degrees of freedom of Welch and Satterthwaite (JCGM 100, G.4.1, rounded down).
 */
export function useAt(course: PairCourse, place: number): UseAt {
  const [first, second] = course.places(place);
  let worst: UseAt | undefined;
  let [least, most] = [0, 0];
  course.asked.forEach(({ light, criteria }, index) => {
    const [standard, trial] = [course.standard.at(index, first), course.trial.at(index, second)];
    for (const criterion of criteria) {
      const [low, high] = criterionRange(criterion);
      const [min, max] = [Number.isFinite(low) ? low : undefined, Number.isFinite(high) ? high : undefined];
      const { value, reach } = valueWithReach(criterion, standard, trial, course.confidence);
      const use = limitUse(value, min, max);
      const [below, above] = [limitUse(value - reach, min, max), limitUse(value + reach, min, max)];
      most = Math.max(most, below, above);
      least = Math.max(least, value - reach < 0 && value + reach > 0 && min !== undefined && min <= 0 ? 0 : Math.min(below, above));
      if (worst === undefined || use > worst.use) worst = { use, least: 0, most: 0, light, criterion: criterionName(criterion), value, limit: max ?? min };
    }
  });
  return { ...(worst ?? { use: 0, light: '', criterion: '', value: 0, limit: undefined }), least, most };
}

/** The criterion's value and half of its interval. */
function valueWithReach(criterion: Criterion, standard: SideAt, trial: SideAt, confidence: number): { readonly value: number; readonly reach: number } {
  const value = criterionValue(criterion, standard.colour, trial.colour);
  const slopes = [0, 1, 2].map((axis) => {
    const moved = (colour: Lab, by: number): Lab => [colour[0] + (axis === 0 ? by : 0), colour[1] + (axis === 1 ? by : 0), colour[2] + (axis === 2 ? by : 0)];
    return {
      first: (criterionValue(criterion, moved(standard.colour, nudge), trial.colour) - criterionValue(criterion, moved(standard.colour, -nudge), trial.colour)) / (2 * nudge),
      second: (criterionValue(criterion, standard.colour, moved(trial.colour, nudge)) - criterionValue(criterion, standard.colour, moved(trial.colour, -nudge))) / (2 * nudge),
    };
  });
  const [u1, u2] = [
    quadraticForm3(standard.covariance, slopes[0].first, slopes[1].first, slopes[2].first),
    quadraticForm3(trial.covariance, slopes[0].second, slopes[1].second, slopes[2].second),
  ].map((variance) => Math.max(0, variance));
  const total = u1 + u2;
  if (total === 0) return { value, reach: 0 };
  const freedom = total ** 2 / (u1 ** 2 / standard.freedom + u2 ** 2 / trial.freedom);
  const factor = freedom > 1000 ? normalQuantile((1 + confidence) / 2) : studentQuantile((1 + confidence) / 2, Math.max(1, Math.floor(freedom + 1e-9)));
  return { value, reach: factor * Math.sqrt(total) };
}

/** First place, from one to another, where a course of time comes above a limit of 1; it is looked for in so many steps and then halved to 1e-6 of one. */
export function firstAbove(course: (place: number) => number, from: number, to: number, steps = 400): number | undefined {
  if (course(from) > 1) return from;
  const step = (to - from) / steps;
  for (let k = 1; k <= steps; k++) {
    let high = from + k * step;
    if (!(course(high) > 1)) continue;
    let low = high - step;
    while (high - low > 1e-6 * step) {
      const middle = 0.5 * (low + high);
      if (course(middle) > 1) high = middle;
      else low = middle;
    }
    return high;
  }
  return undefined;
}
