import type { Millimetres } from '../quantities.ts';
import type { CoarseAxis } from './coarse-grid.ts';
import { coarseAxis, coarseColumns, coarseRows, fineGrid } from './coarse-grid.ts';
import { gaussianKernel, smoothColumns, smoothRows } from './gaussian-passes.ts';
import type { Steps } from './steps.ts';

/** Constant of the Gaussian filter: half of a wave of the cut-off's length passes. Source: ISO 16610-61. */
export const gaussianAlpha = Math.sqrt(Math.LN2 / Math.PI);

/** Share of a wave that the filter lets pass; wavelength and cut-off in one unit. Source: ISO 16610-61. */
export const gaussianTransmission = (wavelength: number, cutoff: number): number =>
  Math.exp(-Math.PI * (gaussianAlpha * (cutoff / wavelength)) ** 2);

/** Standard deviation in samples of the weighting function of a cut-off in samples. */
const deviationOf = (cutoff: number): number => (gaussianAlpha * cutoff) / Math.sqrt(2 * Math.PI);

/** Cut-offs longer than this many samples are smoothed on a coarser grid, whose own cut-off keeps at least half of it. */
const longCutoff = 24;

/**
 * Areal Gaussian filter: what passes, on the same grid; missing points stay missing.
 *
 * Cut-off (nesting index) above 0 and spacing in mm; separable. At edges and beside missing points the weighting function is cut off and
 * what is left of it is scaled to one, so that a constant surface stays as it is and a tilt is bent there: take the form off first.
 * The weighting function ends at one cut-off, where it has fallen to 7e-7. A cut-off of few samples is coarsely sampled: at 4 samples 0.502
 * of a wave of the cut-off passes instead of 0.5, at 3 already 0.56. Beyond 24 samples the surface is first smoothed by a smaller Gaussian
 * and sampled at a twelfth of the cut-off or finer, the rest of the filter is applied there (two Gaussians after each other are one), and
 * the result is interpolated; that changes no point by more than 3e-4 of the heights.
 * Source: ISO 16610-61 and ISO 16610-21; end effects: ISO 16610-28, zeroth moment retained.
 */
export function* gaussianFilterSteps(
  values: Float64Array, width: number, height: number, spacingMm: readonly [number, number], cutoffMm: Millimetres,
): Steps<Float64Array> {
  let missing = false;
  for (let index = 0; index < values.length && !missing; index += 1) missing = Number.isNaN(values[index]);
  const measured = missing ? values.map((value) => (Number.isNaN(value) ? 0 : value)) : values;
  yield 0.05;
  const across = filterAxis(width, cutoffMm / spacingMm[0]);
  const down = filterAxis(height, cutoffMm / spacingMm[1]);
  const smooth = yield* smoothed(measured, across, down, 0.05, missing ? 0.45 : 0.8);
  if (missing) {
    const weights = yield* smoothed(values.map((value) => (Number.isNaN(value) ? 0 : 1)), across, down, 0.45, 0.85);
    // Out of reach of any measured point there is nothing to scale and nothing that is asked for.
    for (let index = 0; index < smooth.length; index += 1) smooth[index] = weights[index] > 1e-12 ? smooth[index] / weights[index] : 0;
  } else {
    const [shareX, shareY] = [insideShare(across), insideShare(down)];
    const wide = shareX.length;
    for (let y = 0, index = 0; y < shareY.length; y += 1) for (let x = 0; x < wide; x += 1, index += 1) smooth[index] /= shareX[x] * shareY[y];
  }
  yield 0.9;
  const result = fineGrid(smooth, across.coarse, down.coarse);
  if (missing) for (let index = 0; index < values.length; index += 1) if (Number.isNaN(values[index])) result[index] = NaN;
  return result;
}

interface FilterAxis {
  readonly coarse: CoarseAxis;
  readonly kernel: Float64Array;
}

function filterAxis(count: number, cutoff: number): FilterAxis {
  const every = cutoff > longCutoff ? Math.floor(cutoff / (longCutoff / 2)) : 1;
  const coarse = coarseAxis(count, every);
  const deviation = Math.sqrt(deviationOf(cutoff) ** 2 - coarse.deviation ** 2) / every;
  return { coarse, kernel: gaussianKernel(deviation, Math.ceil(cutoff / every)) };
}

/** The filter without scaling: what lies beyond the edges counts as 0. The grid given is left as it is. */
function* smoothed(values: Float64Array, across: FilterAxis, down: FilterAxis, from: number, to: number): Steps<Float64Array> {
  const part = (share: number): number => from + (to - from) * share;
  const rows = coarseRows(values, across.coarse, down.coarse.count);
  yield part(0.3);
  const grid = coarseColumns(rows, across.coarse.points, down.coarse);
  yield part(0.4);
  smoothRows(grid, across.coarse.points, down.coarse.points, across.kernel);
  yield part(0.7);
  smoothColumns(grid, across.coarse.points, down.coarse.points, down.kernel);
  yield part(1);
  return grid;
}

/** How much of the weighting function lies on the grid, along one axis. */
function insideShare({ coarse, kernel }: FilterAxis): Float64Array {
  const line = coarseRows(new Float64Array(coarse.count).fill(1), coarse, 1);
  smoothRows(line, coarse.points, 1, kernel);
  return line;
}
