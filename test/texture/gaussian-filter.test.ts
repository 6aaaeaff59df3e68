import { expect, test } from 'vitest';
import { gaussianFilterSteps, gaussianTransmission, runSteps } from '../../src/texture/index.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

const [width, height] = [150, 110];

/** The weighting function of ISO 16610-61 summed point by point, missing points and what lies beyond the edges left out. */
function bySum(values: Float64Array, cutoff: number): Float64Array {
  const alpha = Math.sqrt(Math.LN2 / Math.PI);
  const weight = (distance: number): number => Math.exp(-Math.PI * (distance / (alpha * cutoff)) ** 2);
  const weights = Array.from({ length: Math.max(width, height) }, (_, distance) => weight(distance));
  const along = (source: Float64Array): Float64Array => {
    const middle = new Float64Array(source.length);
    const result = new Float64Array(source.length);
    for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) {
      for (let u = 0; u < width; u += 1) middle[y * width + x] += weights[Math.abs(u - x)]! * source[y * width + u]!;
    }
    for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) {
      for (let v = 0; v < height; v += 1) result[y * width + x] += weights[Math.abs(v - y)]! * middle[v * width + x]!;
    }
    return result;
  };
  const sums = along(values.map((value) => (Number.isNaN(value) ? 0 : value)));
  const shares = along(values.map((value) => (Number.isNaN(value) ? 0 : 1)));
  return values.map((value, index) => (Number.isNaN(value) ? NaN : sums[index]! / shares[index]!));
}

test.each([
  [5, false], [20, false], [30, false], [60, false], [200, false], [5, true], [40, true], [90, true],
] as const)('cut-off of %i points, missing points %s: as summed', (cutoff, missing) => {
  const random = seededNumbers(cutoff);
  const values = Float64Array.from({ length: width * height }, (_, index) =>
    (missing && random() < 0.1 ? NaN : random() + Math.sin((index % width) / 7) + 0.01 * (index % width)));
  const ours = runSteps(gaussianFilterSteps(values, width, height, [1, 1], cutoff));
  const expected = bySum(values, cutoff);
  // Heights span about 3.5; the coarse way may be off by 3e-4 of them.
  const allowed = cutoff <= 24 ? 1e-6 : 3e-4 * 3.5;
  expected.forEach((value, index) => {
    if (Number.isNaN(value)) expect(ours[index]).toBeNaN();
    else if (Math.abs(ours[index]! - value) > allowed) throw new Error(`${index}: ${ours[index]} for ${value}`);
  });
});

test('half of a wave of the cut-off passes, a sixteenth of one half as long', () => {
  // ISO 16610-61: exp(-pi (alpha cutoff / wavelength)^2), which is 2^-1 and 2^-4.
  expect(gaussianTransmission(1, 1)).toBeCloseTo(0.5, 12);
  expect(gaussianTransmission(0.5, 1)).toBeCloseTo(1 / 16, 12);
  for (const [wavelength, share] of [[40, 0.5], [20, 1 / 16], [80, 2 ** -0.25]] as const) {
    const values = Float64Array.from({ length: 400 * 40 }, (_, index) => Math.sin((2 * Math.PI * ((index % 400) - 200)) / wavelength));
    const smooth = runSteps(gaussianFilterSteps(values, 400, 40, [0.01, 0.01], 0.4));
    const crest = 20 * 400 + 200 + wavelength / 4;
    expect(smooth[crest]).toBeCloseTo(share, 3);
  }
});

test('spacings of the axes are their own', () => {
  const values = Float64Array.from({ length: 200 * 200 }, (_, index) => Math.sin((2 * Math.PI * ((index % 200) - 100)) / 20)
    + Math.sin((2 * Math.PI * (Math.floor(index / 200) - 100)) / 20));
  const smooth = runSteps(gaussianFilterSteps(values, 200, 200, [0.01, 0.02], 0.2));
  // Along x the wave is 0.2 mm long, along y 0.4 mm.
  expect(smooth[100 * 200 + 105]).toBeCloseTo(0.5, 3);
  expect(smooth[105 * 200 + 100]).toBeCloseTo(2 ** -0.25, 3);
});

test('a constant stays as it is, edges and holes included, and the input is left alone', () => {
  const values = Float64Array.from({ length: 90 * 90 }, (_, index) => (index % 13 === 0 ? NaN : 7.25));
  const before = values.slice();
  for (const cutoff of [4, 17, 45, 500]) {
    const smooth = runSteps(gaussianFilterSteps(values, 90, 90, [1, 1], cutoff));
    smooth.forEach((value, index) => {
      if (Number.isNaN(values[index])) expect(value).toBeNaN();
      else expect(Math.abs(value - 7.25)).toBeLessThan(1e-9);
    });
  }
  expect(values).toEqual(before);
});
