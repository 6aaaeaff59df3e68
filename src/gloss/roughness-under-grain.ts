import type { GlossUnits } from '../quantities.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';
import { roughnessOfGloss } from './roughness-of-gloss.ts';
import { bodyGloss, simulateGloss } from './simulate-gloss.ts';

export interface GlossReadingOf {
  readonly gloss: GlossUnits;
  readonly angle: GlossMeterAngle;
  /** Refractive index of the surface. */
  readonly n: number;
  /** Luminance factor of the body, 0..1, whose scattered light a glossmeter takes for gloss. */
  readonly reflectance: number;
}

export interface FacetWidth {
  /** Width alpha of GGX facets, {@link sharpestFacets}..1. */
  readonly alpha: number;
  /** How the reading was met: `matt` below the least gloss of the model, `mirror` above that of a mirror of this index. */
  readonly met: 'yes' | 'matt' | 'mirror';
}

/** Facets narrower than this cannot be told from a mirror on a picture. */
export const sharpestFacets = 0.002;

/** Width of the facets of a surface with this gloss, that of the body taken off: grain and facets together, as a glossmeter sees them. */
export function facetsOfGloss({ gloss, angle, n, reflectance }: GlossReadingOf): FacetWidth {
  const surface = gloss - bodyGloss(Math.min(1, Math.max(0, reflectance)), angle);
  const alpha = surface > 0 ? roughnessOfGloss(surface, n, angle) : undefined;
  if (alpha !== undefined) return { alpha: Math.max(sharpestFacets, alpha), met: 'yes' };
  return surface > simulateGloss(n, 0, angle) ? { alpha: sharpestFacets, met: 'mirror' } : { alpha: 1, met: 'matt' };
}

/**
 * Width of the facets for a picture whose grain is drawn by its own heights.
 *
 * `meanSquareSlope` is that of the drawn heights, Sdq squared. A glossmeter sees grain and facets as one spread of slopes, so the grain's part is taken
 * off: alpha^2 less the mean square slope, since a normal spread of slopes with that mean square has the width Sdq (Beckmann's alpha^2 is
 * twice the mean square slope along one axis, and Sdq^2 is the sum over two). A model: GGX has longer tails, and slopes of a grain are no facets.
 */
export const facetsUnderGrain = (alpha: number, meanSquareSlope: number): number =>
  Math.max(sharpestFacets, Math.sqrt(Math.max(0, alpha * alpha - meanSquareSlope)));
