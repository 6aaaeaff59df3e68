import type { Deadline } from '../deadline.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import { choiceOf, cutAt, eitherChanges } from './mend-cut.ts';
import type { MendCut } from './mend-cut.ts';
import { noShift, shiftSize } from './mend-problem.ts';
import type { MendItem, MendProblem, Shift } from './mend-problem.ts';
import { mendComponent } from './mend-program.ts';
import { mustChange } from './must-change.ts';
import { ShiftRepair } from './repair-shifts.ts';
import type { ItemChange, MendedComponent } from './mend-program.ts';

export interface MendSolution {
  readonly feasible: boolean;
  /** That no set of changes costs less is proved; where there is none, that there is none. */
  readonly proved: boolean;
  readonly shifts: readonly Shift[];
  readonly changed: readonly number[];
  /** What the changes cost, and what no set of changes can cost less than; infinite where there is none. */
  readonly cost: number;
  readonly bound: number;
  /** The time was over before the answer was found or proved. */
  readonly outOfTime: boolean;
}

export interface MendSolverOptions {
  readonly watch?: Watch;
  /** When the search ends, whatever it has. */
  readonly until?: Deadline;
  /**
   * Any plan, soon: every item may change and only the sum of the shifts is kept small. Linear programs alone, but for steps of gloss and distances to
   * either side; what it costs is no bound.
   */
  readonly anyPlan?: boolean;
  /** Joints whose limits are looked at; all where absent. */
  readonly joints?: ReadonlySet<number>;
  /** Where to begin the slopes of limits that are not convex. */
  readonly from?: readonly Shift[];
}

/** An excess this small counts as none. */
const tolerance = 1e-5;
const mostCuts = 120;
/** Limits this near are met with a slope from the start where a plan goes on from another. */
const nearby = -0.05;

/**
 * The least costly set of items to change, and within it the smallest sum of shifts, so that every limit holds. The limits are met from
 * outside by their slopes where they are exceeded, and the mixed-integer programs solved again until none is. Items that no cut ties
 * together are programs of their own, solved again only where a cut has come in. Slopes of limits that are convex bound them
 * everywhere, a distance that can be made to either side is met as it is, and of other limits that are broken it is told which items must change: the cost by these alone
 * is a bound for all plans.
 * Source: cutting planes, J. E. Kelley, Journal of the SIAM 8 (1960) 703.
 */
export async function solveMend(problem: MendProblem, options: MendSolverOptions = {}): Promise<MendSolution> {
  const first = await bySlopes(problem, options);
  if (first.proved || first.outOfTime || (first.feasible && options.anyPlan === true)) return first;
  const repair = new ShiftRepair(problem, options.joints, async () => {
    await step(options.watch, 0, 'finding the least change');
    return options.until?.passed() !== true;
  });
  return repair.hasBends ? restarted(problem, options, first, repair) : first;
}

/** Searches from other shifts where slopes from the first led nowhere, or to what is not proved least. */
const mostStarts = 6;

/**
 * Goes on where limits are not convex and slopes at the first shifts led to no plan, or to one that may not be the least: from shifts that were found without slopes.
 * What those cost is brought down by slopes; where that fails they are kept as they are.
 */
async function restarted(problem: MendProblem, options: MendSolverOptions, first: MendSolution, repair: ShiftRepair): Promise<MendSolution> {
  let best = first;
  const { bound } = first;
  for (let nth = 0; nth < mostStarts && !(best.feasible && (nth > 1 || best.cost <= bound)); nth++) {
    await step(options.watch, nth / mostStarts, 'finding the least change');
    if (options.until?.passed() === true) return { ...best, outOfTime: true };
    const begun = await repair.start(nth);
    if (!repair.holds(begun)) {
      // Slopes may bring the rest of the way.
      best = better(best, await bySlopes(problem, { ...options, from: begun }));
      continue;
    }
    const from = await repair.withFewer(begun);
    if (best.feasible && repair.costOf(from) >= best.cost) continue;
    best = better(best, await bySlopes(problem, { ...options, from }));
    if (!best.feasible || best.cost > repair.costOf(from) + 1e-9) best = better(best, await keptAt(problem, options, repair.shrunk(from), repair));
  }
  return best === first ? first : { ...best, bound, proved: best.cost <= bound + 1e-6 * Math.max(1, best.cost) };
}

/** A plan in which colours stay at shifts that hold, and everything else is found by slopes. */
async function keptAt(problem: MendProblem, options: MendSolverOptions, shifts: readonly Shift[], repair: ShiftRepair): Promise<MendSolution> {
  const rest = await bySlopes(repair.remainder(shifts), { ...options, from: undefined });
  if (!rest.feasible) return rest;
  const together = shifts.map(([L, a, b], index): Shift => [L + rest.shifts[index][0], a + rest.shifts[index][1], b + rest.shifts[index][2], rest.shifts[index][3]]);
  return finished(problem, together, problem.items.map(() => ({ changes: true, gloss: true })), 0, rest.outOfTime);
}

