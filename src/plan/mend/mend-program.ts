import { withinTime } from '../deadline.ts';
import type { Deadline } from '../deadline.ts';
import { minimise, ProgramRows } from '../solver/highs-solver.ts';
import type { ProgramResult } from '../solver/highs-solver.ts';
import type { MendCut } from './mend-cut.ts';
import { glossWeight, shiftSize } from './mend-problem.ts';
import type { MendItem, Shift } from './mend-problem.ts';

/** Items that cuts tie together, with what is settled of them. */
export interface MendComponent {
  readonly items: readonly { readonly index: number; readonly item: MendItem; readonly settled?: ItemChange }[];
  readonly cuts: readonly MendCut[];
}

/** Whether an item changes at all, and whether its gloss does. */
export interface ItemChange {
  readonly changes: boolean;
  readonly gloss: boolean;
}

/** The least costly changes of a component within its cuts, and among these the smallest shifts. */
export interface MendedComponent {
  readonly status: ProgramResult['status'];
  /** By item; undefined where nothing was found. */
  readonly found: ReadonlyMap<number, { readonly shift: Shift; readonly change: ItemChange }> | undefined;
  /** No changes within the cuts cost less. */
  readonly bound: number;
}

/** Columns of an item: up and down of each axis, whether it changes, whether its gloss does, and its steps of gloss. */
const width = 11;
const changes = 8;
const glossChanges = 9;
const steps = 10;
/** Largest number in an objective of costs and shifts together: beyond it they are minimised one after the other. */
const mostWeight = 1e5;
/** Share of the dearest item by which the second program may pass the cost of the first. */
const costSlack = 1e-7;

interface Layout {
  readonly count: number;
  readonly upper: Float64Array;
  readonly integer: Int32Array;
  readonly cost: Float64Array;
  readonly size: Float64Array;
  readonly rows: ProgramRows;
}

/** Sets of changes of one component that are tried one by one; where there are more, a mixed-integer program finds the best. */
const mostSets = 24;

/** Solves one component: cost first, then the sum of shifts, exactly so whatever the costs are. */
export async function mendComponent(component: MendComponent, until?: Deadline): Promise<MendedComponent> {
  const sets = component.items.every(({ settled }) => settled === undefined) ? changeSets(component) : undefined;
  return sets === undefined ? byProgram(component, until) : bySets(component, sets, until);
}

interface ChangeSet {
  readonly cost: number;
  readonly changes: readonly ItemChange[];
}

const still: ItemChange = { changes: false, gloss: false };

/** All sets of changes of a component that could serve its cuts, the least costly first; undefined where they are too many to try. */
function changeSets({ items, cuts }: MendComponent): readonly ChangeSet[] | undefined {
  const asksGloss = (index: number): boolean => cuts.some(({ sides }) => sides.some(({ item, slopes }) => item === index && slopes[3] !== 0));
  let sets: readonly ChangeSet[] = [{ cost: 0, changes: [] }];
  for (const { index, item } of items) {
    const withGloss = asksGloss(index);
    const ways: { readonly change: ItemChange; readonly cost: number }[] = [
      { change: { changes: true, gloss: withGloss && item.glossCost === 0 }, cost: item.cost },
      ...(item.cost > 0 ? [{ change: still, cost: 0 }] : []), ...(withGloss && item.glossCost > 0 ? [{ change: { changes: true, gloss: true }, cost: item.cost + item.glossCost }] : []),
    ];
    if (sets.length * ways.length > mostSets) return undefined;
    sets = sets.flatMap((set) => ways.map(({ change, cost }) => ({ cost: set.cost + cost, changes: [...set.changes, change] })));
  }
  return [...sets].sort((a, b) => a.cost - b.cost);
}

