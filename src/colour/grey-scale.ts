import type { Lab } from '../quantities.ts';
import { components } from './components.ts';

/** Fastness grades, best first. */
export const greyScaleGrades = ['5', '4-5', '4', '3-4', '3', '2-3', '2', '1-2', '1'] as const;
export type GreyScaleGrade = (typeof greyScaleGrades)[number];

/** One pair of the grey scale: its CIELAB difference and the tolerance on it. */
export interface GreyScaleStep {
  readonly grade: GreyScaleGrade;
  readonly difference: number;
  readonly tolerance: number;
}

/** The nine pairs of the grey scale for assessing change in colour. Source: ISO 105-A02:1993 (EN 20105-A02:1994). */
export const greyScaleSteps: readonly GreyScaleStep[] = [
  { grade: '5', difference: 0, tolerance: 0.2 },
  { grade: '4-5', difference: 0.8, tolerance: 0.2 },
  { grade: '4', difference: 1.7, tolerance: 0.3 },
  { grade: '3-4', difference: 2.5, tolerance: 0.35 },
  { grade: '3', difference: 3.4, tolerance: 0.4 },
  { grade: '2-3', difference: 4.8, tolerance: 0.5 },
  { grade: '2', difference: 6.8, tolerance: 0.6 },
  { grade: '1-2', difference: 9.6, tolerance: 0.7 },
  { grade: '1', difference: 13.6, tolerance: 1.0 },
];

/** Upper ends of the bands of dEF, in the order of {@link greyScaleGrades}; grade 1 has none. */
const bandEnds = [0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60];

export interface GreyScaleRating {
  /** dEF, CIELAB units with chroma and hue weighted down. */
  readonly difference: number;
  /** Continuous grade GSc, 5 for no change. */
  readonly value: number;
  /** Grade of the band that dEF falls in; `undefined` when it is not a number. */
  readonly grade: GreyScaleGrade | undefined;
}

/** Continuous grade of a difference dEF: linear to 3.4, logarithmic beyond. */
export const continuousGrade = (difference: number): number =>
  difference <= 3.4 ? 5 - difference / 1.7 : 5 - Math.log2(difference / 0.85);

/** Grade of the band a difference dEF falls in. */
export function greyScaleBand(difference: number): GreyScaleGrade | undefined {
  if (Number.isNaN(difference)) return undefined;
  const band = bandEnds.findIndex((end) => difference < end);
  return band < 0 ? '1' : greyScaleGrades[band];
}

/** Mean hue in degrees, 0..360; the sum where either colour is neutral. */
function meanHue(standard: Lab, trial: Lab): number {
  const hue = (lab: Lab): number => ((Math.atan2(lab[2], lab[1]) * 180) / Math.PI + 360) % 360;
  const first = hue(standard);
  const second = hue(trial);
  const neutral = (lab: Lab): boolean => lab[1] === 0 && lab[2] === 0;
  if (neutral(standard) || neutral(trial)) return first + second;
  const mean = (first + second) / 2;
  if (Math.abs(first - second) <= 180) return mean;
  return mean < 180 ? mean + 180 : mean - 180;
}

/**
 * Instrumental grey-scale grade for the change in colour from an untreated standard to the treated trial.
 *
 * CIELAB, D65 and 10 degrees; dH is signed, trial minus standard, so swapping the two may change the grade a little.
 * Source: ISO 105-A05:1996; equations written from memory. They give GSc 4, 3, 2, 1 at the differences
 * 1.7, 3.4, 6.8, 13.6 of ISO 105-A02 and bands between its pairs.
 */
export function greyScaleGrade(standard: Lab, trial: Lab): GreyScaleRating {
  const { dL, dC, dH } = components(standard, trial);
  const chroma = (Math.sqrt(standard[1] ** 2 + standard[2] ** 2) + Math.sqrt(trial[1] ** 2 + trial[2] ** 2)) / 2;
  const away = Math.abs(meanHue(standard, trial) - 280);
  const x = ((away <= 180 ? away : 360 - away) / 30) ** 2;
  const blue = (dC * chroma * Math.exp(-x)) / 100;
  const chromaPart = (dC - blue) / (1 + ((20 * chroma) / 1000) ** 2);
  const huePart = (dH - blue) / (1 + ((10 * chroma) / 1000) ** 2);
  const difference = Math.sqrt(dL * dL + chromaPart * chromaPart + huePart * huePart);
  return { difference, value: continuousGrade(difference), grade: greyScaleBand(difference) };
}