const sizeOf = ({ shifts }: MendSolution): number => shifts.reduce((sum, shift) => sum + shiftSize(shift), 0);

/** The one that is a plan, costs less, or takes the smaller shifts. */
function better(one: MendSolution, other: MendSolution): MendSolution {
  if (!one.feasible || !other.feasible) return other.feasible ? other : one;
  return other.cost < one.cost - 1e-9 || (other.cost <= one.cost + 1e-9 && sizeOf(other) < sizeOf(one) - 1e-9) ? other : one;
}

async function bySlopes(problem: MendProblem, options: MendSolverOptions): Promise<MendSolution> {
  const { items } = problem;
  const search = new CutSearch(problem, options);
  let shifts: readonly Shift[] = options.from ?? items.map(() => noShift);
  search.meet(shifts, options.from !== undefined);
  if (options.from === undefined && search.cuts.length === 0) return { feasible: true, proved: true, shifts, changed: [], cost: 0, bound: 0, outOfTime: false };
  let settled: readonly ItemChange[] | undefined = options.anyPlan === true ? items.map(() => ({ changes: true, gloss: true })) : undefined;
  let unpolished: readonly Shift[] | undefined;
  let outOfTime = false;
  for (let round = 0; round < mostCuts; round++) {
    await step(options.watch, round / mostCuts, 'finding the least change');
    if (options.until?.passed() === true) {
      const bound = await search.costBound();
      // A set that was settled and not yet made small will do, if all its limits hold.
      return settled !== undefined && unpolished !== undefined ? finished(problem, unpolished, settled, bound, true)
        : { feasible: false, proved: false, shifts: [], changed: [], cost: Infinity, bound: Number.isFinite(bound) ? bound : 0, outOfTime: true };
    }
    const found = await search.solve(search.cuts, settled);
    outOfTime ||= found.outOfTime;
    if (found.shifts === undefined) {
      if (settled !== undefined && unpolished !== undefined) return finished(problem, unpolished, settled, await search.costBound(), outOfTime);
      const impossible = found.infeasible && ((await search.solve(search.convexCuts(), undefined)).infeasible);
      return { feasible: false, proved: impossible, shifts: [], changed: [], cost: Infinity, bound: impossible ? Infinity : await search.costBound(), outOfTime };
    }
    shifts = found.shifts;
    if (search.meet(shifts, false) > 0) continue;
    if (settled !== undefined) return finished(problem, shifts, settled, options.anyPlan === true ? 0 : await search.costBound(), outOfTime);
    // The set is settled; what is left is to make its shifts as small as they can be, free of the large numbers of the first stage.
    settled = found.changes;
    unpolished = shifts;
  }
  return { feasible: false, proved: false, shifts: [], changed: [], cost: Infinity, bound: await search.costBound(), outOfTime };
}

function finished({ items }: MendProblem, found: readonly Shift[], settled: readonly ItemChange[], bound: number, outOfTime: boolean): MendSolution {
  const shifts = found.map((shift) => shift.map((value) => (Math.abs(value) < 1e-7 ? 0 : value)) as unknown as Shift);
  const changed = items.flatMap((_, index) => (shifts[index].some((value) => value !== 0) ? [index] : []));
  const cost = changed.reduce((sum, index) => sum + items[index].cost + (settled[index].gloss && shifts[index][3] !== 0 ? items[index].glossCost : 0), 0);
  return { feasible: true, proved: cost <= bound + 1e-6 * Math.max(1, cost), shifts, changed, cost, bound: Math.min(bound, cost), outOfTime };
}

const canMove = ({ up, down }: MendItem): boolean => [...up, ...down].some((value) => value > 0);

interface Relaxed {
  readonly shifts: readonly Shift[] | undefined;
  readonly changes: readonly ItemChange[];
  readonly infeasible: boolean;
  readonly outOfTime: boolean;
  readonly bound: number;
}

/** The cuts that were met so far, and the components they make. */
class CutSearch {
  readonly cuts: MendCut[] = [];
  private readonly solved = new Map<string, MendedComponent>();
  private readonly problem: MendProblem;
  private readonly options: MendSolverOptions;
  private readonly movable: readonly boolean[];
  private met = 0;