/** The first sets in cost that serve, and among those of one cost the one with the smallest shifts: a linear program each. */
async function bySets({ items, cuts }: MendComponent, sets: readonly ChangeSet[], until: Deadline | undefined): Promise<MendedComponent> {
  const moves = (changes: readonly ItemChange[]): ReadonlySet<number> => new Set(items.filter((_, place) => changes[place].changes).map(({ index }) => index));
  let best: { readonly cost: number; readonly size: number; readonly found: NonNullable<MendedComponent['found']> } | undefined;
  for (const { cost, changes } of sets) {
    if (best !== undefined && cost > best.cost) break;
    const moving = moves(changes);
    if (cuts.some(({ sides, most, either }) => (either === true || most < 0) && !sides.some(({ item }) => moving.has(item)))) continue;
    const settled = { items: items.map((each, place) => ({ ...each, settled: changes[place] })), cuts };
    const { status, found } = await byProgram(settled, until);
    if (status === 'time limit') return { status, found: best?.found ?? found, bound: cost };
    if (found === undefined) continue;
    const size = [...found.values()].reduce((sum, { shift }) => sum + shiftSize(shift), 0);
    if (best === undefined || size < best.size) best = { cost, size, found };
  }
  return best === undefined ? { status: 'infeasible', found: undefined, bound: Infinity } : { status: 'optimal', found: best.found, bound: best.cost };
}

async function byProgram(component: MendComponent, until: Deadline | undefined): Promise<MendedComponent> {
  const layout = layOut(component);
  const { count, upper, cost, size, rows } = layout;
  const integer = layout.integer.some((value) => value === 1) ? { integer: layout.integer } : {};
  const solve = (objective: Float64Array): Promise<ProgramResult> =>
    minimise({ cost: objective, lower: new Float64Array(count), upper, ...integer }, rows, until === undefined ? {} : withinTime(until));
  const reach = size.reduce((sum, value, column) => sum + value * upper[column], 0);
  const unit = costUnit(cost);
  const weight = unit === 0 ? 0 : Math.max(1, 1.01 * reach) / unit;
  const together = weight * Math.max(0, ...cost) <= mostWeight;
  const first = await solve(together ? size.map((value, column) => value + weight * cost[column]) : cost);
  // What the shifts can add to a bound of both is taken off it again.
  const costBound = !together ? first.bound : weight === 0 ? 0 : (first.bound - reach) / weight;
  const bound = Math.max(0, unit === 0 ? 0 : Math.ceil(costBound / unit - 1e-6) * unit);
  if (first.values === undefined || together) return { status: first.status, found: foundIn(component, first.values), bound };
  const dearest = Math.max(...cost);
  const columns = Array.from(cost.keys()).filter((column) => cost[column] > 0);
  const reached = columns.reduce((sum, column) => sum + cost[column] * Math.round(first.values![column]), 0);
  rows.add(-Infinity, reached / dearest + costSlack, columns, columns.map((column) => cost[column] / dearest));
  const second = await solve(size);
  const values = second.values ?? first.values;
  return { status: first.status === 'optimal' ? second.status === 'infeasible' ? 'optimal' : second.status : first.status, found: foundIn(component, values), bound: first.status === 'optimal' ? reached : bound };
}

/** The largest amount of which all costs are whole multiples, hundredths at the finest; 0 where nothing costs anything. */
function costUnit(costs: Float64Array): number {
  let unit = 0;
  for (const cost of costs) {
    let [a, b] = [Math.round(cost * 100), unit];
    while (b > 0) [a, b] = [b, a % b];
    unit = a;
  }
  return unit / 100;
}

function foundIn({ items }: MendComponent, values: Float64Array | undefined): MendedComponent['found'] {
  if (values === undefined) return undefined;
  return new Map(items.map(({ index, item, settled }, place) => {
    const at = place * width;
    const shift = [0, 1, 2, 3].map((axis) => values[at + 2 * axis] - values[at + 2 * axis + 1]) as unknown as Shift;
    const moved = (axes: readonly number[]): boolean => axes.some((axis) => Math.abs(shift[axis]) > 1e-7);
    const change = settled ?? {
      changes: item.cost > 0 ? values[at + changes] > 0.5 : moved([0, 1, 2, 3]),
      gloss: item.glossCost > 0 ? values[at + glossChanges] > 0.5 : moved([3]),
    };
    return [index, { shift, change }] as const;
  }));
}

