import type { IsoDate } from '../quantities.ts';

const dayMs = 86_400_000;

/** Days from one day to another, negative where the second is the earlier; times of the day are left out of account. NaN for what is no day. */
export const dayCount = (from: IsoDate, to: IsoDate): number => Math.round((Date.parse(to.slice(0, 10)) - Date.parse(from.slice(0, 10))) / dayMs);
