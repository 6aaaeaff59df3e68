import type { Micrometres } from '../quantities.ts';

export interface HeightParameters {
  readonly saUm: Micrometres;
  readonly sqUm: Micrometres;
  /** Undefined for a surface without any height. */
  readonly ssk: number | undefined;
  readonly sku: number | undefined;
  readonly spUm: Micrometres;
  readonly svUm: Micrometres;
  readonly szUm: Micrometres;
}

/** Heights below this, relative to the largest that went in, are rounding and count as none. */
const rounding = 1e-12;

/** Terms that are summed before their sum is added to the rest, so that millions of them lose no digits. */
const run = 4096;

/** Mean of the measured heights; NaN where there is none. */
export function meanHeight(values: Float64Array): number {
  let [total, count] = [0, 0];
  for (let start = 0; start < values.length; start += run) {
    let sum = 0;
    const end = Math.min(values.length, start + run);
    for (let index = start; index < end; index += 1) {
      const value = values[index];
      if (Number.isNaN(value)) continue;
      sum += value;
      count += 1;
    }
    total += sum;
  }
  return total / count;
}

/**
 * Sa, Sq, Ssk, Sku, Sp, Sv, Sz of a scale-limited surface over its measured points, about their mean.
 *
 * Heights in micrometres, NaN where missing; Sv is a depth, above 0. Undefined without a measured point.
 * Source: ISO 25178-2, height parameters.
 */
export function heightParameters(values: Float64Array, largestIn = Infinity): HeightParameters | undefined {
  const mean = meanHeight(values);
  if (Number.isNaN(mean)) return undefined;
  let absolute = 0;
  let second = 0;
  let third = 0;
  let fourth = 0;
  let count = 0;
  let top = -Infinity;
  let bottom = Infinity;
  for (let start = 0; start < values.length; start += run) {
    let runAbsolute = 0;
    let runSecond = 0;
    let runThird = 0;
    let runFourth = 0;
    const end = Math.min(values.length, start + run);
    for (let index = start; index < end; index += 1) {
      const z = values[index] - mean;
      if (Number.isNaN(z)) continue;
      const square = z * z;
      count += 1;
      runAbsolute += Math.abs(z);
      runSecond += square;
      runThird += square * z;
      runFourth += square * square;
      if (z > top) top = z;
      if (z < bottom) bottom = z;
    }
    absolute += runAbsolute;
    second += runSecond;
    third += runThird;
    fourth += runFourth;
  }
  const sq = Math.sqrt(second / count);
  const flat = !(sq > (Number.isFinite(largestIn) ? rounding * largestIn : 0));
  return {
    saUm: absolute / count, sqUm: sq,
    ssk: flat ? undefined : third / count / sq ** 3,
    sku: flat ? undefined : fourth / count / sq ** 4,
    spUm: top, svUm: -bottom, szUm: top - bottom,
  };
}
