import { FourierPlan } from './fourier.ts';
import type { Steps } from './steps.ts';

/** Half of the transform of a real grid, frequencies 0 to width / 2 along x and all along y; the other half mirrors it. */
export interface HalfSpectrum {
  readonly width: number;
  readonly height: number;
  /** Frequencies along x that are kept: floor(width / 2) + 1. */
  readonly columns: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Transform of a real grid, rows of x after each other. */
export function* realSpectrumSteps(values: Float64Array, width: number, height: number): Steps<HalfSpectrum> {
  const columns = Math.floor(width / 2) + 1;
  const re = new Float64Array(columns * height);
  const im = new Float64Array(columns * height);
  const plan = new FourierPlan(width);
  const [rowRe, rowIm, roomRe, roomIm] = [0, 1, 2, 3].map(() => new Float64Array(width));
  for (let y = 0; y < height; y += 2) {
    // Two rows as the real and the imaginary part of one.
    rowRe.set(values.subarray(y * width, (y + 1) * width));
    if (y + 1 < height) rowIm.set(values.subarray((y + 1) * width, (y + 2) * width));
    else rowIm.fill(0);
    plan.transform(rowRe, rowIm, roomRe, roomIm, 1);
    const [first, second] = [y * columns, (y + 1) * columns];
    for (let k = 0; k < columns; k += 1) {
      const mirror = k === 0 ? 0 : width - k;
      re[first + k] = (rowRe[k] + rowRe[mirror]) / 2;
      im[first + k] = (rowIm[k] - rowIm[mirror]) / 2;
      if (y + 1 < height) {
        re[second + k] = (rowIm[k] + rowIm[mirror]) / 2;
        im[second + k] = (rowRe[mirror] - rowRe[k]) / 2;
      }
    }
    if (y % 512 === 0) yield (0.5 * y) / height;
  }
  yield 0.5;
  new FourierPlan(height).transform(re, im, new Float64Array(re.length), new Float64Array(re.length), columns);
  return { width, height, columns, re, im };
}

/** The real grid of a transform; uses the spectrum's own room and leaves it changed. */
export function* realGridSteps({ width, height, columns, re, im }: HalfSpectrum): Steps<Float64Array> {
  new FourierPlan(height).transform(im, re, new Float64Array(re.length), new Float64Array(re.length), columns);
  yield 0.5;
  const values = new Float64Array(width * height);
  const plan = new FourierPlan(width);
  const [rowRe, rowIm, roomRe, roomIm] = [0, 1, 2, 3].map(() => new Float64Array(width));
  const scale = 1 / (width * height);
  for (let y = 0; y < height; y += 2) {
    const [first, second] = [y * columns, Math.min(y + 1, height - 1) * columns];
    const paired = y + 1 < height ? 1 : 0;
    for (let k = 0; k < columns; k += 1) {
      const [ar, ai, br, bi] = [re[first + k], im[first + k], paired * re[second + k], paired * im[second + k]];
      rowRe[k] = ar - bi;
      rowIm[k] = ai + br;
      if (k > 0 && width - k >= columns) {
        rowRe[width - k] = ar + bi;
        rowIm[width - k] = br - ai;
      }
    }
    plan.transform(rowIm, rowRe, roomIm, roomRe, 1);
    for (let x = 0; x < width; x += 1) {
      values[y * width + x] = rowRe[x] * scale;
      if (paired) values[(y + 1) * width + x] = rowIm[x] * scale;
    }
    if (y % 512 === 0) yield 0.5 + (0.5 * y) / height;
  }
  return values;
}
