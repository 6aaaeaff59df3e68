import { expect, test } from 'vitest';
import type { Lab } from '../../src/quantities.ts';
import { drawTests } from '../../src/readings/draw-tests.ts';
import { marksOneByOne } from '../../src/readings/draw-marks.ts';
import { marksBySimd } from '../../src/readings/simd/mark-kernel.ts';
import { stackedDraw } from '../../src/readings/stacked-draw.ts';
import { contrastCriteria, matchCriteria, toneStepCriteria } from '../../src/readings/stacked-event.ts';
import type { StackedLight } from '../../src/readings/stacked-event.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

/** Lights with unlike numbers of criteria of every kind, near their limits. */
function eventOf(count: number, rank: number, seed: number): { lights: readonly StackedLight[]; covariance: Float64Array } {
  const random = seededNumbers(seed);
  const size = 3 * count;
  const rows = Array.from({ length: size }, () => Array.from({ length: rank }, () => 0.4 * (random() - 0.5)));
  const covariance = Float64Array.from({ length: size * size }, (_, at) => rows[Math.floor(at / size)]!.reduce((sum, value, k) => sum + value * rows[at % size]![k]!, 0));
  const lights = Array.from({ length: count }, (_, light): StackedLight => {
    const standard: Lab = [20 + 50 * random(), 20 * random() - 10, 20 * random() - 10];
    const trial: Lab = [standard[0] + 0.6 * random(), standard[1] + 0.4 * random(), standard[2] - 0.4 * random()];
    const criteria = [
      matchCriteria({ name: 'ciede2000' }, 0.6, [{ component: 'dL', min: -0.4, max: 0.5 }, { component: 'dC', max: 0.3 }]),
      contrastCriteria({ name: 'cie76' }, 0.5), toneStepCriteria({ minDL: 0.2, maxDL: 0.8, maxDH: 0.3 }), matchCriteria({ name: 'cmc', l: 2, c: 1 }, 0.7),
    ][(light + seed) % 4]!;
    return { standard, trial, criteria };
  });
  return { lights, covariance };
}

// The marks of plain numbers are the definition; those by vectors are to be the same bytes.
test.each([[1, 3, 512, 1], [2, 5, 1024, 1], [4, 6, 8192, 1], [4, 12, 1024, 0x9e3779b1], [6, 18, 512, 0x9e3779b1], [7, 24, 256, 77]])('%i lights, rank %i, %i points, %i pairs on each time: vectors mark as plain numbers do', (count, rank, points, stride) => {
  for (let seed = 1; seed <= 6; seed += 1) {
    const { lights, covariance } = eventOf(count, rank, seed);
    const draw = stackedDraw(covariance, 3 * count, points);
    const tests = drawTests(lights, draw);
    const [vectors, plain] = [marksBySimd(draw, tests), marksOneByOne(draw, tests)];
    expect(vectors).toBeDefined();
    const pairs = Math.min(256, points / 2);
    const from = points / 2 - 3;
    const asked = pairs * tests.values.length;
    const marks = plain(from, stride, pairs);
    expect(vectors!(from, stride, pairs).slice(0, asked)).toEqual(marks);
    // Neither all alike nor all sure, or the comparison would say little.
    expect(new Set(marks).size).toBeGreaterThan(2);
  }
});

test('what has no room, or nothing uncertain, is left to plain numbers', () => {
  const { lights } = eventOf(2, 3, 1);
  const none = stackedDraw(new Float64Array(36), 6, 512);
  expect(marksBySimd(none, drawTests(lights, none))).toBeUndefined();
  const { lights: many, covariance } = eventOf(2, 3, 2);
  const large = stackedDraw(covariance, 6, 32768);
  expect(marksBySimd(large, drawTests(many, large))).toBeUndefined();
});
