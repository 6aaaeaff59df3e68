import { realSpectrumSteps } from './real-spectrum.ts';
import type { Steps } from './steps.ts';

/** One frequency of a field: its share of the variance, both signs of it together. */
export type PowerVisitor = (perMmX: number, perMmY: number, power: number) => void;

const hann = (size: number): Float64Array => Float64Array.from({ length: size }, (_, index) => Math.sin((Math.PI * (index + 0.5)) / size) ** 2);

/**
 * Power spectrum under a Hann window, visited frequency by frequency but for zero; all shares sum to the mean square of the field.
 *
 * Values about their mean; spacing in mm; frequencies in cycles a millimetre, y from minus to plus, x from 0. The window keeps what
 * does not fit the field a whole number of times from spreading; it spreads a single frequency over its neighbours.
 * Source: P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70.
 */
export function* powerSpectrumSteps(
  values: Float64Array, width: number, height: number, spacingMm: readonly [number, number], visit: PowerVisitor,
): Steps<void> {
  const [across, down] = [hann(width), hann(height)];
  const windowed = new Float64Array(values.length);
  let [sum, weight, squares] = [0, 0, 0];
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const share = across[x] * down[y];
      sum += values[y * width + x] * share;
      weight += share;
      squares += share * share;
    }
  }
  const mean = sum / weight;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) windowed[y * width + x] = (values[y * width + x] - mean) * across[x] * down[y];
  }
  const { columns, re, im } = yield* realSpectrumSteps(windowed, width, height);
  const scale = 1 / (squares * width * height);
  for (let row = 0; row < height; row += 1) {
    const perMmY = (row <= height / 2 ? row : row - height) / (height * spacingMm[1]);
    for (let column = 0; column < columns; column += 1) {
      if (row === 0 && column === 0) continue;
      const at = row * columns + column;
      // The columns between the first and the Nyquist frequency stand for their mirror images too.
      const twice = column === 0 || 2 * column === width ? 1 : 2;
      visit(column / (width * spacingMm[0]), perMmY, twice * scale * (re[at] * re[at] + im[at] * im[at]));
    }
  }
}
