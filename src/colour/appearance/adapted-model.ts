import { transform } from '../three-by-three.ts';
import { achromaticSignal, appearanceOf, compressResponse, type AppearanceModel } from './appearance.ts';
import { viewingFactors, type ViewingConditions } from './viewing-conditions.ts';

/**
 * A model that adapts in sharpened responses to the white and compresses the responses of the cones, which `toCones` makes of the adapted ones;
 * where it is absent they are compressed as they are. The matrices are row by row.
 *
 * XYZ on the scale Y = 100 for the white. Colours outside every real gamut are continued with the sign kept.
 */
export function adaptedModel(conditions: ViewingConditions, sharpen: readonly number[], toCones?: readonly number[]): AppearanceModel {
  const factors = viewingFactors(conditions);
  const { adaptation, luminanceLevel } = factors;
  const white = transform(sharpen, conditions.white);
  const gain = (index: 0 | 1 | 2): number => (adaptation * conditions.white[1]) / white[index] + 1 - adaptation;
  const gains = [gain(0), gain(1), gain(2)] as const;
  const responses = (xyz: readonly [number, number, number]): readonly [number, number, number] => {
    const sharpened = transform(sharpen, xyz);
    const adapted = [sharpened[0] * gains[0], sharpened[1] * gains[1], sharpened[2] * gains[2]] as const;
    const [r, g, b] = toCones === undefined ? adapted : transform(toCones, adapted);
    return [compressResponse(r, luminanceLevel), compressResponse(g, luminanceLevel), compressResponse(b, luminanceLevel)];
  };
  const whiteSignal = achromaticSignal(...responses(conditions.white));
  return (xyz) => appearanceOf(...responses(xyz), whiteSignal, factors, conditions.surround);
}
