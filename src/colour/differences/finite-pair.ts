import type { Lab } from '../../quantities.ts';

/** True when all six coordinates are finite numbers; a difference of anything else is NaN. */
export const isFinitePair = (standard: Lab, trial: Lab): boolean =>
  // A finite number times zero is zero, anything else times zero is NaN.
  standard[0] * 0 + standard[1] * 0 + standard[2] * 0 + trial[0] * 0 + trial[1] * 0 + trial[2] * 0 === 0;
