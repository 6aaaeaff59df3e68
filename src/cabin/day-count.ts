import type { IsoDate } from '../quantities.ts';

const dayMs = 86_400_000;

/** Days from one day to another, negative where the second is the earlier; times of the day are left out of account. NaN for what is no day. */
export const dayCount = (from: IsoDate, to: IsoDate): number => Math.round((Date.parse(to.slice(0, 10)) - Date.parse(from.slice(0, 10))) / dayMs);

/** The day so many whole days after another, `YYYY-MM-DD`; before it where negative. Throws a RangeError for what is no day. */
export const dayAfter = (from: IsoDate, days: number): IsoDate => new Date(Date.parse(from.slice(0, 10)) + days * dayMs).toISOString().slice(0, 10);
