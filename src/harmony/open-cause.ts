import { scalarEventDecidedWith, scalarEventSpotsNeeded } from '../readings/scalar-event.ts';
import type { ScalarEvent } from '../readings/scalar-event.ts';
import type { OpenReason } from '../readings/spots-that-decide.ts';
import type { OpenCause } from './judgement.ts';

/** Why a check with data is open, and the number of spots that would decide it, if there is one. */
export interface CauseOfOpen {
  readonly cause: OpenCause;
  readonly spotsNeeded?: number;
}

/** So many times the largest sensible number of spots tell a scattering part from a value on its limit. */
export const manyTimes = 10;

/**
 * Words the reason why a check is open. `decidedWithout` says whether the check would be decided by `manyTimes` the largest number of spots
 * if the instruments agreed: where it would, the spread of the parts stands in the way; where not, the value is on the limit.
 */
export function causeOfOpen(reason: OpenReason, decidedWithout: () => boolean): CauseOfOpen {
  if (reason.kind === 'too few spots') return { cause: 'too few spots', spotsNeeded: reason.spots };
  if (reason.kind === 'instruments disagree') return { cause: 'instruments disagree' };
  return { cause: decidedWithout() ? 'spread of the part' : 'on the limit' };
}

/** Why checks in one dimension are open, and how many spots, none above `maximum`, would decide them. */
export const causeOfOpenScalar = (event: ScalarEvent, maximum: number): CauseOfOpen =>
  causeOfOpen(scalarEventSpotsNeeded(event, maximum), () => scalarEventDecidedWith(event, manyTimes * maximum));

/** The cause with whose spots count: those of the part alone where they are enough, else those of its master too. */
export function causeAgainstMaster(search: (grows: 'second' | 'both') => CauseOfOpen): CauseOfOpen & { readonly spotsOn?: 'part' | 'part and master' } {
  const own = search('second');
  if (own.cause === 'too few spots') return { ...own, spotsOn: 'part' };
  const both = search('both');
  return both.cause === 'too few spots' ? { ...both, spotsOn: 'part and master' } : both;
}
