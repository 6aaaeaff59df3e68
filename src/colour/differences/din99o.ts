import type { Lab } from '../../quantities.ts';
import { isFinitePair } from './finite-pair.ts';

/** Constants of one member of the DIN99 family of transformations. */
export interface Din99Constants {
  readonly lightnessScale: number;
  readonly lightnessSlope: number;
  /** Cosine and sine of the angle by which the a*b* plane is turned. */
  readonly cosine: number;
  readonly sine: number;
  readonly yellowBlueScale: number;
  readonly chromaSlope: number;
  readonly chromaScale: number;
}

const turned = (degrees: number): { cosine: number; sine: number } =>
  ({ cosine: Math.cos((degrees * Math.PI) / 180), sine: Math.sin((degrees * Math.PI) / 180) });

/** Constants of DIN99o. Source: DIN 6176:2018-10. */
export const din99oConstants: Din99Constants = {
  lightnessScale: 303.67, lightnessSlope: 0.0039, ...turned(26), yellowBlueScale: 0.83, chromaSlope: 0.075, chromaScale: 0.0435,
};

/** Constants of the first DIN99, kept to check the transformation by its published values. Source: DIN 6176:2001-03. */
export const din99Constants: Din99Constants = {
  lightnessScale: 105.509, lightnessSlope: 0.0158, ...turned(16), yellowBlueScale: 0.7, chromaSlope: 0.045, chromaScale: 0.045,
};

/**
 * DIN99o coordinates L99o, a99o, b99o of CIELAB coordinates (D65, 10 degrees).
 *
 * kE and kCH are the parametric factors for lightness and for chroma with hue; 1 and 1 unless agreed otherwise.
 * Neutral colours give a99o = b99o = 0; NaN at or below L* = -256, where the logarithm ends.
 * Source: DIN 6176:2018-10; the transformation is that of Cui, Luo, Rigg, Roesler, Witt, Color Research and Application 27, 282 (2002).
 */
export function labToDin99o(lab: Lab, kE = 1, kCH = 1, constants = din99oConstants): Lab {
  const { lightnessScale, lightnessSlope, cosine, sine, yellowBlueScale, chromaSlope, chromaScale } = constants;
  const e = lab[1] * cosine + lab[2] * sine;
  const f = yellowBlueScale * (lab[2] * cosine - lab[1] * sine);
  const radius = Math.sqrt(e * e + f * f);
  const shrink = (radius === 0 ? chromaSlope : Math.log1p(chromaSlope * radius) / radius) / (chromaScale * kCH * kE);
  return [
    (lightnessScale / kE) * Math.log1p(lightnessSlope * lab[0]),
    shrink * (e * cosine - f * sine),
    shrink * (e * sine + f * cosine),
  ];
}

/**
 * DIN99o difference: the Euclidean distance of DIN99o coordinates.
 *
 * Dimensionless; symmetric; NaN for coordinates that are not finite or L* at or below -256.
 * Source: DIN 6176:2018-10.
 */
export function din99oDifference(standard: Lab, trial: Lab, kE = 1, kCH = 1, constants = din99oConstants): number {
  if (!isFinitePair(standard, trial)) return NaN;
  const first = labToDin99o(standard, kE, kCH, constants);
  const second = labToDin99o(trial, kE, kCH, constants);
  const dL = second[0] - first[0];
  const da = second[1] - first[1];
  const db = second[2] - first[2];
  return Math.sqrt(dL * dL + da * da + db * db);
}
