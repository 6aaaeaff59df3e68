import { realGridSteps, realSpectrumSteps } from './real-spectrum.ts';
import { seededUniform } from './seeded-noise.ts';
import type { Steps } from './steps.ts';
import { partOfSteps } from './steps.ts';
import { correlationThreshold } from './spatial-parameters.ts';

export interface CorrelatedField {
  readonly width: number;
  readonly height: number;
  /** Points over which the autocorrelation falls to 0.2 along y, where it falls fastest, and along x. */
  readonly fastest: number;
  readonly slowest: number;
  readonly seed: number;
}

/**
 * A random field that repeats at its edges, with the autocorrelation exp(-(x/a)^2 - (y/b)^2) and mean square 1; the lay runs along x.
 *
 * Noise from the seed is given the wanted power spectrum frequency by frequency and keeps its phases alone, so that the
 * autocorrelation of this very field is the wanted one, not only that of the mean over many. Heights are near normally distributed.
 * The form is exact for fields of many lengths; a spectrum that the grid cannot hold is cut at 0. Source: theorem of Wiener and Khinchin.
 */
export function* correlatedFieldSteps({ width, height, fastest, slowest, seed }: CorrelatedField): Steps<Float64Array> {
  const random = seededUniform(seed);
  const noise = Float64Array.from({ length: width * height }, () => random() - 0.5);
  const phases = yield* partOfSteps(realSpectrumSteps(noise, width, height), 0, 0.4);
  const wanted = yield* partOfSteps(realSpectrumSteps(wrappedCorrelation(width, height, slowest, fastest), width, height), 0.4, 0.7);
  for (let index = 0; index < phases.re.length; index += 1) {
    const size = Math.hypot(phases.re[index], phases.im[index]);
    const share = size > 0 ? Math.sqrt(Math.max(0, wanted.re[index]) * width * height) / size : 0;
    phases.re[index] *= share;
    phases.im[index] *= share;
  }
  // No mean height.
  phases.re[0] = 0;
  phases.im[0] = 0;
  return yield* partOfSteps(realGridSteps(phases), 0.7, 1);
}

function wrappedCorrelation(width: number, height: number, alongX: number, alongY: number): Float64Array {
  const decay = -Math.log(correlationThreshold);
  const profile = (size: number, length: number): Float64Array => Float64Array.from({ length: size }, (_, index) =>
    Math.exp(-decay * (Math.min(index, size - index) / length) ** 2));
  const [across, down] = [profile(width, alongX), profile(height, alongY)];
  return Float64Array.from({ length: width * height }, (_, index) => across[index % width] * down[Math.floor(index / width)]);
}
