import { normalQuantile } from '../../readings/normal-distribution.ts';
import { radialQuantile } from '../../readings/radial-quantile.ts';

/** How parts scatter where tolerances add by squares, and how often a joint is to hold. */
export interface StatisticalLaw {
  /** Share of the parts in tolerance, and share of the cabins in which a joint holds; 0.5 to below 1. */
  readonly inTolerance: number;
  readonly confidence: number;
  /** Standard deviations from the target to the edge of the ellipsoid, and to the edge of the band of gloss. */
  readonly radiusSds: number;
  readonly bandSds: number;
  /** What the root of the squares of two radii, and of two bands, comes to at the limit of a joint, as a factor. */
  readonly colourFactor: number;
  readonly glossFactor: number;
}

/** Share that both are where nothing else is asked. Common practice, no source. */
export const usualShare = 0.95;

/** Where the quantiles come from. */
export const quantileSource = 'chi-square with three degrees of freedom for colour, standard normal for gloss (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.6 and 1.3.6.6.1)';

const bandQuantile = (share: number): number => normalQuantile((1 + share) / 2);

/**
 * The law for parts that are normal about their targets: a share of them is in tolerance, and the difference of two, normal again with the
 * sum of the variances, stays within a limit in a share of the cabins. Exact for targets that are alike and one metric, else an approximation.
 */
export function statisticalLaw({ inTolerance = usualShare, confidence = usualShare }: { readonly inTolerance?: number | undefined; readonly confidence?: number | undefined }): StatisticalLaw {
  const [radiusSds, bandSds] = [radialQuantile(inTolerance), bandQuantile(inTolerance)];
  return { inTolerance, confidence, radiusSds, bandSds, colourFactor: radialQuantile(confidence) / radiusSds, glossFactor: bandQuantile(confidence) / bandSds };
}
