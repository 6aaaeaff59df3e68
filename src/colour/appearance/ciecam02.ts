import { coneResponses } from '../cone-response.ts';
import { transform } from '../three-by-three.ts';
import { achromaticSignal, appearanceOf, compressResponse, type AppearanceModel } from './appearance.ts';
import { viewingFactors, type ViewingConditions } from './viewing-conditions.ts';

const sharpen = coneResponses.cat02.forward;
const huntPointerEstevez = [0.38971, 0.68898, -0.07868, -0.22981, 1.18340, 0.04641, 0, 0, 1];
/** Hunt-Pointer-Estevez times the inverse of CAT02, row by row. */
const sharpToCones = [0, 3, 6].flatMap((row) => [0, 1, 2].map((column) =>
  huntPointerEstevez[row]! * coneResponses.cat02.inverse[column]!
  + huntPointerEstevez[row + 1]! * coneResponses.cat02.inverse[3 + column]!
  + huntPointerEstevez[row + 2]! * coneResponses.cat02.inverse[6 + column]!));

/**
 * CIECAM02 with its viewing conditions fixed.
 *
 * XYZ on the scale Y = 100 for the white. Negative cone responses are compressed with their sign kept; colours outside every
 * real gamut get the same odd continuation in lightness and chroma.
 * Source: CIE 159:2004, A colour appearance model for colour management systems: CIECAM02.
 */
export function ciecam02(conditions: ViewingConditions): AppearanceModel {
  const factors = viewingFactors(conditions);
  const { adaptation, luminanceLevel } = factors;
  const white = transform(sharpen, conditions.white);
  const gain = (index: 0 | 1 | 2): number => (adaptation * conditions.white[1]) / white[index] + 1 - adaptation;
  const gains = [gain(0), gain(1), gain(2)] as const;
  const responses = (xyz: readonly [number, number, number]): readonly [number, number, number] => {
    const sharpened = transform(sharpen, xyz);
    const cones = transform(sharpToCones, [sharpened[0] * gains[0], sharpened[1] * gains[1], sharpened[2] * gains[2]]);
    return [
      compressResponse(cones[0], luminanceLevel), compressResponse(cones[1], luminanceLevel), compressResponse(cones[2], luminanceLevel),
    ];
  };
  const whiteSignal = achromaticSignal(...responses(conditions.white));
  return (xyz) => appearanceOf(...responses(xyz), whiteSignal, factors, conditions.surround);
}
