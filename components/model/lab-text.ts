import type { Lab } from '../../src/quantities.ts';
import { fixed } from '../../src/report/number-text.ts';

/** A colour's coordinates for reading: `L* 26.29, a* −0.89, b* −1.31`. */
export const labText = ([L, a, b]: Lab, decimals: number): string =>
  `L* ${fixed(L, decimals)}, a* ${fixed(a, decimals)}, b* ${fixed(b, decimals)}`;
