import type { Xyz } from '../quantities.ts';
import { inverse3, transform } from './three-by-three.ts';

/** The displays that colours are prepared for. */
export type DisplayGamut = 'srgb' | 'display-p3';

/** Red, green and blue, 0..1 inside the gamut. */
export type Rgb = readonly [red: number, green: number, blue: number];

type Chromaticity = readonly [x: number, y: number];

/** Tristimulus values of a chromaticity at Y = 100. */
const atFullLuminance = ([x, y]: Chromaticity): Xyz => [(100 * x) / y, 100, (100 * (1 - x - y)) / y];

/** White of both display spaces, x = 0.3127, y = 0.3290, Y = 100 (IEC 61966-2-1:1999). */
export const displayWhite: Xyz = atFullLuminance([0.3127, 0.329]);

interface RgbSpace {
  readonly toXyz: readonly number[];
  readonly fromXyz: readonly number[];
}

/** Scales the primaries so that equal amounts give the white. */
function rgbSpace(red: Chromaticity, green: Chromaticity, blue: Chromaticity): RgbSpace {
  const [r, g, b] = [atFullLuminance(red), atFullLuminance(green), atFullLuminance(blue)];
  const primaries = [r[0], g[0], b[0], r[1], g[1], b[1], r[2], g[2], b[2]];
  const amounts = transform(inverse3(primaries), displayWhite);
  const toXyz = primaries.map((value, i) => value * amounts[i % 3]);
  return { toXyz, fromXyz: inverse3(toXyz) };
}

/** Primaries: sRGB after IEC 61966-2-1:1999 (ITU-R BT.709); Display P3 after SMPTE EG 432-1:2010, as in CSS Color Module Level 4. */
const spaces: Record<DisplayGamut, RgbSpace> = {
  srgb: rgbSpace([0.64, 0.33], [0.3, 0.6], [0.15, 0.06]),
  'display-p3': rgbSpace([0.68, 0.32], [0.265, 0.69], [0.15, 0.06]),
};

/** Light of the three primaries for tristimulus values against {@link displayWhite}; outside 0..1 beyond the gamut. */
export const xyzToLinearRgb = (xyz: Xyz, gamut: DisplayGamut): Rgb => transform(spaces[gamut].fromXyz, xyz);

/** Tristimulus values of light of the three primaries; the inverse of {@link xyzToLinearRgb}. */
export const linearRgbToXyz = (rgb: Rgb, gamut: DisplayGamut): Xyz => transform(spaces[gamut].toXyz, rgb);

/**
 * Encoded value 0..1 of a linear one, for both display spaces; values outside 0..1 are cut.
 *
 * Source: IEC 61966-2-1:1999, 5.2.
 */
export function encodeRgb(linear: number): number {
  const inside = Math.min(1, Math.max(0, linear));
  return inside <= 0.0031308 ? 12.92 * inside : 1.055 * inside ** (1 / 2.4) - 0.055;
}
