import type { DrawTests } from './draw-tests.ts';
import { formAt, testWidth, valueAt } from './draw-tests.ts';
import { departureOf } from './stacked-draw.ts';
import type { StackedDraw } from './stacked-draw.ts';
import type { MarkPairs } from './simd/mark-kernel.ts';
import { marksBySimd } from './simd/mark-kernel.ts';

/**
 * Marks pairs of draws with a byte for each test: bit 1 where the first draw of the pair holds by its local form, bit 2 the second, bits 4
 * and 8 where it may hold and the value itself is to be asked. By vectors where the engine has them; the marks are the same.
 */
export const drawMarks = (draw: StackedDraw, tests: DrawTests): MarkPairs => marksBySimd(draw, tests) ?? marksOneByOne(draw, tests);

export function marksOneByOne(draw: StackedDraw, tests: DrawTests): MarkPairs {
  const { means, table, perLight } = tests;
  const departure = new Float64Array(means.length);
  const pairs = Math.max(1, draw.points / 2);
  return (from, stride, count) => {
    const marks = new Uint8Array(count * tests.values.length);
    for (let visited = 0, pair = from, next = 0; visited < count; visited++, pair = (pair + stride) % pairs) {
      departureOf(draw, pair, departure);
      for (let light = 0, row = 0; light < perLight.length; light++) {
        for (let left = perLight[light]; left > 0; left--, row += testWidth) marks[next++] = bitsOf(table, row, means, departure, light);
      }
    }
    return marks;
  };
}

function bitsOf(table: Float64Array, row: number, means: Float64Array, departure: Float64Array, light: number): number {
  let bits = 0;
  for (let lane = 0; lane < 2; lane++) {
    const sign = 1 - 2 * lane;
    const form = formAt(table, row, means[3 * light] + sign * departure[3 * light], means[3 * light + 1] + sign * departure[3 * light + 1], means[3 * light + 2] + sign * departure[3 * light + 2]);
    if (form >= table[row + 9] && form <= table[row + 10]) bits |= 1 << lane;
    if (form >= table[row + 11] && form <= table[row + 12]) bits |= 4 << lane;
  }
  return bits;
}

/** Bits 1 and 2 of a mark: which of the two draws hold. The value itself is asked where the mark leaves it open. */
export function holdingBits(mark: number, draw: StackedDraw, tests: DrawTests, pair: number, light: number, test: number): number {
  const sure = mark & 3;
  const asked = (mark >> 2) & ~sure;
  if (asked === 0) return sure;
  const { means, table } = tests;
  const { rank, factor, columns } = draw;
  const row = test * testWidth;
  let L = 0;
  let a = 0;
  let b = 0;
  for (let k = 0; k < rank; k++) {
    const normal = columns[k][pair];
    L += factor[3 * light * rank + k] * normal;
    a += factor[(3 * light + 1) * rank + k] * normal;
    b += factor[(3 * light + 2) * rank + k] * normal;
  }
  let bits = sure;
  for (let lane = 0; lane < 2; lane++) {
    if ((asked & (1 << lane)) === 0) continue;
    const sign = 1 - 2 * lane;
    const value = valueAt(tests, test, light, means[3 * light] + sign * L, means[3 * light + 1] + sign * a, means[3 * light + 2] + sign * b);
    if (value >= table[row + 13] && value <= table[row + 14]) bits |= 1 << lane;
  }
  return bits;
}
