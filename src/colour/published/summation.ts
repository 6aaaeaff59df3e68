import { derived, workedExample } from '../value-origin.ts';

/** Sixteen reflectance factors, 400 nm to 700 nm in steps of 20 nm: the worked spectrum of colour-science 0.4.6. */
export const workedSpectrum = {
  startNm: 400,
  stepNm: 20,
  values: [
    0.0641, 0.0645, 0.0562, 0.0537, 0.0559, 0.0651, 0.0705, 0.0772, 0.087, 0.1128, 0.136, 0.1511, 0.1688, 0.1996, 0.2397, 0.2852,
  ],
} as const;

const library = workedExample('colour-science 0.4.6 (BSD-3-Clause, Copyright 2013 Colour Developers); summed to 830 nm, here to 780 nm');
const wideLibrary = workedExample('colour-science 0.4.6 (BSD-3-Clause), examples of ASTM E2022 and E308');
const independent = derived('ASTM E2022-11 over 360 nm to 780 nm, computed by an independent program');

/** Tristimulus values of {@link workedSpectrum} for the 2 deg observer; light `E` is of equal power at every wavelength. */
export const workedSums = [
  { light: 'D65', method: 'e308', xyz: [10.8405832, 9.6844909, 6.2155622], tolerance: 1e-4, origin: library },
  { light: 'D65', method: '1nm', xyz: [10.8404805, 9.6838697, 6.2115722], tolerance: 1e-4, origin: library },
  { light: 'D65', method: 'e308', xyz: [10.840501, 9.684468, 6.21557], tolerance: 5e-7, origin: independent },
  { light: 'E', method: 'e308', xyz: [11.778611, 9.958906, 5.74032], tolerance: 1e-6, origin: independent },
] as const;

/** Single weights of illuminant A, 10 deg, 20 nm, of a table cut to 400 nm to 700 nm with the missing ends added. */
export const workedWeights = [
  { wavelength: 600, xyz: [25.331647, 14.895767, 0], tolerance: 5e-7, origin: independent },
  { wavelength: 400, xyz: [0.0509545, 0.0040971, 0.2144289], tolerance: 5e-8, origin: independent },
  { wavelength: 700, xyz: [0.4160435, 0.1613935, 0], tolerance: 5e-8, origin: independent },
] as const;

/** The same for weights of the whole range to 830 nm, where the library scales by the sum to 830 nm and the grid ends at 820 nm. */
export const workedWideWeights = [
  { wavelength: 600, xyz: [25.3315384, 14.8957035, 0], tolerance: 1e-5, origin: wideLibrary },
  { wavelength: 400, xyz: [0.0509543, 0.0040971, 0.214428], tolerance: 1e-6, origin: wideLibrary },
] as const;
