import type { GlossUnits } from '../quantities.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';
import { roughnessOfGloss } from './roughness-of-gloss.ts';
import { bodyGloss, simulateGloss } from './simulate-gloss.ts';

export interface GlossOfGrain {
  readonly gloss: GlossUnits;
  readonly angle: GlossMeterAngle;
  /** Refractive index of the surface. */
  readonly n: number;
  /** Luminance factor of the body, 0..1, whose scattered light a glossmeter takes for gloss. */
  readonly reflectance: number;
  /** Mean square slope of the heights that are drawn facet by facet, Sdq squared; 0 for a plain surface. */
  readonly meanSquareSlope: number;
}

export interface FacetWidth {
  /** Width alpha of the GGX facets that remain below the grain, {@link sharpestFacets}..1. */
  readonly alpha: number;
  /** How the reading was met: `matt` below the least gloss of the model, `mirror` above that of a mirror of this index. */
  readonly met: 'yes' | 'matt' | 'mirror';
}

/** Facets narrower than this cannot be told from a mirror on a picture. */
export const sharpestFacets = 0.002;

/**
 * Width of the facets for a picture whose grain is drawn by its own heights.
 *
 * A glossmeter sees grain and facets as one spread of slopes, so the gloss less that of the body gives the spread of both, and the grain's
 * part is taken off: alpha^2 less the mean square slope, since a normal spread of slopes with that mean square has the width Sdq (Beckmann's
 * alpha^2 is twice the mean square slope along one axis, and Sdq^2 is the sum over two). A model: GGX has longer tails, and slopes of a grain are no facets.
 */
export function facetsUnderGrain({ gloss, angle, n, reflectance, meanSquareSlope }: GlossOfGrain): FacetWidth {
  const surface = gloss - bodyGloss(Math.min(1, Math.max(0, reflectance)), angle);
  const total = surface > 0 ? roughnessOfGloss(surface, n, angle) : undefined;
  if (total === undefined) {
    return surface > simulateGloss(n, 0, angle) ? { alpha: sharpestFacets, met: 'mirror' } : { alpha: 1, met: 'matt' };
  }
  return { alpha: Math.max(sharpestFacets, Math.sqrt(Math.max(0, total * total - meanSquareSlope))), met: 'yes' };
}
