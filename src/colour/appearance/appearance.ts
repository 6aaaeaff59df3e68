import type { Xyz } from '../../quantities.ts';
import type { Surround, ViewingFactors } from './viewing-conditions.ts';

/** Correlates of a colour's appearance. */
export interface Appearance {
  /** Lightness J, 100 for the white. */
  readonly lightness: number;
  /** Chroma C. */
  readonly chroma: number;
  /** Colourfulness M. */
  readonly colourfulness: number;
  /** Hue angle h in degrees, 0 <= h < 360. */
  readonly hue: number;
}

/** A colour appearance model with its viewing conditions fixed: XYZ (Y = 100 for the white) to correlates. */
export type AppearanceModel = (xyz: Xyz) => Appearance;

/** Power of the size with the sign kept: continues the models smoothly below zero, where no real surface lies. */
export function signedPower(base: number, exponent: number): number {
  return base < 0 ? -((-base) ** exponent) : base ** exponent;
}

/** Post-adaptation compression of one cone response, without the constant 0.1. */
export function compressResponse(response: number, luminanceLevel: number): number {
  const power = signedPower((luminanceLevel * response) / 100, 0.42);
  return (400 * power) / (27.13 + Math.abs(power));
}

/** Achromatic signal of compressed responses; the constants 0.1 and 0.305 of the standard cancel. */
export const achromaticSignal = (r: number, g: number, b: number): number => 2 * r + g + b / 20;

/**
 * Correlates from the compressed responses of colour and white, the part that CIECAM02 and CAM16 share.
 *
 * Responses without the constant 0.1. Neutral colours give chroma 0 and hue 0.
 * Source: CIE 159:2004; Li et al., Color Research and Application 42, 703 (2017).
 */
export function appearanceOf(
  r: number, g: number, b: number, whiteSignal: number, factors: ViewingFactors, surround: Surround,
): Appearance {
  const redGreen = r - (12 * g) / 11 + b / 11;
  const yellowBlue = (r + g - 2 * b) / 9;
  const radians = Math.atan2(yellowBlue, redGreen);
  const eccentricity = (Math.cos(radians + 2) + 3.8) / 4;
  const lightness = 100 * signedPower(achromaticSignal(r, g, b) / whiteSignal, surround.c * factors.exponent);
  const opponent = Math.sqrt(redGreen * redGreen + yellowBlue * yellowBlue);
  const t = ((50000 / 13) * surround.Nc * factors.induction * eccentricity * opponent) / (r + g + 1.05 * b + 0.305);
  const chroma = signedPower(t, 0.9) * signedPower(lightness / 100, 0.5) * factors.chromaFactor;
  const degrees = (radians * 180) / Math.PI;
  return {
    lightness, chroma,
    colourfulness: chroma * factors.colourfulnessFactor,
    hue: degrees < 0 ? (degrees + 360) % 360 : degrees,
  };
}
