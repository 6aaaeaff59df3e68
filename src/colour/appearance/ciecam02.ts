import type { Matrix3 } from '../../quantities.ts';
import { achromaticSignal, appearanceOf, compressResponse, type AppearanceModel } from './appearance.ts';
import { inverse, multiply, transform } from './three-by-three.ts';
import { viewingFactors, type ViewingConditions } from './viewing-conditions.ts';

const cat02: Matrix3 = [0.7328, 0.4296, -0.1624, -0.7036, 1.6975, 0.0061, 0.0030, 0.0136, 0.9834];
const huntPointerEstevez: Matrix3 = [0.38971, 0.68898, -0.07868, -0.22981, 1.18340, 0.04641, 0, 0, 1];
const cat02ToCones = multiply(huntPointerEstevez, inverse(cat02));

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
  const white = transform(cat02, conditions.white);
  const gain = (index: 0 | 1 | 2): number => (adaptation * conditions.white[1]) / white[index] + 1 - adaptation;
  const gains = [gain(0), gain(1), gain(2)] as const;
  const responses = (xyz: readonly [number, number, number]): readonly [number, number, number] => {
    const sharpened = transform(cat02, xyz);
    const cones = transform(cat02ToCones, [sharpened[0] * gains[0], sharpened[1] * gains[1], sharpened[2] * gains[2]]);
    return [
      compressResponse(cones[0], luminanceLevel), compressResponse(cones[1], luminanceLevel), compressResponse(cones[2], luminanceLevel),
    ];
  };
  const whiteSignal = achromaticSignal(...responses(conditions.white));
  return (xyz) => appearanceOf(...responses(xyz), whiteSignal, factors, conditions.surround);
}
