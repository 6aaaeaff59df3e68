import type { Lab } from '../../quantities.ts';
import { isFinitePair } from './finite-pair.ts';

const axisAngle = (26 * Math.PI) / 180;
const cosine = Math.cos(axisAngle);
const sine = Math.sin(axisAngle);

/** Constants of the DIN99o transformation. */
export const din99oConstants = {
  lightnessScale: 303.67, lightnessSlope: 0.0039, yellowBlueScale: 0.83, chromaSlope: 0.075, chromaScale: 0.0435, cosine, sine,
} as const;

const { lightnessScale, lightnessSlope, yellowBlueScale, chromaSlope, chromaScale } = din99oConstants;

/**
 * DIN99o coordinates L99o, a99o, b99o of CIELAB coordinates (D65, 10 degrees).
 *
 * kE and kCH are the parametric factors for lightness and for chroma with hue; 1 and 1 unless agreed otherwise.
 * Neutral colours give a99o = b99o = 0; NaN at or below L* = -256, where the logarithm ends.
 * Source: DIN 6176:2018-10; constants as in Cui, Luo, Rigg, Roesler, Witt, Color Research and Application 27, 282 (2002), DIN99b.
 */
export function labToDin99o(lab: Lab, kE = 1, kCH = 1): Lab {
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
export function din99oDifference(standard: Lab, trial: Lab, kE = 1, kCH = 1): number {
  if (!isFinitePair(standard, trial)) return NaN;
  const first = labToDin99o(standard, kE, kCH);
  const second = labToDin99o(trial, kE, kCH);
  const dL = second[0] - first[0];
  const da = second[1] - first[1];
  const db = second[2] - first[2];
  return Math.sqrt(dL * dL + da * da + db * db);
}
