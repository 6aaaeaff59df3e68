import { seededBits } from '../../readings/seeded-random.ts';
import { noShift, shiftSize } from './mend-problem.ts';
import type { MendItem, MendLimit, MendProblem, Shift } from './mend-problem.ts';

/** An excess this small counts as none. */
const tolerance = 1e-5;
/** Moves that one search may take for each limit that it looks at, and in all. */
const movesForEach = 6;
const mostMoves = 200;
/** What a unit of shift counts beside a unit of excess: only between moves that serve alike. */
const sizeWeight = 1e-4;

/** What is left where all limits hold: sizes alone. */
const enough = 0.01;

const sides = [-1, 0, 1] as const;
const halves = [-1, -0.5, 0, 0.5, 1] as const;

/**
 * Shifts at which limits hold that are not convex, looked for without slopes: one limit after the other that is exceeded, by the moves of either of its
 * items over a grid of its reach, then of both over their corners, then by smaller and smaller steps; whatever leaves the least excess of all limits
 * at the two. A search and no proof: what it does not find may be there. Gloss stays as it is.
 * Source: least-conflict repair, S. Minton and others, Artificial Intelligence 58 (1992) 161 (from memory).
 */
export class ShiftRepair {
  private readonly problem: MendProblem;
  /** Limits of each item, as indices. */
  private readonly limitsOf: ReadonlyMap<number, readonly number[]>;
  /** Limits that are not convex, and all that share an item with one. */
  private readonly looked: readonly number[];
  private readonly goOn: () => Promise<boolean>;

  /** `goOn` is asked before every move: a turn for the caller, and whether there is time. */
  constructor(problem: MendProblem, joints: ReadonlySet<number> | undefined, goOn: () => Promise<boolean>) {
    this.problem = problem;
    this.goOn = goOn;
    const own = problem.limits.flatMap((limit, index) => (joints?.has(limit.joint) === false ? [] : [index]));
    const limitsOf = new Map<number, number[]>();
    for (const index of own) {
      for (const item of new Set(problem.limits[index].items)) {
        const known = limitsOf.get(item) ?? [];
        known.push(index);
        limitsOf.set(item, known);
      }
    }
    this.limitsOf = limitsOf;
    const bent = new Set(own.filter((index) => isBent(problem.limits[index])).flatMap((index) => problem.limits[index].items));
    this.looked = own.filter((index) => problem.limits[index].items.some((item) => bent.has(item)));
  }

  /** Whether there is anything that slopes could have failed at. */
  get hasBends(): boolean {
    return this.looked.length > 0;
  }

  /** Shifts of one search, the first from rest and the others from corners of the reach by chance. Seeded. */
  start(nth: number): Promise<readonly Shift[]> {
    const shifts: Shift[] = this.problem.items.map(() => noShift);
    if (nth > 0) {
      const bits = seededBits(nth);
      const corner = (): number => sides[bits() % 3];
      for (const item of new Set(this.looked.flatMap((index) => this.problem.limits[index].items))) shifts[item] = within(this.problem.items[item], [corner(), corner(), corner()]);
    }
    return this.repaired(shifts, new Set(), nth);
  }

  /** The same shifts with as many items as can be left at rest, those first whose change costs most. */
  async withFewer(start: readonly Shift[]): Promise<readonly Shift[]> {
    const { items } = this.problem;
    let shifts = start;
    const resting = new Set<number>();
    const changed = items.flatMap((_, index) => (isMoved(shifts[index]) ? [index] : [])).sort((a, b) => items[b].cost - items[a].cost);
    for (const item of changed) {
      const tried = await this.repaired(shifts.map((shift, index) => (index === item ? noShift : shift)), new Set([...resting, item]), 0);
      if (!this.holds(tried) || this.costOf(tried) > this.costOf(shifts)) continue;
      resting.add(item);
      shifts = tried;
    }
    return shifts;
  }

  /** The same shifts with every axis brought as near to rest as its limits allow, one after the other. */
  shrunk(start: readonly Shift[]): readonly Shift[] {
    const shifts = [...start];
    for (const item of this.looked.flatMap((index) => this.problem.limits[index].items)) {
      for (const axis of [0, 1, 2]) {
        const from = shifts[item];
        let [low, high] = [0, 1];
        for (let tries = 0; tries < 12 && from[axis] !== 0; tries++) {
          const share = tries === 0 ? 0 : (low + high) / 2;
          shifts[item] = from.map((value, each) => (each === axis ? share * value : value)) as unknown as Shift;
          const holds = (this.limitsOf.get(item) ?? []).every((index) => this.excess(index, shifts) <= tolerance);
          if (holds) high = share;
          else low = share;
          if (high === 0) break;
        }
        shifts[item] = from.map((value, each) => (each === axis ? high * value : value)) as unknown as Shift;
      }
    }
    return shifts;
  }

