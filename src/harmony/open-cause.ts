import type { OpenReason } from '../readings/spots-that-decide.ts';
import type { OpenCause } from './judgement.ts';

/** Why a check with data is open, and the number of spots a side that would decide it, if there is one. */
export interface CauseOfOpen {
  readonly cause: OpenCause;
  readonly spotsNeeded?: number;
}

/**
 * Words the reason why a check is open. `decidedWithout` says whether the check would be decided if neither spread nor
 * instruments blurred it: where it would, the spread of the parts stands in the way; where not, the value is on the limit.
 */
export function causeOfOpen(reason: OpenReason, decidedWithout: () => boolean): CauseOfOpen {
  if (reason.kind === 'too few spots') return { cause: 'too few spots', spotsNeeded: reason.spots };
  if (reason.kind === 'instruments disagree') return { cause: 'instruments disagree' };
  return { cause: decidedWithout() ? 'spread of the part' : 'on the limit' };
}
