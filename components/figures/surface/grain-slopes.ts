import type { HeightMap, UnitGrain } from '../../../src/texture/index.ts';

/** Slopes of a grain, ready to be looked up: along x and along y by turns, rows after each other. */
export interface GrainSlopes {
  readonly width: number;
  readonly height: number;
  readonly slopes: Float32Array<ArrayBuffer>;
  /** Beyond its edges the grain goes on as its mirror image, since it was measured; a made one repeats. */
  readonly mirrored: boolean;
  /** Mean of the squares along both axes together, in the unit of the slopes. */
  readonly meanSquare: number;
  /** Distance of neighbouring points: mm, or the share of Sal for a made grain of Sal 1. */
  readonly spacing: readonly [number, number];
}

/** Largest part of a measured map that is shown, points on a side. */
const mostPoints = 2048;

/** Slopes of a grain of Sa 1 and Sal 1. */
export const unitSlopes = ({ width, height, values, salPoints }: UnitGrain): GrainSlopes =>
  slopesOf({ width, height, values, offset: 0, stride: width, spacing: [1 / salPoints, 1 / salPoints], unit: salPoints, mirrored: false });

/** Slopes of the middle of a height map, rise over run; 0 where a neighbour is missing. */
export function mapSlopes({ width, height, values, spacingMm }: HeightMap): GrainSlopes {
  const [wide, high] = [Math.min(width, mostPoints), Math.min(height, mostPoints)];
  const offset = Math.floor((height - high) / 2) * width + Math.floor((width - wide) / 2);
  return slopesOf({ width: wide, height: high, values, offset, stride: width, spacing: spacingMm, unit: 1e-3, mirrored: true });
}

interface Heights {
  readonly width: number;
  readonly height: number;
  readonly values: ArrayLike<number>;
  readonly offset: number;
  readonly stride: number;
  readonly spacing: readonly [number, number];
  /** Of a height, in the unit of the spacing; for a unit grain the points in Sal, whose spacing is 1 / points. */
  readonly unit: number;
  readonly mirrored: boolean;
}

function slopesOf({ width, height, values, offset, stride, spacing, unit, mirrored }: Heights): GrainSlopes {
  const slopes = new Float32Array(2 * width * height);
  const scale = mirrored ? [unit / spacing[0] / 2, unit / spacing[1] / 2] : [unit / 2, unit / 2];
  const neighbour = (index: number, by: number, size: number): number =>
    (mirrored ? Math.min(size - 1, Math.max(0, index + by)) : (index + by + size) % size);
  let sum = 0;
  for (let y = 0; y < height; y += 1) {
    const [above, row, below] = [neighbour(y, -1, height), y, neighbour(y, 1, height)].map((line) => offset + line * stride);
    for (let x = 0; x < width; x += 1) {
      const along = (values[row + neighbour(x, 1, width)] - values[row + neighbour(x, -1, width)]) * scale[0];
      const down = (values[below + x] - values[above + x]) * scale[1];
      const at = 2 * (y * width + x);
      slopes[at] = Number.isFinite(along) ? along : 0;
      slopes[at + 1] = Number.isFinite(down) ? down : 0;
      sum += slopes[at] ** 2 + slopes[at + 1] ** 2;
    }
  }
  return { width, height, slopes, mirrored, meanSquare: sum / (width * height), spacing };
}
