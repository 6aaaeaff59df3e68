import type { HalfSpectrum } from './real-spectrum.ts';
import { realGridSteps, realSpectrumSteps } from './real-spectrum.ts';
import type { SampledField } from './sampled-field.ts';
import type { Steps } from './steps.ts';
import { partOfSteps } from './steps.ts';

/** Autocorrelation, 1 at lag 0, lags along x and y from 0 up to the size and from there back to -1. */
export interface Autocorrelation {
  readonly width: number;
  readonly height: number;
  readonly spacingMm: readonly [number, number];
  readonly values: Float64Array;
}

function toPower({ re, im }: HalfSpectrum): void {
  for (let index = 0; index < re.length; index += 1) {
    re[index] = re[index] * re[index] + im[index] * im[index];
    im[index] = 0;
  }
}

/**
 * Normalised autocorrelation by way of the power spectrum; undefined for a field without heights.
 *
 * The field is taken to repeat at its edges: exact for whole periods; otherwise a lag t is too low by a share of about t / size.
 * With missing points each lag is averaged over the pairs of points that are both measured.
 * Source: ISO 25178-2, autocorrelation function; theorem of Wiener and Khinchin.
 */
export function* autocorrelationSteps({ width, height, spacingMm, values, mask }: SampledField): Steps<Autocorrelation | undefined> {
  const share = mask === undefined ? 1 : 0.5;
  const heights = yield* correlate(values, width, height, 0, share);
  if (mask !== undefined) {
    const pairs = yield* correlate(mask, width, height, share, 1);
    for (let index = 0; index < heights.length; index += 1) heights[index] = pairs[index] > 0.5 ? heights[index] / pairs[index] : 0;
  }
  const variance = heights[0];
  if (!(variance > 0)) return undefined;
  for (let index = 0; index < heights.length; index += 1) heights[index] /= variance;
  return { width, height, spacingMm, values: heights };
}

function* correlate(values: Float64Array, width: number, height: number, from: number, to: number): Steps<Float64Array> {
  const middle = (from + to) / 2;
  const spectrum = yield* partOfSteps(realSpectrumSteps(values, width, height), from, middle);
  toPower(spectrum);
  return yield* partOfSteps(realGridSteps(spectrum), middle, to);
}

/** The autocorrelation at any lag, in samples, by cubics along both axes. */
export function correlationAt({ width, height, values }: Autocorrelation, lagX: number, lagY: number): number {
  const left = Math.floor(lagX) - 1;
  const top = Math.floor(lagY) - 1;
  const across = cubicWeights(lagX - left - 1);
  const down = cubicWeights(lagY - top - 1);
  let sum = 0;
  for (let row = 0; row < 4; row += 1) {
    const start = wrapped(top + row, height) * width;
    let line = 0;
    for (let column = 0; column < 4; column += 1) line += across[column] * values[start + wrapped(left + column, width)];
    sum += down[row] * line;
  }
  return sum;
}

const wrapped = (index: number, size: number): number => ((index % size) + size) % size;

/** Lagrange's weights of four points at -1, 0, 1, 2 for a place t between 0 and 1. */
const cubicWeights = (t: number): readonly [number, number, number, number] => [
  (t * (t - 1) * (t - 2)) / -6, ((t + 1) * (t - 1) * (t - 2)) / 2, ((t + 1) * t * (t - 2)) / -2, ((t + 1) * t * (t - 1)) / 6,
];