  /** What is left to do with the colour of the items that were looked at kept where it is: their limits hold, and what has changed is paid for. */
  remainder(kept: readonly Shift[]): MendProblem {
    const pinned = new Set(this.looked.flatMap((index) => this.problem.limits[index].items));
    const at = (item: number, shift: Shift): Shift => (pinned.has(item) ? [kept[item][0], kept[item][1], kept[item][2], shift[3]] : shift);
    return {
      items: this.problem.items.map((item, index) => (!pinned.has(index) ? item : {
        ...item, down: [0, 0, 0, item.down[3]], up: [0, 0, 0, item.up[3]], cost: isMoved(kept[index]) ? 0 : item.cost,
      })),
      limits: this.problem.limits.map((limit): MendLimit => {
        const { joint, items, convex, excess, apart } = limit;
        if (!items.some((item) => pinned.has(item))) return limit;
        return { joint, items, convex: convex || apart === undefined, excess: (first, second) => excess(at(items[0], first), at(items[1], second)) };
      }),
    };
  }

  /** Whether all limits hold that are looked at here. */
  holds(shifts: readonly Shift[]): boolean {
    return this.looked.every((index) => this.excess(index, shifts) <= tolerance);
  }

  costOf(shifts: readonly Shift[]): number {
    return this.problem.items.reduce((sum, { cost }, index) => sum + (isMoved(shifts[index]) ? cost : 0), 0);
  }

  private excess(index: number, shifts: readonly Shift[]): number {
    const { items: [a, b], excess } = this.problem.limits[index];
    return excess(shifts[a], shifts[b]);
  }

  private async repaired(start: readonly Shift[], resting: ReadonlySet<number>, turn: number): Promise<readonly Shift[]> {
    const shifts = [...start];
    const { looked } = this;
    const moves = Math.min(mostMoves, movesForEach * looked.length);
    let idle = 0;
    for (let move = 0, at = turn; move < moves && idle < looked.length; at++) {
      const index = looked[at % looked.length];
      if (this.excess(index, shifts) <= tolerance) {
        idle++;
        continue;
      }
      if (!(await this.goOn())) break;
      move++;
      idle = this.relieve(index, shifts, resting) ? 0 : idle + 1;
    }
    return shifts;
  }

  /** Takes the items of a limit to where the least excess is left; whether that is less than before. */
  private relieve(index: number, shifts: Shift[], resting: ReadonlySet<number>): boolean {
    const { items } = this.problem;
    const [a, b] = this.problem.limits[index].items;
    const free = [...new Set([a, b])].filter((item) => !resting.has(item) && canTurn(items[item]));
    const around = [...new Set([a, b].flatMap((item) => this.limitsOf.get(item) ?? []))];
    const before = this.weigh(around, [a, b], shifts);
    let best = before;
    let found = new Map(free.map((item) => [item, shifts[item]]));
    const attempt = (): void => {
      const now = this.weigh(around, [a, b], shifts);
      if (now >= best - 1e-9) return;
      best = now;
      found = new Map(free.map((item) => [item, shifts[item]]));
    };
    const restore = (): void => { for (const [item, shift] of found) shifts[item] = shift; };
    const original = new Map(found);
    for (const item of free) {
      for (const shift of latticeOf(items[item], halves)) {
        shifts[item] = shift;
        attempt();
      }
      shifts[item] = original.get(item)!;
    }
    if (free.length === 2 && best > enough) {
      for (const first of latticeOf(items[free[0]], sides)) {
        for (const second of latticeOf(items[free[1]], sides)) {
          [shifts[free[0]], shifts[free[1]]] = [first, second];
          attempt();
        }
      }
    }
    restore();
    for (let step = 0.25; step > 0.01; step /= 2) {
      for (const item of free) {
        for (const axis of [0, 1, 2]) {
          for (const way of [-1, 1]) {
            const from = found.get(item)!;
            restore();
            const { up, down } = items[item];
            const moved = Math.min(up[axis], Math.max(-down[axis], from[axis] + way * step * Math.max(up[axis], down[axis])));
            shifts[item] = from.map((value, each) => (each === axis ? moved : value)) as unknown as Shift;
            attempt();
          }
        }
      }
    }
    restore();
    return best < before - 1e-9;
  }

  /** Excess of limits in all, and a little for the size of the shifts. */
  private weigh(limits: readonly number[], items: readonly number[], shifts: readonly Shift[]): number {
    let sum = 0;
    for (const index of limits) sum += Math.max(0, this.excess(index, shifts));
    for (const item of new Set(items)) sum += sizeWeight * shiftSize(shifts[item]);
    return sum;
  }
}

/** Not convex, and not a choice between two sides that a program makes as it is. */
const isBent = (limit: MendLimit): boolean => !limit.convex && limit.apart === undefined;

const isMoved = (shift: Shift): boolean => shift.some((value) => value !== 0);
const canTurn = ({ up, down }: MendItem): boolean => [0, 1, 2].some((axis) => up[axis] > 0 || down[axis] > 0);

const within = ({ up, down }: MendItem, share: readonly number[]): Shift =>
  [0, 1, 2, 3].map((axis) => (axis === 3 ? 0 : share[axis] < 0 ? share[axis] * down[axis] : share[axis] * up[axis])) as unknown as Shift;

const latticeOf = (item: MendItem, values: readonly number[]): readonly Shift[] => values.flatMap((L) => values.flatMap((a) => values.map((b) => within(item, [L, a, b]))));
