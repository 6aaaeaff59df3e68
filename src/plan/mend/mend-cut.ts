import type { MendProblem, Shift } from './mend-problem.ts';
import { slopeOf } from './slope.ts';

/** A limit met from outside by its slope at one point: a sum over the shifts of its items that must not pass `most`. */
export interface MendCut {
  readonly id: number;
  readonly limit: number;
  /** Holds wherever the limit does, not near the point alone. */
  readonly convex: boolean;
  readonly sides: readonly { readonly item: number; readonly slopes: readonly number[] }[];
  readonly most: number;
  /** Not a slope at all: one of its items must change, however far. */
  readonly either?: true;
}

/** Slopes below this count as none. */
const leastSlope = 1e-9;

/** The cut of a limit at given shifts. */
export function cutAt({ limits }: MendProblem, index: number, shifts: readonly Shift[], id: number): MendCut {
  const limit = limits[index];
  const slope = slopeOf(limit, shifts[limit.items[0]], shifts[limit.items[1]]);
  const slopes = new Map<number, number[]>();
  let most = -slope.excess;
  for (const [side, item] of limit.items.entries()) {
    const own = slopes.get(item) ?? [0, 0, 0, 0];
    (side === 0 ? slope.first : slope.second).forEach((value, axis) => {
      most += value * shifts[item][axis];
      if (Math.abs(value) >= leastSlope) own[axis] += value;
    });
    slopes.set(item, own);
  }
  return { id, limit: index, convex: limit.convex, most, sides: [...slopes].map(([item, own]) => ({ item, slopes: own })) };
}

/** What a limit that is exceeded as things are asks for in any case: that one of its items changes. */
export const eitherChanges = ({ limits }: MendProblem, index: number, id: number): MendCut =>
  ({ id, limit: index, convex: true, either: true, most: 0, sides: [...new Set(limits[index].items)].map((item) => ({ item, slopes: [0, 0, 0, 0] })) });
