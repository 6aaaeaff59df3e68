import { minimise, ProgramRows } from '../solver/highs-solver.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import { glossWeight, noShift } from './mend-problem.ts';
import type { MendItem, MendProblem, Shift } from './mend-problem.ts';
import { slopeOf } from './slope.ts';

export interface MendSolution {
  readonly feasible: boolean;
  /** That no smaller set (or cheaper one) will do is proved, for limits that are convex. */
  readonly proved: boolean;
  readonly shifts: readonly Shift[];
  readonly changed: readonly number[];
}

export interface MendSolverOptions {
  readonly watch?: Watch;
  readonly timeLimitS?: number;
  /** Joints whose limits are looked at; all where absent. */
  readonly joints?: ReadonlySet<number>;
  /** Where to begin the slopes of limits that are not convex. */
  readonly from?: readonly Shift[];
}

/** An excess this small counts as none. */
const tolerance = 1e-5;
const mostCuts = 80;
/** Limits this near are met with a slope from the start where a plan goes on from another. */
const nearby = -0.5;
/** Columns of an item: up and down of each axis, whether it changes, whether its gloss does, and its steps of gloss. */
const width = 11;
const changes = 8;
const glossChanges = 9;
const steps = 10;

interface Cut {
  readonly limit: number;
  readonly columns: readonly number[];
  readonly values: readonly number[];
  readonly most: number;
}

/**
 * The least costly set of items to change, and within it the smallest sum of shifts, so that every limit holds. The limits are met from
 * outside by their slopes where they are exceeded, and the mixed-integer program solved again until none is.
 * Source: cutting planes, J. E. Kelley, Journal of the SIAM 8 (1960) 703.
 */
export async function solveMend(problem: MendProblem, options: MendSolverOptions = {}): Promise<MendSolution> {
  const cuts: Cut[] = [];
  let shifts: readonly Shift[] = options.from ?? problem.items.map(() => noShift);
  addCuts(problem, shifts, cuts, options, options.from !== undefined);
  if (options.from === undefined && cuts.length === 0) return { feasible: true, proved: true, shifts, changed: [] };
  let settled: readonly boolean[] | undefined;
  for (let round = 0; round < mostCuts; round++) {
    await step(options.watch, round / mostCuts, 'finding the least change');
    const found = await solve(problem, cuts, settled, options);
    if (found.shifts === undefined) {
      const impossible = found.status === 'infeasible';
      return { feasible: false, proved: impossible && cuts.every(({ limit }) => problem.limits[limit].convex), shifts: [], changed: [] };
    }
    shifts = found.shifts;
    const added = addCuts(problem, shifts, cuts, options, false);
    if (added > 0) continue;
    const changed = problem.items.flatMap((_, index) => (shifts[index].some((value) => Math.abs(value) > 1e-7) ? [index] : []));
    if (settled !== undefined) return { feasible: true, proved: cuts.every(({ limit }) => problem.limits[limit].convex), shifts: shifts.map(tidied), changed };
    // The set is settled; what is left is to make its shifts as small as they can be, free of the large numbers of the first stage.
    settled = problem.items.map((_, index) => changed.includes(index));
  }
  return { feasible: false, proved: false, shifts, changed: [] };
}

const tidied = (shift: Shift): Shift => shift.map((value) => (Math.abs(value) < 1e-7 ? 0 : value)) as unknown as Shift;

/** Adds a cut for every limit that is exceeded; how many. */
function addCuts(problem: MendProblem, shifts: readonly Shift[], cuts: Cut[], { joints }: MendSolverOptions, all: boolean): number {
  let added = 0;
  problem.limits.forEach((limit, index) => {
    if (joints?.has(limit.joint) === false) return;
    const [a, b] = limit.items;
    const excess = limit.excess(shifts[a], shifts[b]);
    const known = cuts.findIndex((cut) => cut.limit === index);
    if (excess <= tolerance && !(all && excess > nearby)) return;
    const slope = slopeOf(limit, shifts[a], shifts[b]);
    const columns: number[] = [];
    const values: number[] = [];
    let most = -slope.excess;
    for (const [item, own] of [[a, slope.first], [b, slope.second]] as const) {
      own.forEach((value, axis) => {
        most += value * shifts[item][axis];
        if (Math.abs(value) < 1e-9) return;
        columns.push(item * width + 2 * axis, item * width + 2 * axis + 1);
        values.push(value, -value);
      });
    }
    if (!limit.convex && known >= 0) cuts.splice(known, 1);
    cuts.push({ limit: index, columns, values, most });
    added++;
  });
  return added;
}

