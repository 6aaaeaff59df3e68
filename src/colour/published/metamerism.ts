import { derived, workedExample } from '../value-origin.ts';

const library = workedExample('ISO 18314-4:2024; colour-science (BSD-3-Clause)');

/** Multiplicative correction, 10 deg, reference D65, test A, CIE76; white of A from x = 0.45117, y = 0.40594. */
export const workedMultiplicative = {
  origin: library,
  standard: { reference: [7.6576, 10.7116, 5.0731], test: [8.96442, 10.1878, 1.6663] },
  trial: { reference: [7.6933, 10.5616, 5.54474], test: [8.56438, 10.0324, 1.9315] },
  testWhite: [45.117 / 0.40594, 100, 14.289 / 0.40594],
  index: 3.7907,
} as const;

/** Additive correction in CIELAB, CIE76. */
export const workedAdditive = {
  origin: library,
  standard: { reference: [39.0908, -21.3269, 22.6657], test: [38.17781, -17.4939, 21.0618] },
  trial: { reference: [38.83253, -19.8787, 20.0453], test: [37.9013, -19.56327, 16.9346] },
  index: 3.8268,
} as const;

const grid = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
const spectrum = (of: (wavelength: number) => number) => ({ startNm: 400, stepNm: 10, values: grid.map(of) });

/** Analytic reflectance factors, 400 nm to 700 nm at 10 nm: a flat grey, a wave around it, and a curve that does not match it. */
export const analyticSpectra = {
  flat: spectrum(() => 0.06),
  wave: spectrum((wavelength) => 0.06 + 0.012 * Math.sin((2 * Math.PI * (wavelength - 400)) / 100)),
  mismatch: spectrum((wavelength) =>
    0.06 + 0.01 * Math.exp(-(((wavelength - 620) / 30) ** 2)) - 0.004 * Math.exp(-(((wavelength - 470) / 25) ** 2))),
} as const;

/**
 * Origin of the figures for {@link analyticSpectra}: 10 deg, weights after ASTM E2022 with the ends added, reference D65.
 * The program carried D65 and A to 830 nm, which moves tristimulus values and differences by up to 1.1e-5 against a range to 780 nm.
 */
export const analyticOrigin = derived('ISO 18314-4:2024 and ASTM E2022-11, computed by an independent program to 830 nm, 4 decimals');
/** Half a unit of the fourth decimal, and the effect of the range. */
export const analyticTolerance = 6.1e-5;

/** Differences of flat (standard) and wave (trial) under each light. */
export const waveDifferences = [
  { light: 'D65', cie76: 0.2733, ciede2000: 0.3986 },
  { light: 'A', cie76: 0.5216, ciede2000: 0.5973 },
  { light: 'FL2', cie76: 1.9274, ciede2000: 1.8608 },
  { light: 'FL11', cie76: 1.3612, ciede2000: 1.8573 },
  { light: 'LED-B3', cie76: 0.2656, ciede2000: 0.3698 },
] as const;

/** Indices in CIE76 units; the additive one is that of CIELAB. */
export const analyticIndices = [
  { trial: 'wave', test: 'A', residual: 0.2733, multiplicative: 0.664, additive: 0.664, parametric: 0.6667 },
  { trial: 'wave', test: 'FL2', residual: 0.2733, multiplicative: 2.0513, additive: 2.0528, parametric: 2.0098 },
  { trial: 'wave', test: 'FL11', residual: 0.2733, multiplicative: 1.6074, additive: 1.604, parametric: 1.5983 },
  { trial: 'wave', test: 'LED-B3', residual: 0.2733, multiplicative: 0.1912, additive: 0.1914, parametric: 0.1677 },
  { trial: 'mismatch', test: 'A', residual: 2.2677, multiplicative: 0.6811, additive: undefined, parametric: 0.4369 },
] as const;

/** Origin of {@link analyticSums}. */
export const analyticSumsOrigin = derived('ASTM E2022-11, ends added; computed by an independent program');

/** Tristimulus values under D65, 10 deg, 6 decimals, from the same program. */
export const analyticSums = [
  { spectrum: 'wave', xyz: [5.678185, 6.013284, 6.437796] },
  { spectrum: 'flat', xyz: [5.688665, 6, 6.438279] },
] as const;
