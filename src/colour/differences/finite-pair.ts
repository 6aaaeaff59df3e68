import type { Lab } from '../../quantities.ts';

/** True when all six coordinates are finite numbers; a difference of anything else is NaN. */
export const isFinitePair = (standard: Lab, trial: Lab): boolean =>
  // Infinities of either sign survive a sum, as themselves or as NaN.
  Number.isFinite(standard[0] + standard[1] + standard[2] + trial[0] + trial[1] + trial[2]);
