import type { CommonScale } from './common-scale.ts';
import { firstAbove, useAt } from './crossing.ts';
import type { PairCourse } from './crossing.ts';
import type { JointForecast } from './joint-forecast.ts';

/** Points of the course that is given for a picture. */
const coursePoints = 25;

/** When the courses of two sides come over the limits of their joint, with the range that their lines leave room for. */
export function lookAhead(question: PairCourse, { span, placeOf }: CommonScale, ahead: number): Pick<JointForecast, 'state' | 'now' | 'when' | 'there' | 'earliest' | 'latest' | 'beyondLots' | 'course'> {
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
