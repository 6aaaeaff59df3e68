import { expect, test } from 'vitest';
import { FourierPlan, quickLength } from '../../src/texture/fourier.ts';
import { realGridSteps, realSpectrumSteps } from '../../src/texture/real-spectrum.ts';
import { powerSpectrumSteps } from '../../src/texture/power-spectrum.ts';
import { runSteps } from '../../src/texture/steps.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

/** The sum itself, term by term. */
function slow(re: readonly number[], im: readonly number[]): { re: number; im: number }[] {
  return re.map((_, k) => {
    const sum = { re: 0, im: 0 };
    re.forEach((value, j) => {
      const turn = (-2 * Math.PI * ((j * k) % re.length)) / re.length;
      sum.re += value * Math.cos(turn) - im[j]! * Math.sin(turn);
      sum.im += value * Math.sin(turn) + im[j]! * Math.cos(turn);
    });
    return sum;
  });
}

test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 12, 15, 16, 20, 25, 29, 30, 31, 49, 60, 64, 77, 125])('length %i equals the sum', (length) => {
  const random = seededNumbers(length);
  const lanes = 3;
  const re = Float64Array.from({ length: length * lanes }, () => random() - 0.5);
  const im = Float64Array.from({ length: length * lanes }, () => random() - 0.5);
  const expected = Array.from({ length: lanes }, (_, lane) => {
    const pick = (values: Float64Array): number[] => Array.from({ length }, (_, k) => values[k * lanes + lane]!);
    return slow(pick(re), pick(im));
  });
  new FourierPlan(length).transform(re, im, new Float64Array(re.length), new Float64Array(re.length), lanes);
  expected.forEach((line, lane) => line.forEach((value, k) => {
    expect(re[k * lanes + lane]).toBeCloseTo(value.re, 10);
    expect(im[k * lanes + lane]).toBeCloseTo(value.im, 10);
  }));
});

test.each([[6, 5], [7, 8], [1, 4], [4, 1], [9, 9], [64, 30]])('a grid of %i x %i comes back from its spectrum', (width, height) => {
  const random = seededNumbers(3);
  const values = Float64Array.from({ length: width * height }, () => random());
  const spectrum = runSteps(realSpectrumSteps(values, width, height));
  // Parseval: the energy of the frequencies is that of the points.
  let energy = 0;
  spectrum.re.forEach((re, index) => {
    const column = index % spectrum.columns;
    energy += (column === 0 || 2 * column === width ? 1 : 2) * (re ** 2 + spectrum.im[index]! ** 2);
  });
  expect(energy / values.length).toBeCloseTo(values.reduce((sum, value) => sum + value * value, 0), 9);
  const back = runSteps(realGridSteps(spectrum));
  values.forEach((value, index) => expect(back[index]).toBeCloseTo(value, 12));
});

test('quick lengths are not far below', () => {
  expect(quickLength(512)).toBe(512);
  expect(quickLength(4000, 1024)).toBe(1024);
  for (let length = 33; length < 1100; length += 1) {
    const quick = quickLength(length);
    expect(quick).toBeLessThanOrEqual(length);
    expect(quick / length).toBeGreaterThanOrEqual(15 / 16);
  }
});

test('the power of a sine is half the square of its amplitude and lies at its frequency', () => {
  const [width, height] = [128, 96];
  const values = Float64Array.from({ length: width * height }, (_, index) => 3 * Math.sin((2 * Math.PI * 10 * (index % width)) / width));
  let [total, moment] = [0, 0];
  runSteps(powerSpectrumSteps(values, width, height, [0.5, 0.5], (perMmX, perMmY, power) => {
    total += power;
    moment += power * Math.hypot(perMmX, perMmY);
  }));
  expect(total).toBeCloseTo(4.5, 2);
  // 10 waves on 128 points of 0.5 mm; the window spreads the line over its neighbours on both axes.
  expect(moment / total).toBeCloseTo(10 / 64, 2);
});
