import type { GlossUnits } from '../quantities.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';

/** What one side of a comparison brings to the choice of the angle. */
export interface GlossSide {
  readonly grained: boolean;
  readonly gloss60?: GlossUnits;
}

/** GU60 above which 20 degrees separates better. Source: ASTM D523; ISO 2813:2014. */
export const highGlossFrom = 70;

/**
 * Angle at which two surfaces are compared.
 *
 * 60 degrees in general and for grained parts whatever their level; 20 degrees when both are smooth and both exceed 70 GU at 60 degrees;
 * 85 degrees (or another) only when `requested`. Does not depend on the order of the sides.
 * Source: 20 degrees above 70 GU60: ASTM D523, ISO 2813:2014. 60 degrees for low-gloss grains, where those suggest 85:
 * common practice, no source.
 */
export function chooseAngle(sides: readonly [GlossSide, GlossSide], requested?: GlossMeterAngle): GlossMeterAngle {
  if (requested !== undefined) return requested;
  return sides.every((side) => !side.grained && side.gloss60 !== undefined && side.gloss60 > highGlossFrom) ? 20 : 60;
}
