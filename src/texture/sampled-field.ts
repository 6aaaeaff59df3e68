import type { Millimetres } from '../quantities.ts';
import { quickLength } from './fourier.ts';

/** A part of a surface for transforms: about its mean, 0 where missing. */
export interface SampledField {
  readonly width: number;
  readonly height: number;
  readonly spacingMm: readonly [Millimetres, Millimetres];
  readonly values: Float64Array;
  /** 1 where measured; absent where all is. */
  readonly mask: Float64Array | undefined;
}

/** A surface whose missing points are NaN. */
export interface Surface {
  readonly width: number;
  readonly height: number;
  readonly spacingMm: readonly [Millimetres, Millimetres];
  readonly values: Float64Array;
}

/**
 * Every `every`-th point of the middle of a surface, at most `most` on each axis, of lengths that are quickly transformed
 * (at most a sixteenth of the field is left out for that).
 */
export function sampledField({ width, height, spacingMm, values }: Surface, every: number, most: number): SampledField {
  const wide = quickLength(Math.ceil(width / every), most);
  const high = quickLength(Math.ceil(height / every), most);
  const left = Math.floor((width - 1 - (wide - 1) * every) / 2);
  const top = Math.floor((height - 1 - (high - 1) * every) / 2);
  const field = new Float64Array(wide * high);
  let [sum, count] = [0, 0];
  for (let y = 0; y < high; y += 1) {
    const source = (top + y * every) * width + left;
    for (let x = 0; x < wide; x += 1) {
      const value = values[source + x * every];
      field[y * wide + x] = value;
      if (Number.isNaN(value)) continue;
      sum += value;
      count += 1;
    }
  }
  const mean = sum / count;
  const mask = count === field.length ? undefined : field.map((value) => (Number.isNaN(value) ? 0 : 1));
  for (let index = 0; index < field.length; index += 1) field[index] = Number.isNaN(field[index]) ? 0 : field[index] - mean;
  return { width: wide, height: high, spacingMm: [spacingMm[0] * every, spacingMm[1] * every], values: field, mask };
}
