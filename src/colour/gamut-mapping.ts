import type { Lab } from '../quantities.ts';
import { labToXyz } from './cielab.ts';
import type { DisplayGamut, Rgb } from './rgb-gamut.ts';
import { displayWhite, xyzToLinearRgb } from './rgb-gamut.ts';

/** Rounding of a colour on the border, in linear light: a hundredth of the smallest 8 bit step of sRGB. */
const borderTolerance = 3e-6;
const halvings = 40;

const linear = (lab: Lab, gamut: DisplayGamut): Rgb => xyzToLinearRgb(labToXyz(lab, displayWhite), gamut);

/** Whether a display shows a CIELAB colour (against the white of the display) as it is; false for a colour that is not finite. */
export const inDisplayGamut = (lab: Lab, gamut: DisplayGamut): boolean =>
  linear(lab, gamut).every((channel) => channel >= -borderTolerance && channel <= 1 + borderTolerance);

/**
 * The CIELAB colour that a display shows in place of one it cannot: same lightness and hue angle, the most chroma that it has.
 *
 * CIELAB against the white of the display; lightness is first cut to 0..100. A colour inside the gamut comes back as it is.
 * Source: reduction of chroma at constant hue and lightness as in CSS Color Module Level 4, 13.2, in CIELAB and by bisection;
 * lines of constant CIELAB hue look bluish-purple for strong blues, which cabin colours seldom reach.
 */
export function mapToGamut(lab: Lab, gamut: DisplayGamut): Lab {
  if (inDisplayGamut(lab, gamut)) return lab;
  const lightness = Math.min(100, Math.max(0, lab[0]));
  const withChroma = (share: number): Lab => [lightness, share * lab[1], share * lab[2]];
  let inside = 0;
  let outside = 1;
  for (let i = 0; i < halvings; i += 1) {
    const middle = (inside + outside) / 2;
    if (inDisplayGamut(withChroma(middle), gamut)) inside = middle;
    else outside = middle;
  }
  return withChroma(inside);
}
