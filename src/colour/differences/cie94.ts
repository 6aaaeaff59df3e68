import type { Lab } from '../../quantities.ts';
import { hueDifference } from '../hue-difference.ts';
import { isFinitePair } from './finite-pair.ts';

/** Constants of one application of CIE94: slopes of the chroma and hue weights, and the usual kL. */
export interface Cie94Application {
  readonly chromaSlope: number;
  readonly hueSlope: number;
  readonly kL: number;
}

/** Reference conditions of CIE 116-1995: K1 = 0.045, K2 = 0.015. */
export const cie94GraphicArts: Cie94Application = { chromaSlope: 0.045, hueSlope: 0.015, kL: 1 };
/** Constants given for textiles: K1 = 0.048, K2 = 0.014, kL = 2. */
export const cie94Textiles: Cie94Application = { chromaSlope: 0.048, hueSlope: 0.014, kL: 2 };

/**
 * CIE94 difference; the standard's chroma sets the weights, so swapping the colours changes the value.
 *
 * Dimensionless, 0 for equal colours; NaN for coordinates that are not finite.
 * Source: CIE 116-1995.
 */
export function cie94Difference(
  standard: Lab, trial: Lab, application: Cie94Application = cie94GraphicArts, kL = application.kL, kC = 1, kH = 1,
): number {
  if (!isFinitePair(standard, trial)) return NaN;
  const L1 = standard[0], a1 = standard[1], b1 = standard[2];
  const L2 = trial[0], a2 = trial[1], b2 = trial[2];
  const chroma1 = Math.sqrt(a1 * a1 + b1 * b1);
  const chroma2 = Math.sqrt(a2 * a2 + b2 * b2);
  const lightness = (L2 - L1) / kL;
  const chroma = (chroma2 - chroma1) / (kC * (1 + application.chromaSlope * chroma1));
  const hue = hueDifference(a1, b1, chroma1, a2, b2, chroma2) / (kH * (1 + application.hueSlope * chroma1));
  return Math.sqrt(lightness * lightness + chroma * chroma + hue * hue);
}
