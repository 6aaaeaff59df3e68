import type { Micrometres, Millimetres } from '../quantities.ts';

/** A rectangular grid of numbers, rows of x after each other; a value that is not a number is missing. */
export interface Grid {
  readonly width: number;
  readonly height: number;
  readonly values: Float64Array | Float32Array;
}

/** Heights of a surface on an even grid, in micrometres; NaN where nothing was measured. */
export interface HeightMap extends Grid {
  /** Distance of neighbouring points along x and along y. */
  readonly spacingMm: readonly [x: Millimetres, y: Millimetres];
  /** How many points are missing. */
  readonly missing: number;
}

/** Points that are not measured. */
export function countMissing(values: ArrayLike<number>): number {
  let missing = 0;
  for (let index = 0; index < values.length; index += 1) if (!Number.isFinite(values[index])) missing += 1;
  return missing;
}

/**
 * A height map from a grid; infinite heights count as missing.
 *
 * Throws where the grid has not `width` x `height` values or a spacing is not above 0: readers check that before.
 */
export function heightMap(
  width: number, height: number, spacingMm: readonly [Millimetres, Millimetres], heightsUm: Float64Array | Float32Array,
): HeightMap {
  if (heightsUm.length !== width * height) throw new RangeError(`${heightsUm.length} heights for ${width} x ${height} points`);
  if (!spacingMm.every((spacing) => spacing > 0 && spacing < Infinity)) throw new RangeError(`spacing ${spacingMm.join(', ')} mm`);
  for (let index = 0; index < heightsUm.length; index += 1) if (!Number.isFinite(heightsUm[index])) heightsUm[index] = NaN;
  return { width, height, spacingMm, values: heightsUm, missing: countMissing(heightsUm) };
}

/** 1 where a height was measured, 0 where it is missing. */
export const measuredMask = ({ values }: Grid): Uint8Array => Uint8Array.from(values, (value: Micrometres) => (Number.isNaN(value) ? 0 : 1));
