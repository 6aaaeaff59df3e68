import type { DrawTests } from './draw-tests.ts';
import { drawMarks, holdingBits } from './draw-marks.ts';
import { drawTests } from './draw-tests.ts';
import { stackedDraw } from './stacked-draw.ts';
import type { StackedDraw } from './stacked-draw.ts';
import type { StackedEvent } from './stacked-event.ts';
import { splitEvent } from './uncertain-part.ts';

/** Odd, so that it leads once through the pairs of any draw, and far, so that the first ones visited lie apart. */
const stride = 0x9e3779b1;
/** Pairs between two looks at whether the answer is settled. */
const batch = 32;

/**
 * On which side of a confidence the probability lies that all criteria hold under all lights: `high` at or above it, `low` at or below
 * its complement, else `between`. It is the answer that `stackedProbability()` of the same points gives; the draws end as soon as both
 * ends are out of reach, which spares most of them where the answer is `between`.
 */
export function stackedSide(event: StackedEvent & { readonly points: number }, confidence: number): 'high' | 'low' | 'between' {
  const { fails, open } = splitEvent(event);
  if (fails) return 'low';
  if (open === undefined) return 'high';
  const draw = stackedDraw(open.covariance, 3 * open.lights.length, event.points, event.seed);
  const tests = drawTests(open.lights, draw);
  const { points } = draw;
  const mostFailing = largest(points, (count) => (points - count) / points >= confidence);
  const mostHolding = largest(points, (count) => count / points <= 1 - confidence);
  const marksOf = drawMarks(draw, tests);
  const pairs = Math.max(1, points / 2);
  let [holding, failing] = [0, 0];
  for (let visited = 0, pair = 0; visited < pairs; visited += batch) {
    const here = Math.min(batch, pairs - visited);
    const marks = marksOf(pair, stride, here);
    for (let index = 0; index < here; index++, pair = (pair + stride) % pairs) {
      const bits = allHold(marks, index * tests.values.length, draw, tests, pair);
      holding += (bits & 1) + (bits >> 1);
    }
    failing = Math.min(points, 2 * (visited + here)) - holding;
    if (failing > mostFailing && holding > mostHolding) return 'between';
  }
  return failing <= mostFailing ? 'high' : 'low';
}

/** The largest count up to `most` that passes, where all below it pass too; -1 where none does. */
function largest(most: number, passes: (count: number) => boolean): number {
  let [low, high] = [-1, most];
  while (low < high) {
    const middle = Math.ceil(0.5 * (low + high));
    if (passes(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Which of the two draws of a pair hold in every test, as bits 1 and 2. */
function allHold(marks: Uint8Array, from: number, draw: StackedDraw, tests: DrawTests, pair: number): number {
  const { perLight } = tests;
  let bits = draw.points > 1 ? 3 : 1;
  for (let light = 0, test = 0; light < perLight.length; light++) {
    for (const end = test + perLight[light]; test < end; test++) {
      const mark = marks[from + test];
      // What may hold is asked last: a draw that fails for sure elsewhere needs no value.
      bits &= (mark | (mark >> 2)) & 3;
    }
  }
  for (let light = 0, test = 0; bits !== 0 && light < perLight.length; light++) {
    for (const end = test + perLight[light]; test < end; test++) {
      const mark = marks[from + test];
      if ((mark >> 2 & ~mark & bits) !== 0) bits &= holdingBits(mark, draw, tests, pair, light, test);
    }
  }
  return bits;
}
