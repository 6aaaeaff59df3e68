import type { Nanometres } from '../quantities.ts';

/**
 * Values at evenly spaced wavelengths: reflectance factors (1 for the perfect diffuser) or relative power.
 *
 * `values[i]` stands at `startNm + i * stepNm`; `stepNm` above zero.
 */
export interface Spectrum {
  readonly startNm: Nanometres;
  readonly stepNm: Nanometres;
  readonly values: ArrayLike<number>;
}

/** First wavelength of every light and of the summation (ASTM E308-15, working range). */
export const visibleStartNm = 360;
/** Last wavelength of every light and of the summation. */
export const visibleEndNm = 780;
/** Number of 1 nm steps from {@link visibleStartNm} to {@link visibleEndNm}, both included. */
export const visibleCount = visibleEndNm - visibleStartNm + 1;

/** Wavelength of the last value. */
export const endNm = (spectrum: Spectrum): Nanometres => spectrum.startNm + (spectrum.values.length - 1) * spectrum.stepNm;

/** Whether two spectra stand at the same wavelengths. */
export const sameGrid = (a: Spectrum, b: Spectrum): boolean =>
  a.startNm === b.startNm && a.stepNm === b.stepNm && a.values.length === b.values.length;