  constructor(problem: MendProblem, options: MendSolverOptions) {
    this.problem = problem;
    this.options = options;
    this.movable = problem.items.map(canMove);
    // A slope of what is not convex says nothing of the plans elsewhere; what must change in any case holds for all of them.
    problem.limits.forEach((limit, index) => {
      if (limit.convex || limit.apart !== undefined || options.joints?.has(limit.joint) === false || limit.excess(noShift, noShift) <= tolerance) return;
      const needed = mustChange(limit, problem.items);
      if (needed === undefined) this.cuts.push(eitherChanges(problem, index, this.met++));
      else for (const items of needed.length === 0 ? [[]] : needed.map((item) => [item])) this.cuts.push(eitherChanges(problem, index, this.met++, items));
    });
  }

  /** Adds a cut for every limit that is exceeded, or with `all` near; how many. */
  meet(shifts: readonly Shift[], all: boolean): number {
    const { problem, cuts, options } = this;
    let added = 0;
    problem.limits.forEach((limit, index) => {
      if (options.joints?.has(limit.joint) === false) return;
      const excess = limit.excess(shifts[limit.items[0]], shifts[limit.items[1]]);
      if (excess <= tolerance && !(all && excess > nearby)) return;
      if (limit.apart !== undefined) {
        if (cuts.some((cut) => cut.limit === index)) return;
        cuts.push(choiceOf(problem, index, limit.apart, this.met++));
        added++;
        return;
      }
      const before = limit.convex ? -1 : cuts.findIndex((cut) => cut.limit === index && cut.either !== true);
      if (before >= 0) cuts.splice(before, 1);
      cuts.push(cutAt(problem, index, shifts, this.met++));
      added++;
    });
    return added;
  }

  convexCuts(): readonly MendCut[] {
    return this.cuts.filter(({ convex }) => convex);
  }

  /** What no set of changes can cost less than: by the cuts that hold everywhere. */
  async costBound(): Promise<number> {
    return (await this.solve(this.convexCuts(), undefined)).bound;
  }

  async solve(cuts: readonly MendCut[], settled: readonly ItemChange[] | undefined): Promise<Relaxed> {
    const { items } = this.problem;
    const shifts: Shift[] = items.map(() => noShift);
    const changes: ItemChange[] = items.map(() => ({ changes: false, gloss: false }));
    let [bound, outOfTime, missing, infeasible] = [0, false, false, false];
    for (const component of this.components(cuts)) {
      const solved = await this.component(component, settled);
      bound += solved.bound;
      outOfTime ||= solved.status === 'time limit';
      if (solved.found === undefined) {
        missing = true;
        infeasible ||= solved.status === 'infeasible';
      }
      for (const [index, { shift, change }] of solved.found ?? []) [shifts[index], changes[index]] = [shift, change];
    }
    return { shifts: missing ? undefined : shifts, changes, infeasible, outOfTime, bound: infeasible ? Infinity : bound };
  }

  private async component(cuts: readonly MendCut[], settled: readonly ItemChange[] | undefined): Promise<MendedComponent> {
    const items = [...new Set(cuts.flatMap(({ sides }) => sides.map(({ item }) => item)))].filter((item) => this.movable[item]).sort((a, b) => a - b);
    // Nothing in it can move: the cut holds or it does not.
    if (items.length === 0) {
      const holds = cuts.every(({ most, either }) => either !== true && most >= -tolerance);
      return { status: holds ? 'optimal' : 'infeasible', found: holds ? new Map() : undefined, bound: 0 };
    }
    const key = `${cuts.map(({ id }) => id).join()} ${settled === undefined ? '' : items.map((index) => `${Number(settled[index].changes)}${Number(settled[index].gloss)}`).join()}`;
    const known = this.solved.get(key);
    if (known !== undefined) return known;
    const made = await mendComponent({
      cuts, items: items.map((index) => ({ index, item: this.problem.items[index], ...(settled === undefined ? {} : { settled: settled[index] }) })),
    }, this.options.until);
    this.solved.set(key, made);
    return made;
  }

  /** Cuts that share an item that can move, brought together. */
  private components(cuts: readonly MendCut[]): readonly (readonly MendCut[])[] {
    const leader = new Map<number, number>();
    const find = (item: number): number => {
      let at = item;
      while ((leader.get(at) ?? at) !== at) at = leader.get(at)!;
      return at;
    };
    const moving = ({ sides }: MendCut): number[] => sides.map(({ item }) => item).filter((item) => this.movable[item]);
    for (const cut of cuts) {
      const [first, ...others] = moving(cut);
      for (const other of others) leader.set(find(other), find(first));
    }
    const together = new Map<number | string, MendCut[]>();
    for (const cut of cuts) {
      const [first] = moving(cut);
      const key = first === undefined ? `still ${cut.id}` : find(first);
      together.set(key, [...(together.get(key) ?? []), cut]);
    }
    return [...together.values()];
  }
}
