import type { Millimetres } from '../quantities.ts';

export const apertureClasses = ['up to 5 mm', '5 to 10 mm', '10 to 20 mm', 'over 20 mm', 'unknown'] as const;
export type ApertureClass = (typeof apertureClasses)[number];

/**
 * Class of the measured area by the diameter of the aperture, upper bounds included.
 * Assumption, no source: the bounds separate the usual small, medium, large and extra large view apertures.
 */
export function apertureClass(diameter: Millimetres | undefined): ApertureClass {
  if (diameter === undefined || !(diameter > 0)) return 'unknown';
  if (diameter <= 5) return 'up to 5 mm';
  if (diameter <= 10) return '5 to 10 mm';
  return diameter <= 20 ? '10 to 20 mm' : 'over 20 mm';
}

/** Whether two groups may have been read through one size of aperture: unlike classes are never compared, an aperture that is not stated is. */
export const aperturesMayBeAlike = (first: ApertureClass, second: ApertureClass): boolean => first === second || first === 'unknown' || second === 'unknown';
