import { describe, expect, test } from 'vitest';
import { shiftSize } from '../../src/plan/mend/mend-problem.ts';
import type { MendItem, MendProblem, Shift } from '../../src/plan/mend/mend-problem.ts';
import { solveMend } from '../../src/plan/mend/solve-mend.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

/** A few seconds each on an idle machine. */
const slowMs = 240_000;

const item = (reach: number): MendItem => ({ down: [reach, reach, reach, 0], up: [reach, reach, reach, 0], cost: 1, glossCost: 0 });

describe('colours in three dimensions', () => {
  interface Space {
    readonly problem: MendProblem;
    readonly labs: readonly (readonly number[])[];
    readonly pairs: readonly (readonly [number, number])[];
    readonly limit: number;
    readonly reach: readonly number[];
  }
  function randomSpace(seed: number): Space {
    const random = seededNumbers(seed);
    const parts = 3 + Math.floor(2 * random());
    const labs = Array.from({ length: parts }, () => [1.6 * random(), 1.2 * random(), 1.2 * random()]);
    const reach = Array.from({ length: parts }, () => (random() < 0.3 ? 0 : 1.2));
    const pairs = Array.from({ length: parts }, (_, index) => [index, (index + 1) % parts] as const);
    const limit = 0.6;
    const excess = (a: number, b: number) => (first: Shift, second: Shift): number =>
      Math.hypot(...[0, 1, 2].map((axis) => labs[a][axis] + first[axis] - labs[b][axis] - second[axis])) - limit;
    return {
      labs, pairs, limit, reach,
      problem: { items: reach.map((most) => item(most)), limits: pairs.map(([a, b], joint) => ({ joint, items: [a, b], convex: true, excess: excess(a, b) })) },
    };
  }

  /**
   * Whether a set of parts can be moved so that all joints hold: projections on the limits and the reach, one after the other, another
   * algorithm than the plan's. Where they circle without coming nearer, there is no such place.
   */
  function canMend({ labs, pairs, limit, reach }: Space, movable: ReadonlySet<number>): boolean {
    const at = labs.map((lab) => [...lab]);
    if (pairs.some(([a, b]) => !movable.has(a) && !movable.has(b) && Math.hypot(...at[a].map((value, axis) => value - at[b][axis])) > limit)) return false;
    let before = Infinity;
    for (let round = 1; ; round++) {
      let worst = 0;
      for (const [a, b] of pairs) {
        const [x, y, z] = [at[a][0] - at[b][0], at[a][1] - at[b][1], at[a][2] - at[b][2]];
        const length = Math.sqrt(x * x + y * y + z * z);
        if (length <= limit) continue;
        worst = Math.max(worst, length - limit);
        const free = [a, b].filter((part) => movable.has(part));
        for (const part of free) {
          const by = ((length - limit) / length / free.length) * (part === a ? -1 : 1);
          at[part][0] += by * x;
          at[part][1] += by * y;
          at[part][2] += by * z;
        }
      }
      for (const part of movable) for (const axis of [0, 1, 2]) at[part][axis] = Math.min(labs[part][axis] + reach[part], Math.max(labs[part][axis] - reach[part], at[part][axis]));
      if (worst < 1e-4) return true;
      if (round % 50 !== 0) continue;
      // What is still coming nearer by a thousandth in fifty rounds has not settled.
      if (worst > before * 0.999) {
        expect(worst, 'neither mended nor clearly apart').toBeGreaterThan(3e-4);
        return false;
      }
      before = worst;
    }
  }

  const mended = new Map<string, boolean>();
  const spaces = Array.from({ length: 500 }, (_, index) => randomSpace(index + 1));

  test('500 seeded cabins, the fewest parts: by projections over the sets of parts; the plan holds at every joint', async () => {
    let impossible = 0;
    for (const [index, space] of spaces.entries()) {
      const fewest = leastCost(space, space.reach.map(() => 1));
      const { feasible, changed, shifts, proved } = await solveMend(space.problem);
      expect([index, feasible, proved, feasible ? changed.length : undefined]).toEqual([index, fewest !== undefined, true, fewest]);
      for (const { items: [a, b], excess } of feasible ? space.problem.limits : []) expect(excess(shifts[a], shifts[b])).toBeLessThanOrEqual(2e-5);
      if (!feasible) impossible++;
    }
    expect(impossible).toBeGreaterThan(25);
  }, slowMs);

  test('500 seeded cabins, the cheapest parts: likewise', async () => {
    const random = seededNumbers(3);
    for (const [index, space] of spaces.entries()) {
      const costs = space.reach.map(() => 500 + 100 * Math.floor(20 * random()));
      const { feasible, cost, bound } = await solveMend({ ...space.problem, items: space.problem.items.map((each, part) => ({ ...each, cost: costs[part] })) });
      const expected = leastCost(space, costs);
      expect([index, feasible ? cost : undefined]).toEqual([index, expected]);
      expect(feasible ? bound : undefined, `cabin ${index}`).toBe(expected);
    }
  }, slowMs);

  /** The least cost of a set of parts that can mend the cabin, over all of them; undefined where none can. */
  function leastCost(space: Space, costs: readonly number[]): number | undefined {
    const movable = space.reach.flatMap((most, index) => (most > 0 ? [index] : []));
    const sets = Array.from({ length: 2 ** movable.length }, (_, mask) => movable.filter((__, index) => ((mask >> index) & 1) === 1));
    const cost = (set: readonly number[]): number => set.reduce((sum, part) => sum + costs[part], 0);
    const mends = (set: readonly number[]): boolean => {
      const key = `${spaces.indexOf(space)}: ${set.join()}`;
      const known = mended.get(key) ?? canMend(space, new Set(set));
      mended.set(key, known);
      return known;
    };
    const found = sets.sort((a, b) => cost(a) - cost(b)).find(mends);
    return found === undefined ? undefined : cost(found);
  }

  test('no nearby plan of the same parts has a smaller sum of shifts', async () => {
    const random = seededNumbers(99);
    for (let seed = 1; seed <= 30; seed++) {
      const { problem } = randomSpace(seed);
      const { feasible, changed, shifts } = await solveMend(problem);
      if (!feasible) continue;
      const size = shifts.reduce((sum, shift) => sum + shiftSize(shift), 0);
      for (let tries = 0; tries < 300; tries++) {
        const other = shifts.map((shift, index): Shift => (changed.includes(index) ? shift.map((value, axis) => (axis === 3 ? 0 : value + 0.1 * random() * (random() - 0.5))) as unknown as Shift : shift));
        if (problem.limits.every(({ items: [a, b], excess }) => excess(other[a], other[b]) <= 0)) {
          expect(other.reduce((sum, shift) => sum + shiftSize(shift), 0)).toBeGreaterThanOrEqual(size - 1e-3);
        }
      }
    }
  });
});
