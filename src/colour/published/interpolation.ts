import { derived, workedExample } from '../value-origin.ts';

/** Seven values at 0, 1, .. 6 and Sprague's polynomial between them: colour-science 0.4.6 (BSD-3-Clause), worked example. */
export const workedInterpolation = {
  origin: workedExample('CIE 167:2005 (Sprague); colour-science 0.4.6 (BSD-3-Clause)'),
  values: [5.92, 9.37, 10.8135, 4.51, 69.59, 27.8007, 86.05],
  at: [
    { position: 0.5, value: 7.218503 },
    { position: 1.5, value: 12.235688 },
    { position: 2.5, value: 1.66284 },
    { position: 3.25, value: 18.456174 },
  ],
} as const;

/** Bandpass correction of six values, evaluated from the measured values only. */
export const workedBandpass = {
  origin: derived('ASTM E2729-16 with a = 0.083; computed by an independent program, 5 decimals'),
  measured: [0.05, 0.06, 0.08, 0.11, 0.12, 0.115],
  corrected: [0.04917, 0.05917, 0.07917, 0.11166, 0.12124, 0.11459],
} as const;
