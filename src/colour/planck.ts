import type { Kelvin, Nanometres } from '../quantities.ts';

/** Second radiation constant of the International Temperature Scale of 1990, in nm K (CIE 015:2018). */
export const secondRadiationConstant = 1.4388e7;

/**
 * Relative power of a black body, 100 at 560 nm.
 *
 * Wavelength in nm and temperature in K above zero; refractive index of the air taken as 1.
 * `c2` in nm K: 1.4388e7 of ITS-90 unless given; illuminant A is defined with the older ratio 1.435e7 nm K to 2848 K.
 * Source: Planck's law in the form of ISO/CIE 11664-2:2022; CIE 015:2018.
 */
export function planckian(wavelength: Nanometres, kelvin: Kelvin, c2: number = secondRadiationConstant): number {
  const anchor = Math.expm1(c2 / (kelvin * 560));
  return (100 * (560 / wavelength) ** 5 * anchor) / Math.expm1(c2 / (kelvin * wavelength));
}

/** Relative power of CIE standard illuminant A, 100 at 560 nm. Source: ISO/CIE 11664-2:2022, equation of illuminant A. */
export const illuminantA = (wavelength: Nanometres): number => planckian(wavelength, 2848, 1.435e7);
