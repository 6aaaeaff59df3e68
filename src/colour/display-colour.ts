import type { Lab, Xyz } from '../quantities.ts';
import { adaptXyz } from './adaptation.ts';
import { labToXyz, xyzToLab } from './cielab.ts';
import { difference } from './difference.ts';
import { inDisplayGamut, mapToGamut } from './gamut-mapping.ts';
import type { DisplayGamut } from './rgb-gamut.ts';
import { displayWhite, encodeRgb, xyzToLinearRgb } from './rgb-gamut.ts';

export interface DisplayColour {
  /** CSS colour in the wanted gamut, `color(srgb r g b)` or `color(display-p3 r g b)`. */
  readonly css: string;
  /** The same colour for sRGB in 8 bits, `#rrggbb`. */
  readonly hex: string;
  /** Whether the wanted gamut holds the colour; if not, `css` is the nearest of the same lightness and hue. */
  readonly inGamut: boolean;
  /** CIEDE2000 from the true colour to the one that `css` shows; 0 inside the gamut. */
  readonly error: number;
}

const encoded = (lab: Lab, gamut: DisplayGamut): number[] =>
  xyzToLinearRgb(labToXyz(mapToGamut(lab, gamut), displayWhite), gamut).map(encodeRgb);

const hexPair = (channel: number): string => Math.round(channel * 255).toString(16).padStart(2, '0');

/**
 * A colour under a light as a display can show it to an eye adapted to the display.
 *
 * Tristimulus values and the white of the same light and observer, white Y = 100. Adapted to the D65 white of the display by CAT16 with
 * complete adaptation, then mapped into the gamut by {@link mapToGamut}. Displays are specified for the 2 deg observer: 10 deg values are
 * shown as if they were 2 deg ones after adaptation of the white, an approximation. Values that are not finite give black, out of gamut,
 * with an error of NaN.
 * Source: CIE 248:2022 (CAT16); IEC 61966-2-1:1999; CSS Color Module Level 4.
 */
export function displayColour(xyz: Xyz, white: Xyz, gamut: DisplayGamut): DisplayColour {
  const lab = xyzToLab(adaptXyz(xyz, white, displayWhite, 'cat16'), displayWhite);
  if (!lab.every(Number.isFinite)) return { css: `color(${gamut} 0 0 0)`, hex: '#000000', inGamut: false, error: NaN };
  const inGamut = inDisplayGamut(lab, gamut);
  return {
    css: `color(${gamut} ${encoded(lab, gamut).map((channel) => Number(channel.toFixed(5))).join(' ')})`,
    hex: `#${encoded(lab, 'srgb').map(hexPair).join('')}`,
    inGamut,
    error: inGamut ? 0 : difference({ name: 'ciede2000' }, lab, mapToGamut(lab, gamut)),
  };
}
