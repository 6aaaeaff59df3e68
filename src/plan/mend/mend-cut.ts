import { noShift } from './mend-problem.ts';
import type { MendProblem, Shift, StraightDistance } from './mend-problem.ts';
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
  /** A choice: the sum of the slopes and `at` is at least `least`, or no more than its negative; between the ends of `range` it is in any case. */
  readonly choice?: { readonly at: number; readonly least: number; readonly range: readonly [number, number] };
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

/** A distance from nought as it is, with the choice of its side; it holds everywhere. */
export function choiceOf(problem: MendProblem, index: number, { signed, least, range }: StraightDistance, id: number): MendCut {
  const straight = { items: problem.items, limits: [{ ...problem.limits[index], excess: signed }] };
  const { sides } = cutAt(straight, 0, problem.items.map(() => noShift), id);
  const at = signed(noShift, noShift);
  return { id, limit: index, convex: true, sides, most: Math.abs(at) - least, choice: { at, least, range } };
}

/** What a limit that is exceeded as things are asks for in any case: that one of these items changes, of both that it is of where nothing more is known. */
export const eitherChanges = ({ limits }: MendProblem, index: number, id: number, items: readonly number[] = limits[index].items): MendCut =>
  ({ id, limit: index, convex: true, either: true, most: 0, sides: [...new Set(items)].map((item) => ({ item, slopes: [0, 0, 0, 0] })) });
