/** Which sides of a comparison can be given more spots: a master is measured seldom, and a cap has no second side at all. */
export type GrowingSides = 'both' | 'second';

/** Why more spots help or do not. */
export type OpenReason =
  | { readonly kind: 'too few spots'; readonly spots: number }
  /** With instruments that agreed, this many spots would decide. */
  | { readonly kind: 'instruments disagree'; readonly spotsOnOneInstrument: number }
  /** Nobody can decide it by measuring more: the value lies on its limit. */
  | { readonly kind: 'on the limit' };

/**
 * Smallest number of spots above `have` and up to `maximum` at which a check would be decided, the values staying what they are.
 * `decided(spots, withInstruments)` answers for one number of spots on each side, with or without the instruments' term.
 * The uncertainty falls with every spot, so the search halves; where no number is enough, it asks again without the
 * instruments' term to tell what stands in the way.
 */
export function spotsThatDecide(
  have: number, maximum: number, decided: (spots: number, withInstruments: boolean) => boolean,
): OpenReason {
  const spots = smallest(have + 1, maximum, (n) => decided(n, true));
  if (spots !== undefined) return { kind: 'too few spots', spots };
  const alone = smallest(Math.min(have, maximum), maximum, (n) => decided(n, false));
  return alone === undefined ? { kind: 'on the limit' } : { kind: 'instruments disagree', spotsOnOneInstrument: alone };
}

function smallest(from: number, to: number, decided: (n: number) => boolean): number | undefined {
  if (from > to || !decided(to)) return undefined;
  let low = from;
  let high = to;
  while (low < high) {
    const middle = Math.floor(0.5 * (low + high));
    if (decided(middle)) high = middle;
    else low = middle + 1;
  }
  return high;
}
