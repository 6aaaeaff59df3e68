import type { MendLimit, Shift } from './mend-problem.ts';

/** Step of the central differences, CIELAB and gloss units. */
const stepSize = 1e-4;

/** A limit's slope at a point: excess + slopes . (change of the eight shifts) . */
export interface Slope {
  readonly excess: number;
  readonly first: readonly number[];
  readonly second: readonly number[];
}

const moved = (shift: Shift, axis: number, by: number): Shift => shift.map((value, index) => (index === axis ? value + by : value)) as unknown as Shift;

export function slopeOf(limit: MendLimit, first: Shift, second: Shift): Slope {
  const axes = [0, 1, 2, 3];
  return {
    excess: limit.excess(first, second),
    first: axes.map((axis) => (limit.excess(moved(first, axis, stepSize), second) - limit.excess(moved(first, axis, -stepSize), second)) / (2 * stepSize)),
    second: axes.map((axis) => (limit.excess(first, moved(second, axis, stepSize)) - limit.excess(first, moved(second, axis, -stepSize))) / (2 * stepSize)),
  };
}
