import type { Lab } from '../../quantities.ts';
import { isFinitePair } from './finite-pair.ts';

const radiansPerDegree = Math.PI / 180;

/**
 * Hues this close to 180 degrees apart (radians) count as exactly opposite. Far above rounding, far below any reading;
 * without it pair 14 of Sharma, Wu and Dalal gives 4.7461 in place of 4.8045.
 */
const oppositeTolerance = 1e-9;

/** sqrt(C^7 / (C^7 + 25^7)), written so that neither end overflows. */
function highChromaShare(chroma: number): number {
  const ratio = 25 / chroma;
  const square = ratio * ratio;
  return 1 / Math.sqrt(1 + square * square * square * ratio);
}

/** 1 + G: the factor on a* at a mean C*ab. 1.5 for neutral colours, 1 for very chromatic ones. */
export const redGreenStretch = (meanChroma: number): number => 1.5 - 0.5 * highChromaShare(meanChroma);

/** SL at a mean L*. */
export function ciede2000LightnessWeight(meanL: number): number {
  const square = (meanL - 50) * (meanL - 50);
  return 1 + (0.015 * square) / Math.sqrt(20 + square);
}

/** SC at a mean C'. */
export const ciede2000ChromaWeight = (meanChroma: number): number => 1 + 0.045 * meanChroma;

/** SH at a mean C' and a mean hue h' in radians. */
export function ciede2000HueWeight(meanChroma: number, meanHue: number): number {
  const t = 1
    - 0.17 * Math.cos(meanHue - 30 * radiansPerDegree)
    + 0.24 * Math.cos(2 * meanHue)
    + 0.32 * Math.cos(3 * meanHue + 6 * radiansPerDegree)
    - 0.20 * Math.cos(4 * meanHue - 63 * radiansPerDegree);
  return 1 + 0.015 * meanChroma * t;
}

/** RT at a mean C' and a mean hue h' in radians (0..2 pi). */
export function ciede2000Rotation(meanChroma: number, meanHue: number): number {
  const offset = (meanHue / radiansPerDegree - 275) / 25;
  return -2 * highChromaShare(meanChroma) * Math.sin(60 * radiansPerDegree * Math.exp(-offset * offset));
}

/** Hue angle in radians, 0..2 pi; 0 for a neutral colour. */
export function fullHue(a: number, b: number): number {
  const angle = Math.atan2(b, a);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

/**
 * CIEDE2000 difference.
 *
 * Dimensionless, 0 for equal colours; symmetric; NaN for coordinates that are not finite. Not a metric: the mean hue jumps where
 * the hues are 180 degrees apart.
 * Source: ISO/CIE 11664-6:2014; Sharma, Wu, Dalal, Color Research and Application 30, 21 (2005).
 */
export function ciede2000Difference(standard: Lab, trial: Lab, kL = 1, kC = 1, kH = 1): number {
  if (!isFinitePair(standard, trial)) return NaN;
  const L1 = standard[0], a1 = standard[1], b1 = standard[2];
  const L2 = trial[0], a2 = trial[1], b2 = trial[2];
  const stretch = redGreenStretch((Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2);
  const stretched1 = stretch * a1;
  const stretched2 = stretch * a2;
  const chroma1 = Math.sqrt(stretched1 * stretched1 + b1 * b1);
  const chroma2 = Math.sqrt(stretched2 * stretched2 + b2 * b2);
  const hue1 = fullHue(stretched1, b1);
  const hue2 = fullHue(stretched2, b2);

  // For a neutral colour the standard sets dh' = 0 and the mean hue to the sum. dH' is then 0 whatever the angle, and nothing else
  // depends on the mean hue, so no branch is needed.
  let hueStep = hue2 - hue1;
  let meanHue = (hue1 + hue2) / 2;
  if (Math.abs(hueStep) > Math.PI + oppositeTolerance) {
    hueStep += hueStep > 0 ? -2 * Math.PI : 2 * Math.PI;
    meanHue += meanHue < Math.PI ? Math.PI : -Math.PI;
  }
  const meanChroma = (chroma1 + chroma2) / 2;

  const lightness = (L2 - L1) / (kL * ciede2000LightnessWeight((L1 + L2) / 2));
  const chroma = (chroma2 - chroma1) / (kC * ciede2000ChromaWeight(meanChroma));
  const hue = (2 * Math.sqrt(chroma1 * chroma2) * Math.sin(hueStep / 2)) / (kH * ciede2000HueWeight(meanChroma, meanHue));
  return Math.sqrt(lightness * lightness + chroma * chroma + hue * hue + ciede2000Rotation(meanChroma, meanHue) * chroma * hue);
}