function layOut({ items, cuts }: MendComponent): Layout {
  const own = items.length * width;
  const count = own + cuts.filter(({ choice }) => choice !== undefined).length;
  let nextChoice = own;
  const layout: Layout = {
    count, upper: new Float64Array(count).fill(1), integer: new Int32Array(count), cost: new Float64Array(count), size: new Float64Array(count), rows: new ProgramRows(),
  };
  const placeOf = new Map(items.map(({ index }, place) => [index, place]));
  items.forEach(({ item, settled }, place) => layOutItem(item, settled, place * width, layout));
  for (const { sides, most, either, choice } of cuts) {
    if (either === true) {
      const changing = sides.flatMap(({ item }) => { const place = placeOf.get(item); return place === undefined || items[place].settled !== undefined ? [] : [place * width + changes]; });
      if (changing.length > 0) layout.rows.add(1, Infinity, changing, changing.map(() => 1));
      continue;
    }
    const columns: number[] = [];
    const values: number[] = [];
    for (const { item, slopes } of sides) {
      const place = placeOf.get(item);
      if (place === undefined) continue;
      slopes.forEach((value, axis) => {
        if (value === 0) return;
        columns.push(place * width + 2 * axis, place * width + 2 * axis + 1);
        values.push(value, -value);
      });
    }
    if (choice === undefined) {
      layout.rows.add(-Infinity, most, columns, values);
      continue;
    }
    // 1 where it is on the upper side. The ends of its range make the other row say nothing.
    const column = nextChoice++;
    layout.integer[column] = 1;
    const { at, least, range: [lowest, highest] } = choice;
    layout.rows.add(lowest - at, Infinity, [...columns, column], [...values, lowest - least]);
    layout.rows.add(-Infinity, -least - at, [...columns, column], [...values, -least - highest]);
  }
  return layout;
}

function layOutItem(item: MendItem, settled: ItemChange | undefined, at: number, { upper, integer, cost, size, rows }: Layout): void {
  for (const axis of [0, 1, 2, 3]) {
    for (const [way, reach] of [[0, item.up[axis]], [1, item.down[axis]]] as const) {
      const column = at + 2 * axis + way;
      upper[column] = settled !== undefined && !(axis === 3 ? settled.gloss : settled.changes) ? 0 : reach;
      size[column] = axis === 3 ? glossWeight : 1;
      if (upper[column] > 0 && settled === undefined) rows.add(-Infinity, 0, [column, at + (axis === 3 ? glossChanges : changes)], [1, -reach]);
    }
  }
  if (settled === undefined) {
    // What costs nothing needs no counting.
    if (item.cost > 0 || item.glossCost > 0) rows.add(-Infinity, 0, [at + glossChanges, at + changes], [1, -1]);
    if (item.cost > 0) integer[at + changes] = 1;
    if (item.glossCost > 0) integer[at + glossChanges] = 1;
    cost[at + changes] = item.cost;
    cost[at + glossChanges] = item.glossCost;
  } else {
    upper[at + changes] = 0;
    upper[at + glossChanges] = 0;
  }
  if (item.glossStep === undefined || item.glossStep <= 0 || (settled !== undefined && !settled.gloss)) {
    upper[at + steps] = 0;
    return;
  }
  // Steps are counted from the lowest gloss that is within reach.
  const [least, most] = [Math.floor(item.down[3] / item.glossStep + 1e-9), Math.floor(item.up[3] / item.glossStep + 1e-9)];
  integer[at + steps] = 1;
  upper[at + steps] = least + most;
  rows.add(-least * item.glossStep, -least * item.glossStep, [at + 6, at + 7, at + steps], [1, -1, -item.glossStep]);
}
