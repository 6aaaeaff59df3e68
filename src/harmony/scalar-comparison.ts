import { limitExcess } from '../readings/limit-excess.ts';
import { normalCdf } from '../readings/normal-distribution.ts';

/** A value of one dimension against its limit, as `decide()` needs it. */
export interface ScalarComparison {
  /** Probability that the true value is allowed. */
  readonly within: number;
  /** Standard uncertainties beyond the limit; negative inside. */
  readonly excess: number;
  /** The value itself is allowed. */
  readonly inside: boolean;
}

const share = (z: number): number => (Number.isNaN(z) ? 0.5 : normalCdf(z));

/** A signed difference that may lie between `-limit` and `limit`, with its standard uncertainty; both in the same unit. */
export function withinBand(difference: number, uncertainty: number, limit: number): ScalarComparison {
  const value = Math.abs(difference);
  const inside = value <= limit;
  const within = uncertainty > 0 ? share((limit - difference) / uncertainty) - share((-limit - difference) / uncertainty) : Number(inside);
  return { within: Math.max(0, within), excess: limitExcess(value, uncertainty, limit), inside };
}

/** A value that may be at most `limit`. */
export function atMost(value: number, uncertainty: number, limit: number): ScalarComparison {
  const inside = value <= limit;
  return { within: uncertainty > 0 ? share((limit - value) / uncertainty) : Number(inside), excess: limitExcess(value, uncertainty, limit), inside };
}

/** A signed difference whose size must be at least `limit`. */
export function outsideBand(difference: number, uncertainty: number, limit: number): ScalarComparison {
  const value = Math.abs(difference);
  const inside = value >= limit;
  const within = uncertainty > 0 ? 1 - withinBand(difference, uncertainty, limit).within : Number(inside);
  return { within, excess: limitExcess(value, uncertainty, limit, 'at least'), inside };
}
