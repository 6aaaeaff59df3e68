import type { Lab, Lch, Xyz } from '../quantities.ts';

/** (6/29)^3, below which the cube root gives way to a straight line. */
const linearBelow = 216 / 24389;
const slope = 24389 / 27;
const degreesPerRadian = 180 / Math.PI;

const compress = (t: number): number => (t > linearBelow ? Math.cbrt(t) : (slope * t + 16) / 116);

const expand = (f: number): number => (f > 6 / 29 ? f * f * f : (116 * f - 16) / slope);

/**
 * Slope of the CIELAB compression function at a ratio t = X/Xn.
 *
 * Domain any finite t; continuous at t = (6/29)^3.
 * Source: derivative of f in ISO/CIE 11664-4:2019, clause 4.
 */
export function compressionSlope(t: number): number {
  if (t <= linearBelow) return slope / 116;
  const root = Math.cbrt(t);
  return 1 / (3 * root * root);
}

/**
 * CIELAB coordinates of tristimulus values against a white.
 *
 * Both on one scale (Y = 100 for the perfect diffuser); values below zero follow the straight part of the function.
 * Equal inputs give exactly (100, 0, 0).
 * Source: ISO/CIE 11664-4:2019; CIE 015:2018, 8.2.1.
 */
export function xyzToLab(xyz: Xyz, white: Xyz): Lab {
  const fx = compress(xyz[0] / white[0]);
  const fy = compress(xyz[1] / white[1]);
  const fz = compress(xyz[2] / white[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/**
 * Tristimulus values of CIELAB coordinates against a white; the inverse of {@link xyzToLab}.
 *
 * Source: ISO/CIE 11664-4:2019, annex on the reverse transformation; CIE 015:2018, annex D.
 */
export function labToXyz(lab: Lab, white: Xyz): Xyz {
  const fy = (lab[0] + 16) / 116;
  return [white[0] * expand(fy + lab[1] / 500), white[1] * expand(fy), white[2] * expand(fy - lab[2] / 200)];
}

/**
 * Lightness, chroma and hue angle of CIELAB coordinates.
 *
 * Hue in degrees, 0 <= h < 360; 0 for a neutral colour.
 * Source: ISO/CIE 11664-4:2019, 4.3.
 */
export function labToLch(lab: Lab): Lch {
  const angle = Math.atan2(lab[2], lab[1]) * degreesPerRadian;
  // A tiny negative angle plus 360 rounds to 360 itself.
  const hue = angle < 0 ? (angle + 360) % 360 : angle + 0;
  return [lab[0], Math.hypot(lab[1], lab[2]), hue];
}

/** CIELAB coordinates of lightness, chroma and hue angle in degrees (any turn); the inverse of {@link labToLch}. */
export function lchToLab(lch: Lch): Lab {
  const angle = lch[2] / degreesPerRadian;
  return [lch[0], lch[1] * Math.cos(angle), lch[1] * Math.sin(angle)];
}
