import { noShift } from './mend-problem.ts';
import type { MendItem, MendLimit, Shift, ShiftBox } from './mend-problem.ts';

/** Boxes that are looked into before the question is left open. */
const mostBoxes = 3000;
/** An excess this small counts as none. */
const tolerance = 1e-5;

const restBox: ShiftBox = { low: noShift, high: noShift };

const reachBox = ({ down, up }: MendItem): ShiftBox => ({ low: down.map((value) => -value) as unknown as Shift, high: up });

/**
 * Which items must change for a limit to hold that is exceeded as things are, whatever else changes: those without which it cannot be brought to hold
 * within the reach of the other. Both where neither can do it alone; an empty list where nothing can; undefined where no more is known than that one of them
 * must. Proved by bounds over boxes of shifts that are halved until the bound tells, so it holds for limits that are not convex.
 * Source: branch and bound, A. H. Land and A. G. Doig, Econometrica 28 (1960) 497, with interval bounds (R. E. Moore, Interval Analysis, 1966).
 */
export function mustChange(limit: MendLimit, items: readonly MendItem[]): readonly number[] | undefined {
  const reach = limit.items.flatMap((item) => [items[item].down, items[item].up]);
  const last = known.get(limit);
  if (last?.reach.every((shift, index) => shift === reach[index]) === true) return last.needed;
  const needed = needs(limit, items);
  known.set(limit, { reach, needed });
  return needed;
}

/** A search for the joints that stand in the way asks for one limit many times over, with the reach as it is. */
const known = new WeakMap<MendLimit, { readonly reach: readonly Shift[]; readonly needed: readonly number[] | undefined }>();

function needs(limit: MendLimit, items: readonly MendItem[]): readonly number[] | undefined {
  const { leastExcess, items: [first, second] } = limit;
  if (leastExcess === undefined) return undefined;
  const [one, other] = [reachBox(items[first]), reachBox(items[second])];
  const never = (a: ShiftBox, b: ShiftBox): boolean => isNever(limit.excess, leastExcess, a, b);
  if (first === second) return never(one, one) ? [] : undefined;
  const [firstAlone, secondAlone] = [never(one, restBox), never(restBox, other)];
  if (firstAlone && secondAlone && never(one, other)) return [];
  const needed = [...(secondAlone ? [first] : []), ...(firstAlone ? [second] : [])];
  return needed.length === 0 ? undefined : needed;
}

/** Whether it is proved that a limit holds nowhere in two boxes. */
function isNever(excess: MendLimit['excess'], leastExcess: NonNullable<MendLimit['leastExcess']>, first: ShiftBox, second: ShiftBox): boolean {
  const open: (readonly [ShiftBox, ShiftBox])[] = [[first, second]];
  for (let looked = 0; open.length > 0; looked++) {
    const [a, b] = open.pop()!;
    if (leastExcess(a, b) > tolerance) continue;
    if (looked >= mostBoxes || excess(middleOf(a), middleOf(b)) <= tolerance) return false;
    const [side, axis] = widest(a, b);
    if (side < 0) return false;
    const halves = halvesOf(side === 0 ? a : b, axis);
    open.push(...halves.map((half): readonly [ShiftBox, ShiftBox] => (side === 0 ? [half, b] : [a, half])));
  }
  return true;
}

const middleOf = ({ low, high }: ShiftBox): Shift => low.map((value, axis) => (value + high[axis]) / 2) as unknown as Shift;

/** The widest axis of colour of two boxes; none where both are points. Gloss has its own limits, which are straight. */
function widest(first: ShiftBox, second: ShiftBox): readonly [side: number, axis: number] {
  let [side, axis, most] = [-1, -1, 1e-6];
  for (const [which, { low, high }] of [first, second].entries()) {
    for (const each of [0, 1, 2]) if (high[each] - low[each] > most) [side, axis, most] = [which, each, high[each] - low[each]];
  }
  return [side, axis];
}

function halvesOf({ low, high }: ShiftBox, axis: number): readonly ShiftBox[] {
  const middle = (low[axis] + high[axis]) / 2;
  const at = (shift: Shift): Shift => shift.map((value, each) => (each === axis ? middle : value)) as unknown as Shift;
  return [{ low, high: at(high) }, { low: at(low), high }];
}
