import type { Appearance } from './appearance.ts';

/** J', a', b' of a uniform space built on an appearance model. */
export type UniformColour = readonly [J: number, a: number, b: number];

const lightnessConstant = 0.007;
const colourfulnessConstant = 0.0228;

/**
 * Coordinates J', a', b' of the space meant for all sizes of difference (UCS: c1 = 0.007, c2 = 0.0228).
 *
 * J' = 100 for the white.
 * Source: Luo, Cui, Li, Color Research and Application 31, 320 (2006); the same constants serve CAM16 (Li et al. 2017).
 */
export function uniformColour(appearance: Appearance): UniformColour {
  const { lightness, colourfulness, hue } = appearance;
  const radius = (Math.sign(colourfulness) * Math.log1p(colourfulnessConstant * Math.abs(colourfulness))) / colourfulnessConstant;
  const radians = (hue * Math.PI) / 180;
  return [
    ((1 + 100 * lightnessConstant) * lightness) / (1 + lightnessConstant * lightness),
    radius * Math.cos(radians),
    radius * Math.sin(radians),
  ];
}

/** Distance in a uniform space; KL divides the lightness difference. */
export function uniformDistance(first: UniformColour, second: UniformColour, kL: number): number {
  const dJ = (second[0] - first[0]) / kL;
  const da = second[1] - first[1];
  const db = second[2] - first[2];
  return Math.sqrt(dJ * dJ + da * da + db * db);
}
