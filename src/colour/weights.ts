import type { Nanometres, Xyz } from '../quantities.ts';
import { e2022Weights } from './e2022.ts';
import { visibleInterpolants } from './interpolation.ts';
import type { Light } from './lights.ts';
import type { Observer } from './observers.ts';
import { productsOf } from './products.ts';
import { visibleCount, visibleStartNm } from './spectrum.ts';
import type { Products, WeightingTable } from './weighting-table.ts';
import { addRow, emptyTable } from './weighting-table.ts';

/** `e308`: weighting tables of 10 nm or 20 nm; `1nm`: interpolation and summation at 1 nm. */
export type SummationMethod = 'e308' | '1nm';

/** Weights that turn the values of one grid into tristimulus values by a single sum. */
export interface Weights {
  readonly light: Light;
  readonly observer: Observer;
  readonly startNm: Nanometres;
  readonly stepNm: Nanometres;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** The perfect diffuser by these same weights. */
  readonly white: Xyz;
  /** The method that was used. */
  readonly method: SummationMethod;
}

/** Whether the weighting tables have a row at every value of a grid that lies inside 360 nm to 780 nm. */
const onTableGrid = (startNm: Nanometres, stepNm: Nanometres): boolean =>
  (stepNm === 10 || stepNm === 20) && (startNm - visibleStartNm) % stepNm === 0;

/** The full table with rows that the data lack added to the end values (ASTM E308-15); values beyond the table weigh nothing. */
function tableWeights(products: Products, startNm: Nanometres, stepNm: Nanometres, count: number): WeightingTable {
  const full = e2022Weights(products, stepNm);
  const table = emptyTable(count);
  const offset = (startNm - visibleStartNm) / stepNm;
  for (let row = 0; row < full.y.length; row += 1) addRow(table, Math.min(Math.max(row - offset, 0), count - 1), full, row, 1);
  return table;
}

/** The 1 nm sum over interpolated data, written as weights of the data themselves. */
function nanometreWeights(products: Products, startNm: Nanometres, stepNm: Nanometres, count: number): WeightingTable {
  const table = emptyTable(count);
  visibleInterpolants(startNm, stepNm, count).forEach(({ first, coefficients }, i) => {
    for (let k = 0; k < coefficients.length; k += 1) addRow(table, first + k, products, i, coefficients[k]);
  });
  return table;
}

/** Sums in the order of {@link spectrumToXyz}, so that a white tile meets the white exactly. */
function columnSums(table: WeightingTable): Xyz {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < table.y.length; i += 1) {
    x += table.x[i];
    y += table.y[i];
    z += table.z[i];
  }
  return [x, y, z];
}

const cache = new WeakMap<Light, Map<string, Weights>>();

/**
 * Weights for spectra of `count` values from `startNm` in steps of `stepNm`; cached by the light object, observer, grid and method.
 *
 * `e308`: tables computed after ASTM E2022-11 over 360 nm to 780 nm, for 10 nm and 20 nm data at multiples of the step; the weights of
 * missing ends are added to the end values. `1nm`: data brought to 1 nm over 360 nm to 780 nm by CIE 167 Sprague (straight lines below six
 * values), end values held. `auto`: `e308` where it can be had, else `1nm`. A grid that `e308` has no rows for is summed by `1nm`, and
 * `method` of the result says so. Data beyond 360 nm to 780 nm help the interpolation and weigh nothing in `e308`.
 * No bandpass correction is built in: see {@link correctBandpass}. Throws a RangeError for a step or count that is not positive.
 * Source: ASTM E308-15; ASTM E2022-11; CIE 167:2005.
 */
export function weightsFor(
  light: Light, observer: Observer, startNm: Nanometres, stepNm: Nanometres, count: number, method: 'auto' | SummationMethod = 'auto',
): Weights {
  if (!(stepNm > 0) || !(count >= 1) || !Number.isFinite(startNm)) {
    throw new RangeError(`no spectrum of ${count} values from ${startNm} nm in steps of ${stepNm} nm`);
  }
  const used: SummationMethod = method !== '1nm' && onTableGrid(startNm, stepNm) ? 'e308' : '1nm';
  const key = `${observer} ${startNm} ${stepNm} ${count} ${used}`;
  const ofLight = cache.get(light) ?? new Map<string, Weights>();
  cache.set(light, ofLight);
  const known = ofLight.get(key);
  if (known) return known;
  const products = productsOf(light, observer);
  const table = (used === 'e308' ? tableWeights : nanometreWeights)(products, startNm, stepNm, count);
  const weights: Weights = { light, observer, startNm, stepNm, ...table, white: columnSums(table), method: used };
  ofLight.set(key, weights);
  return weights;
}

/**
 * White point of a light: the perfect diffuser summed at 1 nm over 360 nm to 780 nm, Y = 100.
 *
 * It differs from the `white` of any weights by rounding only; CIELAB of a spectrum takes the white of its own weights.
 */
export const whitePoint = (light: Light, observer: Observer): Xyz =>
  weightsFor(light, observer, visibleStartNm, 1, visibleCount, '1nm').white;
