import { coneResponses } from '../cone-response.ts';
import { transform } from '../three-by-three.ts';
import { achromaticSignal, appearanceOf, compressResponse, type AppearanceModel } from './appearance.ts';
import { viewingFactors, type ViewingConditions } from './viewing-conditions.ts';

const sharpen = coneResponses.cat16.forward;

/**
 * CAM16 with its viewing conditions fixed: adaptation and compression in one space of responses.
 *
 * XYZ on the scale Y = 100 for the white. Colours outside every real gamut are continued with the sign kept.
 * Source: Li, Li, Wang, Xu, Luo, Cui, Melgosa, Brill, Pointer, Color Research and Application 42, 703 (2017).
 */
export function cam16(conditions: ViewingConditions): AppearanceModel {
  const factors = viewingFactors(conditions);
  const { adaptation, luminanceLevel } = factors;
  const white = transform(sharpen, conditions.white);
  const gain = (index: 0 | 1 | 2): number => (adaptation * conditions.white[1]) / white[index] + 1 - adaptation;
  const gains = [gain(0), gain(1), gain(2)] as const;
  const responses = (xyz: readonly [number, number, number]): readonly [number, number, number] => {
    const sharpened = transform(sharpen, xyz);
    return [
      compressResponse(sharpened[0] * gains[0], luminanceLevel),
      compressResponse(sharpened[1] * gains[1], luminanceLevel),
      compressResponse(sharpened[2] * gains[2], luminanceLevel),
    ];
  };
  const whiteSignal = achromaticSignal(...responses(conditions.white));
  return (xyz) => appearanceOf(...responses(xyz), whiteSignal, factors, conditions.surround);
}
