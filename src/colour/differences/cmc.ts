import type { Lab } from '../../quantities.ts';
import { hueDifference } from '../hue-difference.ts';
import { isFinitePair } from './finite-pair.ts';

const radiansPerDegree = Math.PI / 180;

/** Lightness weight SL of the standard's L*. */
export const cmcLightnessWeight = (L: number): number => (L < 16 ? 0.511 : (0.040975 * L) / (1 + 0.01765 * L));

/** Chroma weight SC of the standard's C*ab. */
export const cmcChromaWeight = (chroma: number): number => (0.0638 * chroma) / (1 + 0.0131 * chroma) + 0.638;

/** Hue weight SH of the standard's a*, b* and C*ab. */
export function cmcHueWeight(a: number, b: number, chroma: number): number {
  const square = chroma * chroma;
  const f = Math.sqrt(1 / (1 + 1900 / (square * square)));
  const angle = Math.atan2(b, a);
  const degrees = (angle < 0 ? angle + 2 * Math.PI : angle) / radiansPerDegree;
  const t = degrees >= 164 && degrees <= 345
    ? 0.56 + Math.abs(0.2 * Math.cos((degrees + 168) * radiansPerDegree))
    : 0.36 + Math.abs(0.4 * Math.cos((degrees + 35) * radiansPerDegree));
  return cmcChromaWeight(chroma) * (f * t + 1 - f);
}

/**
 * CMC(l:c) difference; the standard sets the weights, so swapping the colours changes the value.
 *
 * l:c is 2:1 for acceptability (the default) and 1:1 for perceptibility. Dimensionless, 0 for equal colours;
 * NaN for coordinates that are not finite. The hue weight jumps by a few thousandths at hue 164 and 345 degrees: so the standard has it.
 * Source: ISO 105-J03:2009; Clarke, McDonald, Rigg, J. Soc. Dyers and Colourists 100, 128 (1984).
 */
export function cmcDifference(standard: Lab, trial: Lab, l = 2, c = 1): number {
  if (!isFinitePair(standard, trial)) return NaN;
  const L1 = standard[0], a1 = standard[1], b1 = standard[2];
  const L2 = trial[0], a2 = trial[1], b2 = trial[2];
  const chroma1 = Math.sqrt(a1 * a1 + b1 * b1);
  const chroma2 = Math.sqrt(a2 * a2 + b2 * b2);
  const lightness = (L2 - L1) / (l * cmcLightnessWeight(L1));
  const chroma = (chroma2 - chroma1) / (c * cmcChromaWeight(chroma1));
  const hue = hueDifference(a1, b1, chroma1, a2, b2, chroma2) / cmcHueWeight(a1, b1, chroma1);
  return Math.sqrt(lightness * lightness + chroma * chroma + hue * hue);
}
