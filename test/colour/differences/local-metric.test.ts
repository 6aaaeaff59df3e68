import { expect, test } from 'vitest';
import { difference } from '../../../src/colour/difference.ts';
import { formulaLabel } from '../../../src/colour/formula-label.ts';
import { localMetric } from '../../../src/colour/local-metric.ts';
import type { Lab, Matrix3 } from '../../../src/quantities.ts';
import { allFormulas } from './all-formulas.ts';
import { farPairs, nearPairs } from './seeded-pairs.ts';

const labelled = allFormulas.map((formula) => [formulaLabel(formula), formula] as const);
/** Chromatic, and not more so than a surface of that lightness can be: beyond, the appearance models have no slopes worth the name. */
const isChromatic = ([L, a, b]: Lab): boolean => Math.hypot(a, b) > 5 && Math.hypot(a, b) < L - 10 && Math.hypot(a, b) < 110 - L;
const chromatic = farPairs(3000, 20267).map(([colour]) => colour).filter(isChromatic);

const form = (q: Matrix3, d: Lab): number =>
  d.reduce((sum, di, i) => sum + d.reduce((inner, dj, j) => inner + q[i * 3 + j]! * di * dj, 0), 0);

/** Smallest principal minor of each size, against the size of the entries. */
function smallestMinor(q: Matrix3): number {
  const [a, b, c, d, e, f, g, h, i] = q;
  const scale = Math.max(a, e, i);
  return Math.min(
    a / scale, e / scale, i / scale,
    (a * e - b * d) / scale ** 2, (a * i - c * g) / scale ** 2, (e * i - f * h) / scale ** 2,
    (a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)) / scale ** 3,
  );
}

test.each(labelled)('%s: the form is that of the formula by finite steps', (_, formula) => {
  // Polarisation: Q_ij = (f(e_i + e_j) - f(e_i - e_j)) / 4 with f the squared difference of two colours symmetric about the middle.
  const step = 2e-3;
  let worst = 0;
  for (const middle of chromatic) {
    const square = (d: readonly number[]): number => {
      const shifted = (i: 0 | 1 | 2, sign: number): number => middle[i] + (sign * d[i]! * step) / 2;
      const at = (sign: number): Lab => [shifted(0, sign), shifted(1, sign), shifted(2, sign)];
      return difference(formula, at(-1), at(1)) ** 2 / step ** 2;
    };
    const q = localMetric(formula, middle, middle);
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) {
        const plus = [0, 0, 0];
        const minus = [0, 0, 0];
        plus[i]! += 1;
        plus[j]! += 1;
        minus[i]! += 1;
        minus[j]! -= 1;
        const finite = (square(plus) - square(minus)) / 4;
        worst = Math.max(worst, Math.abs(q[i * 3 + j]! - finite) / Math.max(q[0], q[4], q[8]));
      }
    }
  }
  expect(chromatic.length).toBeGreaterThan(150);
  expect(worst).toBeLessThan(1e-3);
});

test.each(labelled)('%s: a pair one unit apart comes out as by the formula', (_, formula) => {
  const errors = nearPairs(1500, 20268, 0.6, 40)
    .filter(([standard]) => isChromatic(standard))
    .map(([standard, trial]) => {
      const d: Lab = [trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]];
      return Math.abs(Math.sqrt(form(localMetric(formula, standard, trial), d)) / difference(formula, standard, trial) - 1);
    });
  expect(Math.max(...errors)).toBeLessThan(0.01);
});

// With kC and kH unlike no form fits across grey, where a chroma difference turns into a hue difference: left out here.
test.each(labelled.filter(([, { kC, kH }]) => kC === kH))('%s: at and across grey the form keeps within 15 % of the formula', (_, formula) => {
  const errors = nearPairs(500, 20269, 0.5, 0.6).map(([standard, trial]) => {
    const d: Lab = [trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]];
    return Math.abs(Math.sqrt(form(localMetric(formula, standard, trial), d)) / difference(formula, standard, trial) - 1);
  });
  expect(Math.max(...errors)).toBeLessThan(0.15);
});

const special: readonly (readonly [Lab, Lab])[] = [
  [[50, 0, 0], [50, 0, 0]], [[27, 0, 0], [28, 0, 0]], [[50, 2, 1], [50, -2, -1]], [[0, 0, 0], [0, 0, 0]], [[100, 0, 0], [100, 0, 0]],
  [[5, 1e-9, 0], [5, 0, 0]], [[30, 10, -60], [30, 10, -62]], [[50, 60, 0], [50, -60, 0]],
];

test.each(labelled)('%s: symmetric, finite and never negative', (_, formula) => {
  for (const [standard, trial] of [...special, ...farPairs(500, 20270), ...nearPairs(500, 20271, 0.3, 0.3)]) {
    const q = localMetric(formula, standard, trial);
    expect(q.every(Number.isFinite), `${standard} to ${trial}: ${q}`).toBe(true);
    expect([q[1], q[2], q[5]]).toEqual([q[3], q[6], q[7]]);
    expect(smallestMinor(q), `${standard} to ${trial}`).toBeGreaterThan(-1e-12);
  }
});
