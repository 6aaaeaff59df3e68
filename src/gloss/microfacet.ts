/**
 * Distribution of facet normals of the GGX model, per unit of solid angle.
 *
 * `sineSquare` of the angle between facet and surface normal 0..1, width alpha above 0; integrates to 1 over the projected hemisphere.
 * The sine is asked for since near the normal it cannot be had from the cosine with any accuracy.
 * Source: B. Walter, S. R. Marschner, H. Li, K. E. Torrance, Microfacet models for refraction through rough surfaces, EGSR 2007, eq. 33.
 */
export function facetDistribution(sineSquare: number, alpha: number): number {
  const square = alpha * alpha;
  const spread = sineSquare + (1 - sineSquare) * square;
  return square / (Math.PI * spread * spread);
}

/** Smith's auxiliary function of GGX for a direction of this cosine to the normal. Source: Walter et al. 2007, eq. 34. */
function lambda(cosine: number, alpha: number): number {
  const square = cosine * cosine;
  return (Math.sqrt(1 + (alpha * alpha * (1 - square)) / square) - 1) / 2;
}

/**
 * Share of facets that both directions see, shadowing and masking correlated by height; cosines above 0, result 0..1.
 *
 * Source: E. Heitz, Understanding the masking-shadowing function in microfacet-based BRDFs, JCGT 3(2) 2014, eq. 99.
 */
export const facetsSeen = (cosineIn: number, cosineOut: number, alpha: number): number =>
  1 / (1 + lambda(cosineIn, alpha) + lambda(cosineOut, alpha));
