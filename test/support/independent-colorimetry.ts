/**
 * Colorimetry by other algorithms than the program's, straight from the published CSV files: no matrix of weights is formed,
 * every spectrum is carried to 1 nm and summed there.
 */
import { lusolve } from 'mathjs';
import { numbersOf, referenceTable } from './reference-table.ts';

const observers = referenceTable('cie-11664-1/cie-observers-1nm.csv');
const lights = referenceTable('cie-015/cie-illuminants-1nm.csv');
const nanometres = Array.from({ length: 421 }, (_, i) => 360 + i);

/** Names of the lights of `cie-illuminants-1nm.csv`. */
export const tabulatedLights = lights.columns.slice(1);

/** A light of the derived 1 nm table, 6 decimals, 360 nm to 780 nm. */
export const lightAt1nm = (name: string): number[] => numbersOf(lights, name);

/** Colour-matching functions, 360 nm to 830 nm. */
export const matchingAt1nm = (observer: number): number[][] => ['x', 'y', 'z'].map((axis) => numbersOf(observers, `${axis}${observer}`));

/** The polynomial through points, at one position, by Neville's scheme. */
export function neville(nodes: readonly number[], values: readonly number[], at: number): number {
  const p = [...values];
  for (let width = 1; width < p.length; width += 1) {
    for (let i = 0; i + width < p.length; i += 1) {
      p[i] = ((at - nodes[i + width]!) * p[i]! + (nodes[i]! - at) * p[i + 1]!) / (nodes[i]! - nodes[i + width]!);
    }
  }
  return p[0]!;
}

/** ASTM E2022 read as interpolation: cubic inside, quadratic in the first and the last interval of the grid 360, 360 + step, .. . */
export function lagrangeAt(values: readonly number[], stepNm: number, wavelength: number): number {
  const last = values.length - 1;
  const interval = Math.min(Math.floor((wavelength - 360) / stepNm), last - 1);
  const from = interval === 0 ? 0 : interval - 1;
  const to = interval === 0 || interval === last - 1 ? from + 2 : from + 3;
  const picked = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  return neville(picked.map((i) => 360 + i * stepNm), picked.map((i) => values[i]!), wavelength);
}

/** First and second derivative, per step, of the quartic through five points in its middle. */
const slopes = ([a, b, , d, e]: readonly number[]): number => (a! - 8 * b! + 8 * d! - e!) / 12;
const bends = ([a, b, c, d, e]: readonly number[]): number => (-a! + 16 * b! - 30 * c! + 16 * d! - e!) / 12;

/** Two values before the first: CIE 167:2005, boundary points of the Sprague interpolation. */
function boundary(y: readonly number[]): number[] {
  const rows = [[884, -1960, 3033, -2648, 1080, -180], [508, -540, 488, -367, 144, -24]];
  return rows.map((row) => row.reduce((sum, weight, i) => sum + weight * y[i]!, 0) / 209);
}

/**
 * Sprague interpolation as a Hermite problem: the quintic that has value, slope and bend of the local quartics at both ends of the interval,
 * found by solving six linear equations. End values held outside.
 */
export function spragueAt(values: readonly number[], startNm: number, stepNm: number, wavelength: number): number {
  const position = (wavelength - startNm) / stepNm;
  if (position <= 0) return values[0]!;
  if (position >= values.length - 1) return values[values.length - 1]!;
  const left = Math.floor(position);
  const padded = [...boundary(values), ...values, ...boundary(values.toReversed()).toReversed()];
  const before = padded.slice(left, left + 5);
  const after = padded.slice(left + 1, left + 6);
  const equations = [
    [1, 0, 0, 0, 0, 0], [0, 1, 0, 0, 0, 0], [0, 0, 2, 0, 0, 0],
    [1, 1, 1, 1, 1, 1], [0, 1, 2, 3, 4, 5], [0, 0, 2, 6, 12, 20],
  ];
  const targets = [before[2]!, slopes(before), bends(before), after[2]!, slopes(after), bends(after)];
  const solution = lusolve(equations, targets) as number[][];
  const t = position - left;
  return solution.reduce((sum, [coefficient], power) => sum + coefficient! * t ** power, 0);
}

/** XYZ of 421 reflectance factors at 1 nm, Y of the perfect diffuser 100. */
export function sumAt1nm(reflectance: readonly number[], light: readonly number[], observer: number): number[] {
  const matching = matchingAt1nm(observer);
  const total = (weights: readonly number[], r: readonly number[]) => nanometres.reduce((sum, _, i) => sum + light[i]! * weights[i]! * r[i]!, 0);
  const perfect = nanometres.map(() => 1);
  return matching.map((weights) => (100 * total(weights, reflectance)) / total(matching[1]!, perfect));
}

/** CIELAB in the form with the two linear pieces written out (CIE 15:2004, 8.2.1.1 and 8.2.1.2). */
export function cielab(xyz: readonly number[], white: readonly number[]): number[] {
  const f = (t: number) => (t > (24 / 116) ** 3 ? Math.pow(t, 1 / 3) : (841 / 108) * t + 16 / 116);
  const [x, y, z] = xyz.map((value, i) => value / white[i]!);
  return [116 * f(y!) - 16, 500 * (f(x!) - f(y!)), 200 * (f(y!) - f(z!))];
}

/** A grid of values of a spectrum. */
export interface Layout { readonly startNm: number; readonly stepNm: number; readonly count: number }

/** CIELAB of a spectrum on a layout: E2022 where the layout is of 10 nm or 20 nm, else Sprague to 1 nm; missing ends held. */
export function independentLab(values: readonly number[], { startNm, stepNm }: Layout, light: string, observer: number): number[] {
  const at1nm = carryTo1nm(values, startNm, stepNm);
  const power = lightAt1nm(light);
  return cielab(sumAt1nm(at1nm, power, observer), sumAt1nm(nanometres.map(() => 1), power, observer));
}

/** 421 values from a layout by the method that fits it. */
export function carryTo1nm(values: readonly number[], startNm: number, stepNm: number): number[] {
  if (stepNm !== 10 && stepNm !== 20) return nanometres.map((wavelength) => spragueAt(values, startNm, stepNm, wavelength));
  const whole = Array.from({ length: 420 / stepNm + 1 }, (_, i) => {
    const index = (360 + i * stepNm - startNm) / stepNm;
    return values[Math.min(Math.max(index, 0), values.length - 1)]!;
  });
  return nanometres.map((wavelength) => lagrangeAt(whole, stepNm, wavelength));
}
