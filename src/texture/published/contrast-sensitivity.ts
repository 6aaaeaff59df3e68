import { derived } from '../../colour/value-origin.ts';

/** Computed from the published formula by another program than this one; field 10 degrees. */
export const contrastSensitivityOrigin = derived('Barten 2004, Proc. SPIE 5294 (formula computed independently)');

export const contrastSensitivityField = 10;

/** [luminance in cd/m2, cycles a degree, sensitivity]. */
export const contrastSensitivities: readonly (readonly [luminance: number, frequency: number, sensitivity: number])[] = [
  [19.1, 1, 395.40], [19.1, 4, 470.01], [19.1, 12.2, 156.63], [100, 1, 410.67], [100, 4, 633.74], [100, 12.2, 262.28],
];
