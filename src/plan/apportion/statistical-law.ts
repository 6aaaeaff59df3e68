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
}

/** Share that both are where nothing else is asked. Common practice, no source. */
export const usualShare = 0.95;

/** Where the quantiles come from. */
export const quantileSource = 'chi-square with three degrees of freedom for colour, standard normal for gloss (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.6 and 1.3.6.6.1)';

const bandQuantile = (share: number): number => normalQuantile((1 + share) / 2);

/**
 * The law for parts that are normal about their targets: a share of them is in tolerance, and a joint is to hold in a share of the cabins. The difference
 * of two parts is normal again, with the sum of the variances.
 */
export function statisticalLaw({ inTolerance = usualShare, confidence = usualShare }: { readonly inTolerance?: number | undefined; readonly confidence?: number | undefined }): StatisticalLaw {
  return { inTolerance, confidence, radiusSds: radialQuantile(inTolerance), bandSds: bandQuantile(inTolerance) };
}
