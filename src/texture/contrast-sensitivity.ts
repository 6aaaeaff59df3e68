import type { Degrees, Lux, Millimetres } from '../quantities.ts';

/** Luminance in cd/m2 of a matt part of this reflectance, 0..1, under this illuminance. Source: Lambert's law, L = E rho / pi. */
export const luminanceOf = (illuminance: Lux, reflectance: number): number => (illuminance * reflectance) / Math.PI;

/** Cycles a degree of a texture of this frequency, in cycles a millimetre, at a viewing distance. */
export const cyclesPerDegree = (perMm: number, viewMm: Millimetres): number => perMm * viewMm * Math.tan(Math.PI / 180);

/** Angle that a length at right angles to the line of sight subtends. */
export const fieldAngle = (lengthMm: Millimetres, viewMm: Millimetres): Degrees => (360 / Math.PI) * Math.atan(lengthMm / (2 * viewMm));

/**
 * Contrast sensitivity of the eye: one over the contrast (amplitude over mean) at which a sine grating is seen half of the time.
 *
 * Frequency in cycles a degree, above 0; luminance in cd/m2, above 0; field the root of the solid angle in degrees. 0 at frequency 0.
 * Source: P. G. J. Barten, Formula for the contrast sensitivity of the human eye, Proc. SPIE 5294 (2004) 231.
 */
export function contrastSensitivity(frequency: number, luminance: number, fieldDeg: Degrees): number {
  const square = frequency * frequency;
  const optics = 5200 * Math.exp(-0.0016 * square * (1 + 100 / luminance) ** 0.08);
  const area = 1 + 144 / (fieldDeg * fieldDeg) + 0.64 * square;
  const noise = 63 / luminance ** 0.83 + 1 / -Math.expm1(-0.02 * square);
  return optics / Math.sqrt(area * noise);
}

/**
 * Relative contrast sensitivity, near 1 at 8 cycles a degree: for comparison with {@link contrastSensitivity} alone.
 *
 * Source: J. L. Mannos, D. J. Sakrison, IEEE Trans. Inform. Theory 20 (1974) 525.
 */
export const relativeContrastSensitivity = (frequency: number): number =>
  2.6 * (0.0192 + 0.114 * frequency) * Math.exp(-((0.114 * frequency) ** 1.1));
