import { normalCdf } from '../../readings/normal-distribution.ts';
import type { ApportionLimit } from './apportion-problem.ts';

/**
 * Share of the cabins in which the gloss of a joint is outside its limit, the difference of its parts being normal about that of their targets with
 * a deviation `sd`, gloss units. A difference that is to be small is so to both sides of nought; one that is to be large only to
 * its own side, since a contrast turned round is not the one that was wanted.
 */
export function glossFailing({ offset, limit }: ApportionLimit, sd: number): number {
  if (sd === 0) return offset > limit ? 1 : 0;
  return normalCdf((offset - limit) / sd) + (limit > 0 ? normalCdf((-offset - limit) / sd) : 0);
}

/** The largest deviation at which no more than the allowed share fails; 0 where the targets are on the limit. */
export function largestGlossSd(limit: ApportionLimit, allowed: number): number {
  let high = Math.max(1e-9, limit.limit - limit.offset);
  while (glossFailing(limit, high) <= allowed && high < 1e9) high *= 2;
  let low = 0;
  for (let tries = 0; tries < 100; tries++) {
    const middle = (low + high) / 2;
    if (glossFailing(limit, middle) <= allowed) low = middle;
    else high = middle;
  }
  return low;
}
