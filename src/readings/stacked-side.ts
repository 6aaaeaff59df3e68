import type { DrawTests } from './draw-tests.ts';
import { drawTests, formAt, testWidth, valueAt } from './draw-tests.ts';
import { departureOf, stackedDraw } from './stacked-draw.ts';
import type { StackedEvent } from './stacked-event.ts';
import { splitEvent } from './uncertain-part.ts';

/** Odd, so that it leads once through the pairs of any draw, and far, so that the first ones visited lie apart. */
const stride = 0x9e3779b1;

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
  const departure = new Float64Array(tests.means.length);
  const pairs = Math.max(1, points / 2);
  let [holding, failing] = [0, 0];
  for (let visited = 0, pair = 0; visited < pairs; visited++, pair = (pair + stride) % pairs) {
    departureOf(draw, pair, departure);
    if (allHold(1, departure, tests)) holding++;
    else failing++;
    if (points > 1) {
      if (allHold(-1, departure, tests)) holding++;
      else failing++;
    }
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

function allHold(sign: number, departure: Float64Array, tests: DrawTests): boolean {
  const { means, table, perLight } = tests;
  for (let light = 0, test = 0, row = 0; light < perLight.length; light++) {
    const dL = means[3 * light] + sign * departure[3 * light];
    const da = means[3 * light + 1] + sign * departure[3 * light + 1];
    const db = means[3 * light + 2] + sign * departure[3 * light + 2];
    for (const end = test + perLight[light]; test < end; test++, row += testWidth) {
      const form = formAt(table, row, dL, da, db);
      if (form >= table[row + 9] && form <= table[row + 10]) continue;
      if (!(form >= table[row + 11] && form <= table[row + 12])) return false;
      const value = valueAt(tests, test, light, dL, da, db);
      if (!(value >= table[row + 13] && value <= table[row + 14])) return false;
    }
  }
  return true;
}
