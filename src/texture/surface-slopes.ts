import type { Micrometres, Millimetres } from '../quantities.ts';

/** Slopes along x and y of one row of a surface, dimensionless; NaN where they cannot be had. */
export interface SlopeRow {
  readonly along: Float64Array;
  readonly across: Float64Array;
}

export interface SlopeGrid {
  readonly width: number;
  readonly height: number;
  readonly values: Float64Array;
  readonly spacingMm: readonly [Millimetres, Millimetres];
}

/**
 * Derivative in the middle of seven points of spacing one, of sixth order, else of three; on the edge of the grid by the three points
 * inward. NaN where a neighbour is missing.
 */
function derivative(values: Float64Array, at: number, step: number, before: number, after: number): Micrometres {
  const room = Math.min(before, after);
  if (room >= 3) {
    const seven = (45 * (values[at + step] - values[at - step]) - 9 * (values[at + 2 * step] - values[at - 2 * step])
      + (values[at + 3 * step] - values[at - 3 * step])) / 60;
    if (!Number.isNaN(seven)) return seven;
  }
  if (room >= 1) return (values[at + step] - values[at - step]) / 2;
  const inward = after > before ? step : -step;
  if (Math.max(before, after) < 2) return NaN;
  return ((4 * values[at + inward] - 3 * values[at] - values[at + 2 * inward]) / 2) * (inward === step ? 1 : -1);
}

/**
 * Slopes of row y, by the seven-point formula; by three points near edges and missing points.
 *
 * Heights in micrometres. A point that is missing or has a missing neighbour on either axis has no slope; nor has a grid of fewer than
 * three points on an axis.
 * Source: ISO 25178-2 and ISO 21920-2, seven-point formula of local gradients.
 */
export function surfaceSlopes({ width, height, values, spacingMm }: SlopeGrid, y: number, row: SlopeRow): void {
  const perX = 1 / (1000 * spacingMm[0]);
  const perY = 1 / (1000 * spacingMm[1]);
  const { along, across } = row;
  const general = (x: number): void => {
    const at = y * width + x;
    const hole = Number.isNaN(values[at]);
    along[x] = hole ? NaN : derivative(values, at, 1, x, width - 1 - x) * perX;
    across[x] = hole ? NaN : derivative(values, at, width, y, height - 1 - y) * perY;
  };
  const inside = y >= 3 && y < height - 3 ? [Math.min(3, width), Math.max(Math.min(3, width), width - 3)] as const : [width, width] as const;
  for (let x = 0; x < inside[0]; x += 1) general(x);
  // The same seven points as in `derivative`, spelled out where all of them lie on the grid.
  for (let x = inside[0], at = y * width + x; x < inside[1]; x += 1, at += 1) {
    const slopeX = 45 * (values[at + 1] - values[at - 1]) - 9 * (values[at + 2] - values[at - 2]) + (values[at + 3] - values[at - 3]);
    const slopeY = 45 * (values[at + width] - values[at - width]) - 9 * (values[at + 2 * width] - values[at - 2 * width])
      + (values[at + 3 * width] - values[at - 3 * width]);
    along[x] = (slopeX / 60) * perX;
    across[x] = (slopeY / 60) * perY;
    if (Number.isNaN(slopeX + slopeY + values[at])) general(x);
  }
  for (let x = inside[1]; x < width; x += 1) general(x);
}