async function solve(
  problem: MendProblem, cuts: readonly Cut[], settled: readonly boolean[] | undefined, options: MendSolverOptions,
): Promise<{ readonly shifts: readonly Shift[] | undefined; readonly status: string }> {
  const { items } = problem;
  // Only items that some cut speaks of can be worth a change; the others have no columns.
  const active = [...new Set(cuts.flatMap((cut) => problem.limits[cut.limit].items))].sort((a, b) => a - b);
  const placeOf = new Map(active.map((item, place) => [item, place]));
  const count = active.length * width;
  if (count === 0) return { shifts: items.map(() => noShift), status: 'optimal' };
  const cost = new Float64Array(count);
  const upper = new Float64Array(count).fill(1);
  const integer = new Int32Array(count);
  const rows = new ProgramRows();
  // One change outweighs every sum of shifts; costs of money are brought to the size of such a count.
  const reach = items.reduce((sum, item) => sum + [...item.up, ...item.down].reduce((total, value) => total + value, 0), 0);
  const dearest = Math.max(1e-9, ...items.map((item) => item.cost + item.glossCost));
  const weight = settled === undefined ? Math.max(1, reach) / (Math.min(...items.map((item) => item.cost).filter((value) => value > 0), dearest)) : 0;
  active.forEach((index, place) => layOutItem(items[index], place * width, { cost, upper, integer, rows }, weight, settled?.[index]));
  for (const { columns, values, most } of cuts) {
    const placed = columns.map((column) => (placeOf.get(Math.floor(column / width)) ?? 0) * width + (column % width));
    const merged = mergedColumns(placed, values);
    rows.add(-Infinity, most, merged.columns, merged.values);
  }
  const result = await minimise({ cost, lower: new Float64Array(count), upper, integer }, rows, options.timeLimitS === undefined ? {} : { timeLimitS: options.timeLimitS });
  if (result.values === undefined) return { shifts: undefined, status: result.status };
  const values = result.values;
  return {
    status: result.status,
    shifts: items.map((_, index): Shift => {
      const place = placeOf.get(index);
      return place === undefined ? noShift : [0, 1, 2, 3].map((axis) => values[place * width + 2 * axis] - values[place * width + 2 * axis + 1]) as unknown as Shift;
    }),
  };
}

/** Both sides of a limit may be of one item: its columns then come twice. */
function mergedColumns(columns: readonly number[], values: readonly number[]): { readonly columns: number[]; readonly values: number[] } {
  const sums = new Map<number, number>();
  columns.forEach((column, index) => sums.set(column, (sums.get(column) ?? 0) + values[index]));
  return { columns: [...sums.keys()], values: [...sums.values()] };
}

interface Program {
  readonly cost: Float64Array;
  readonly upper: Float64Array;
  readonly integer: Int32Array;
  readonly rows: ProgramRows;
}

function layOutItem(item: MendItem, at: number, { cost, upper, integer, rows }: Program, weight: number, settled: boolean | undefined): void {
  for (const axis of [0, 1, 2, 3]) {
    for (const [way, reach] of [[0, item.up[axis]], [1, item.down[axis]]] as const) {
      const column = at + 2 * axis + way;
      upper[column] = settled === false ? 0 : reach;
      cost[column] = axis === 3 ? glossWeight : 1;
      if (reach > 0) rows.add(-Infinity, 0, [column, at + (axis === 3 ? glossChanges : changes)], [1, -reach]);
    }
  }
  rows.add(-Infinity, 0, [at + glossChanges, at + changes], [1, -1]);
  integer[at + changes] = 1;
  integer[at + glossChanges] = 1;
  cost[at + changes] = weight * item.cost;
  cost[at + glossChanges] = weight * item.glossCost;
  if (item.glossStep === undefined || item.glossStep <= 0) {
    upper[at + steps] = 0;
    return;
  }
  // Steps are counted from the lowest gloss that is within reach.
  const [least, most] = [Math.floor(item.down[3] / item.glossStep + 1e-9), Math.floor(item.up[3] / item.glossStep + 1e-9)];
  integer[at + steps] = 1;
  upper[at + steps] = least + most;
  rows.add(-least * item.glossStep, -least * item.glossStep, [at + 6, at + 7, at + steps], [1, -1, -item.glossStep]);
}
