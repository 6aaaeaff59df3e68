import { gaussianKernel } from './gaussian-passes.ts';

/** One axis of a coarser grid: every so many points of the fine one, and some beyond both ends. */
export interface CoarseAxis {
  /** Points of the fine axis. */
  readonly count: number;
  readonly every: number;
  /** Points of the coarse axis. */
  readonly points: number;
  /** Coarse points that lie before the first fine one; as many at least lie behind the last. */
  readonly margin: number;
  /** Half of the kernel that smooths before sampling, and its standard deviation in fine points; 0 where every point is kept. */
  readonly kernel: Float64Array;
  readonly deviation: number;
}

/** Deviation of the smoothing before sampling, in coarse points: what would come back as a longer wave is below 2e-5. */
const smoothing = 0.8;
const margin = 4;

/** A coarse axis of every `every`-th point; with 1 the axis itself. */
export function coarseAxis(count: number, every: number): CoarseAxis {
  if (every === 1) return { count, every, points: count, margin: 0, kernel: new Float64Array([1]), deviation: 0 };
  const deviation = smoothing * every;
  return {
    count, every, points: Math.ceil((count - 1) / every) + 1 + 2 * margin, margin,
    kernel: gaussianKernel(deviation, margin * every), deviation,
  };
}

/** Smooths and samples along x; beyond the ends the grid counts as 0. A copy where nothing is to be done. */
export function coarseRows(values: Float64Array, axis: CoarseAxis, height: number): Float64Array {
  const { count, every, points, kernel } = axis;
  if (every === 1) return values.slice();
  const result = new Float64Array(points * height);
  const reach = kernel.length - 1;
  const edge = axis.margin * every + reach;
  const padded = new Float64Array((points - 1) * every + 1 + 2 * reach);
  for (let y = 0; y < height; y += 1) {
    padded.set(values.subarray(y * count, (y + 1) * count), edge);
    for (let point = 0; point < points; point += 1) {
      const middle = point * every + reach;
      let sum = kernel[0] * padded[middle];
      for (let step = 1; step <= reach; step += 1) sum += kernel[step] * (padded[middle - step] + padded[middle + step]);
      result[y * points + point] = sum;
    }
  }
  return result;
}

/** Smooths and samples along y. The grid itself where nothing is to be done. */
export function coarseColumns(values: Float64Array, width: number, axis: CoarseAxis): Float64Array {
  const { count, every, points, kernel } = axis;
  if (every === 1) return values;
  const result = new Float64Array(width * points);
  const reach = kernel.length - 1;
  for (let point = 0; point < points; point += 1) {
    const middle = (point - axis.margin) * every;
    const target = result.subarray(point * width, (point + 1) * width);
    for (let y = Math.max(0, middle - reach); y <= Math.min(count - 1, middle + reach); y += 1) {
      const weight = kernel[Math.abs(y - middle)];
      const row = y * width;
      for (let x = 0; x < width; x += 1) target[x] += weight * values[row + x];
    }
  }
  return result;
}

const nodes = 6;

/** Where the points of a fine axis lie among the coarse ones, with Lagrange's weights of the six nearest. */
function places({ count, every, margin }: CoarseAxis): { readonly first: Int32Array; readonly weights: Float64Array } {
  const first = new Int32Array(count);
  const weights = new Float64Array(nodes * count);
  for (let index = 0; index < count; index += 1) {
    const at = index / every + margin;
    first[index] = Math.floor(at) - 2;
    for (let node = 0; node < nodes; node += 1) {
      let weight = 1;
      for (let other = 0; other < nodes; other += 1) if (other !== node) weight *= (at - first[index] - other) / (node - other);
      weights[nodes * index + node] = weight;
    }
  }
  return { first, weights };
}

/** A smooth coarse grid brought back to the fine one by polynomials of fifth degree along each axis that was made coarser. */
export function fineGrid(coarse: Float64Array, across: CoarseAxis, down: CoarseAxis): Float64Array {
  if (across.every === 1 && down.every === 1) return coarse;
  const width = across.count;
  const wide = across.points;
  const result = new Float64Array(width * down.count);
  const horizontal = places(across);
  const vertical = places(down);
  const line = new Float64Array(wide);
  for (let y = 0; y < down.count; y += 1) {
    if (down.every === 1) line.set(coarse.subarray(y * wide, (y + 1) * wide));
    else {
      line.fill(0);
      for (let node = 0; node < nodes; node += 1) {
        const weight = vertical.weights[nodes * y + node];
        const row = (vertical.first[y] + node) * wide;
        for (let x = 0; x < wide; x += 1) line[x] += weight * coarse[row + x];
      }
    }
    const target = y * width;
    if (across.every === 1) result.set(line, target);
    else {
      const { first, weights } = horizontal;
      for (let x = 0; x < width; x += 1) {
        const at = first[x];
        const w = nodes * x;
        result[target + x] = weights[w] * line[at] + weights[w + 1] * line[at + 1] + weights[w + 2] * line[at + 2]
          + weights[w + 3] * line[at + 3] + weights[w + 4] * line[at + 4] + weights[w + 5] * line[at + 5];
      }
    }
  }
  return result;
}
