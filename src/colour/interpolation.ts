import type { Nanometres } from '../quantities.ts';
import type { Spectrum } from './spectrum.ts';
import { visibleCount, visibleStartNm } from './spectrum.ts';

/** A value as a weighted sum of neighbours: `coefficients[k]` belongs to `values[first + k]`. */
export interface Interpolant {
  readonly first: number;
  readonly coefficients: readonly number[];
}

/** Rows: powers 0..5 of the position in the interval; columns: the points -2..3 around it; all over 24. */
const spragueInner = [
  [0, 0, 24, 0, 0, 0],
  [2, -16, 0, 16, -2, 0],
  [-1, 16, -30, 16, -1, 0],
  [-9, 39, -70, 66, -33, 7],
  [13, -64, 126, -124, 61, -12],
  [-5, 25, -50, 50, -25, 5],
];
/** The two points before the first, nearest last, from the first six points; all over 209. */
const spragueOuter = [
  [884, -1960, 3033, -2648, 1080, -180],
  [508, -540, 488, -367, 144, -24],
];
const spragueWidth = 6;

/** Folds the two made-up points of each end into the six real ones there, which the window then starts at. */
function foldEnds(window: readonly number[], start: number, count: number): Interpolant {
  const first = Math.min(Math.max(start, 0), count - spragueWidth);
  const coefficients = Array.from({ length: spragueWidth }, () => 0);
  window.forEach((coefficient, k) => {
    const index = start + k;
    if (index >= 0 && index < count) {
      coefficients[index - first] += coefficient;
      return;
    }
    const outside = index < 0 ? index + 2 : count + 1 - index;
    spragueOuter[outside].forEach((weight, j) => {
      coefficients[index < 0 ? j : spragueWidth - 1 - j] += (coefficient * weight) / 209;
    });
  });
  return { first, coefficients };
}

/**
 * The coefficients that give the value of an evenly spaced table of `count` points at a wavelength.
 *
 * Six points or more: Sprague's fifth-order polynomial with its own points beyond the ends. Two to five points: straight lines.
 * Outside the table the end value is held. The coefficients sum to 1.
 * Source: CIE 167:2005 (Sprague); ASTM E308-15 and CIE 015:2018, 7.2.4 (holding the end value).
 */
export function interpolant(startNm: Nanometres, stepNm: Nanometres, count: number, wavelength: Nanometres): Interpolant {
  const position = (wavelength - startNm) / stepNm;
  if (position <= 0) return { first: 0, coefficients: [1] };
  if (position >= count - 1) return { first: count - 1, coefficients: [1] };
  const left = Math.floor(position);
  const t = position - left;
  if (t === 0) return { first: left, coefficients: [1] };
  if (count < spragueWidth) return { first: left, coefficients: [1 - t, t] };
  const window = spragueInner[0].map((_, k) => {
    let sum = 0;
    for (let power = 5; power >= 0; power -= 1) sum = sum * t + spragueInner[power][k];
    return sum / 24;
  });
  return foldEnds(window, left - 2, count);
}

const visible = new Map<string, readonly Interpolant[]>();

/** The interpolants of a grid at every nanometre from 360 nm to 780 nm; made once for a grid. */
export function visibleInterpolants(startNm: Nanometres, stepNm: Nanometres, count: number): readonly Interpolant[] {
  const key = `${startNm} ${stepNm} ${count}`;
  const known = visible.get(key);
  if (known) return known;
  const made = Array.from({ length: visibleCount }, (_, i) => interpolant(startNm, stepNm, count, visibleStartNm + i));
  visible.set(key, made);
  return made;
}

/** The weighted sum itself. */
export function interpolate(values: ArrayLike<number>, at: Interpolant): number {
  let sum = 0;
  for (let k = 0; k < at.coefficients.length; k += 1) sum += at.coefficients[k] * values[at.first + k];
  return sum;
}

/**
 * A spectrum at other evenly spaced wavelengths, by {@link interpolant}; end values are held beyond the data.
 *
 * Bringing a spectrum to a coarser grid samples it and does not smooth it.
 */
export function resampleSpectrum(spectrum: Spectrum, startNm: Nanometres, stepNm: Nanometres, count: number): Spectrum {
  const size = spectrum.values.length;
  const visibleGrid = startNm === visibleStartNm && stepNm === 1 && count === visibleCount ? visibleInterpolants(spectrum.startNm, spectrum.stepNm, size) : undefined;
  const values = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    values[i] = interpolate(spectrum.values, visibleGrid?.[i] ?? interpolant(spectrum.startNm, spectrum.stepNm, size, startNm + i * stepNm));
  }
  return { startNm, stepNm, values };
}
