import { normalQuantile } from './normal-distribution.ts';

export type DecisionRuleName = 'guarded' | 'simple';

export interface DecisionInput {
  readonly rule: DecisionRuleName;
  /** Confidence p of the guarded rule, above 0.5 and below 1. */
  readonly confidence: number;
  /** Probability that everything asked for is within its limits. */
  readonly within: number;
  /** Largest number of standard uncertainties that a noise-corrected value lies beyond its limit. */
  readonly excess: number;
  /** The values themselves, noise left aside, are all within their limits. */
  readonly inside: boolean;
}

/**
 * Verdict on one check from what is known of its value.
 * `guarded`: holds with probability >= p, clashes with probability <= 1 - p and an excess of at least the p quantile
 * of the normal distribution (1.645 for 0.95), open between: guard bands on both sides in the manner of
 * JCGM 106:2012, 8.3, and ISO 14253-1:2017. `simple`: value against limit, no guard band (JCGM 106:2012, 8.2).
 */
export function decide({ rule, confidence, within, excess, inside }: DecisionInput): 'holds' | 'clashes' | 'open' {
  if (rule === 'simple') return inside ? 'holds' : 'clashes';
  if (within >= confidence) return 'holds';
  return within <= 1 - confidence && excess >= normalQuantile(confidence) ? 'clashes' : 'open';
}
