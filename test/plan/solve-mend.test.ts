import { describe, expect, test } from 'vitest';
import { irreducibleJoints } from '../../src/plan/mend/blockers.ts';
import { noShift, shiftSize } from '../../src/plan/mend/mend-problem.ts';
import type { MendItem, MendLimit, MendProblem, Shift } from '../../src/plan/mend/mend-problem.ts';
import { solveMend } from '../../src/plan/mend/solve-mend.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

const item = (reach: number, more: Partial<MendItem> = {}): MendItem =>
  ({ down: [reach, reach, reach, 0], up: [reach, reach, reach, 0], cost: 1, glossCost: 0, ...more });

/** Lightness alone, everything in tenths: then some best plan lies on the grid of tenths, since the slopes are those of differences. */
interface Line {
  readonly problem: MendProblem;
  readonly lightness: readonly number[];
  readonly pairs: readonly (readonly [number, number])[];
  readonly limit: number;
  readonly reach: readonly number[];
}

function randomLine(seed: number): Line {
  const random = seededNumbers(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const parts = 2 + whole(3);
  const lightness = Array.from({ length: parts }, () => whole(25));
  const reach = Array.from({ length: parts }, () => (random() < 0.25 ? 0 : 2 + whole(9)));
  const limit = 2 + whole(6);
  const pairs = Array.from({ length: parts + whole(3) }, () => [whole(parts), whole(parts)] as const).filter(([a, b]) => a !== b);
  return {
    lightness, pairs, limit, reach,
    problem: {
      items: reach.map((most) => item(0, { down: [most, 0, 0, 0], up: [most, 0, 0, 0] })),
      limits: pairs.map((items, joint): MendLimit => ({
        joint, items, convex: true, excess: (first, second) => Math.abs(lightness[items[0]] + first[0] - lightness[items[1]] - second[0]) - limit,
      })),
    },
  };
}

/** The fewest changes and then the least sum of shifts, over every shift on the grid; undefined where none will do. */
function listed({ lightness, pairs, limit, reach }: Line, kept: ReadonlySet<number> = new Set(pairs.keys())): readonly [number, number] | undefined {
  let best: readonly [number, number] | undefined;
  const shifts = lightness.map(() => 0);
  const visit = (part: number, count: number, size: number): void => {
    if (best !== undefined && (count > best[0] || (count === best[0] && size >= best[1]))) return;
    for (const [index, [a, b]] of pairs.entries()) {
      if (kept.has(index) && a < part && b < part && Math.abs(lightness[a] + shifts[a] - lightness[b] - shifts[b]) > limit) return;
    }
    if (part === lightness.length) {
      best = [count, size];
      return;
    }
    for (let shift = -reach[part]; shift <= reach[part]; shift++) {
      shifts[part] = shift;
      visit(part + 1, count + (shift === 0 ? 0 : 1), size + Math.abs(shift));
    }
    shifts[part] = 0;
  };
  visit(0, 0, 0);
  return best;
}

describe('500 seeded cabins of lightness alone against every shift on their grid', () => {
  const lines = Array.from({ length: 500 }, (_, index) => randomLine(index + 1));
  test('fewest changes and least shift', async () => {
    let impossible = 0;
    for (const [index, line] of lines.entries()) {
      const expected = listed(line);
      const { feasible, shifts, changed, proved } = await solveMend(line.problem);
      if (expected === undefined) impossible++;
      expect(feasible, `cabin ${index}`).toBe(expected !== undefined);
      expect(proved).toBe(true);
      if (expected === undefined) continue;
      expect(changed.length, `cabin ${index}`).toBe(expected[0]);
      expect(shifts.reduce((sum, shift) => sum + shiftSize(shift), 0), `cabin ${index}`).toBeCloseTo(expected[1], 4);
    }
    expect(impossible).toBeGreaterThan(50);
  });

  test('joints that make a plan impossible: together they do, without any one of them not', async () => {
    let seen = 0;
    for (const [index, line] of lines.slice(0, 250).entries()) {
      if (listed(line) !== undefined) continue;
      seen++;
      const joints = await irreducibleJoints(line.problem, [...line.pairs.keys()]);
      expect(listed(line, new Set(joints)), `cabin ${index}`).toBeUndefined();
      for (const joint of joints) expect(listed(line, new Set(joints.filter((other) => other !== joint))), `cabin ${index}`).toBeDefined();
    }
    expect(seen).toBeGreaterThan(25);
  });
});

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

  /** Whether a set of parts can be moved so that all joints hold: cyclic projections on the limits and the reach, another algorithm than the plan's. */
  function canMend({ labs, pairs, limit, reach }: Space, movable: ReadonlySet<number>): boolean {
    const at = labs.map((lab) => [...lab]);
    for (let round = 0; round < 4000; round++) {
      let worst = 0;
      for (const [a, b] of pairs) {
        const d = at[a].map((value, axis) => value - at[b][axis]);
        const length = Math.hypot(...d);
        if (length <= limit) continue;
        worst = Math.max(worst, length - limit);
        const free = [a, b].filter((part) => movable.has(part));
        for (const part of free) {
          const by = ((length - limit) / length / free.length) * (part === a ? -1 : 1);
          d.forEach((value, axis) => { at[part][axis] += by * value; });
        }
      }
      for (const part of movable) at[part] = at[part].map((value, axis) => Math.min(labs[part][axis] + reach[part], Math.max(labs[part][axis] - reach[part], value)));
      if (worst < 1e-4) return true;
    }
    return false;
  }

  test('the fewest parts, by projections over every set of parts; the plan holds at every joint', async () => {
    for (let seed = 1; seed <= 50; seed++) {
      const space = randomSpace(seed);
      const movable = space.reach.flatMap((most, index) => (most > 0 ? [index] : []));
      let fewest: number | undefined;
      for (let mask = 0; mask < 2 ** movable.length; mask++) {
        const set = new Set(movable.filter((_, index) => (mask >> index) & 1));
        if ((fewest === undefined || set.size < fewest) && canMend(space, set)) fewest = set.size;
      }
      const { feasible, changed, shifts } = await solveMend(space.problem);
      expect([seed, feasible, feasible ? changed.length : undefined]).toEqual([seed, fewest !== undefined, fewest]);
      for (const { items: [a, b], excess } of feasible ? space.problem.limits : []) expect(excess(shifts[a], shifts[b])).toBeLessThanOrEqual(2e-5);
    }
  });

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

describe('what may change', () => {
  const apart = (joint: number, items: readonly [number, number], gap: Shift, limit: number): MendLimit => ({
    joint, items, convex: true, excess: (first, second) => Math.abs(gap[3] + second[3] - first[3]) - limit,
  });

  test('gloss in steps of 0.3: a gap of 1.0 with 0.5 allowed takes two steps, not 0.5', async () => {
    const grained = item(0, { down: [0, 0, 0, 2], up: [0, 0, 0, 2], glossStep: 0.3, glossCost: 5 });
    const { shifts } = await solveMend({ items: [item(0), grained], limits: [apart(0, [0, 1], [0, 0, 0, 1], 0.5)] });
    expect(shifts[1][3]).toBeCloseTo(-0.6, 6);
    const smooth = { ...grained, glossStep: undefined };
    expect((await solveMend({ items: [item(0), smooth], limits: [apart(0, [0, 1], [0, 0, 0, 1], 0.5)] })).shifts[1][3]).toBeCloseTo(-0.5, 4);
  });

  test('the cheaper of two parts changes', async () => {
    const limit = (joint: number): MendLimit => ({ joint, items: [0, 1], convex: true, excess: (first, second) => Math.abs(1 + first[0] - second[0]) - 0.4 });
    for (const [costs, expected] of [[[1, 9], [0]], [[9, 1], [1]]] as const) {
      expect((await solveMend({ items: costs.map((cost) => item(2, { cost })), limits: [limit(0)] })).changed).toEqual(expected);
    }
  });

  test('nothing to change, and nothing at all', async () => {
    const held: MendLimit = { joint: 0, items: [0, 1], convex: true, excess: () => -1 };
    expect(await solveMend({ items: [item(1), item(1)], limits: [held] })).toEqual({ feasible: true, proved: true, shifts: [noShift, noShift], changed: [], cost: 0, bound: 0, outOfTime: false });
    expect((await solveMend({ items: [], limits: [] })).feasible).toBe(true);
  });
});
