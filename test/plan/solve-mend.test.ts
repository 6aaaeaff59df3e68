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
  readonly costs: readonly number[];
}

/** With `priced`, changes cost money that differs by little. */
function randomLine(seed: number, priced = false): Line {
  const random = seededNumbers(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const parts = 2 + whole(3);
  const lightness = Array.from({ length: parts }, () => whole(25));
  const reach = Array.from({ length: parts }, () => (random() < 0.25 ? 0 : 2 + whole(9)));
  const limit = 2 + whole(6);
  const pairs = Array.from({ length: parts + whole(3) }, () => [whole(parts), whole(parts)] as const).filter(([a, b]) => a !== b);
  const costs = reach.map(() => (priced ? 100 * (1 + whole(8)) + whole(3) : 1));
  return {
    lightness, pairs, limit, reach, costs,
    problem: {
      items: reach.map((most, index) => item(0, { down: [most, 0, 0, 0], up: [most, 0, 0, 0], cost: costs[index] })),
      limits: pairs.map((items, joint): MendLimit => ({
        joint, items, convex: true, excess: (first, second) => Math.abs(lightness[items[0]] + first[0] - lightness[items[1]] - second[0]) - limit,
      })),
    },
  };
}

/** The least cost of changes and then the least sum of shifts, over every shift on the grid; undefined where none will do. */
function listed({ lightness, pairs, limit, reach, costs }: Line, kept: ReadonlySet<number> = new Set(pairs.keys())): readonly [number, number] | undefined {
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
      visit(part + 1, count + (shift === 0 ? 0 : costs[part]), size + Math.abs(shift));
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

  test('the cheapest changes', async () => {
    let other = 0;
    for (let seed = 1; seed <= 500; seed++) {
      const line = randomLine(seed, true);
      const expected = listed(line);
      const { feasible, shifts, cost, bound, proved } = await solveMend(line.problem);
      expect([feasible, proved], `cabin ${seed}`).toEqual([expected !== undefined, true]);
      if (expected === undefined) continue;
      expect(cost, `cabin ${seed}`).toBe(expected[0]);
      expect(bound, `cabin ${seed}`).toBeCloseTo(expected[0], 6);
      expect(shifts.reduce((sum, shift) => sum + shiftSize(shift), 0), `cabin ${seed}`).toBeCloseTo(expected[1], 4);
      // Where all parts cost alike another set is taken often: the costs decide.
      const alike = await solveMend({ ...line.problem, items: line.problem.items.map((each) => ({ ...each, cost: 1 })) });
      if (alike.changed.reduce((sum, part) => sum + line.costs[part], 0) > cost) other++;
    }
    expect(other).toBeGreaterThan(15);
  });

  test('joints that make a plan impossible: together they do, without any one of them not', async () => {
    let seen = 0;
    for (const [index, line] of lines.entries()) {
      if (listed(line) !== undefined) continue;
      seen++;
      const joints = await irreducibleJoints(line.problem, [...line.pairs.keys()]);
      expect(listed(line, new Set(joints)), `cabin ${index}`).toBeUndefined();
      for (const joint of joints) expect(listed(line, new Set(joints.filter((other) => other !== joint))), `cabin ${index}`).toBeDefined();
    }
    expect(seen).toBeGreaterThan(50);
  });
});

describe('500 seeded cabins of gloss that goes in steps, against every step', () => {
  interface Glossy {
    readonly problem: MendProblem;
    readonly gloss: readonly number[];
    readonly pairs: readonly (readonly [number, number])[];
  }
  /** Gloss in hundredths, steps of a tool in whole ones of thirty. */
  function randomGloss(seed: number): Glossy {
    const random = seededNumbers(seed);
    const whole = (below: number): number => Math.floor(random() * below);
    const parts = 2 + whole(3);
    const gloss = Array.from({ length: parts }, () => 150 + 5 * whole(30));
    const pairs = Array.from({ length: parts + whole(2) }, () => [whole(parts), whole(parts)] as const).filter(([a, b]) => a !== b);
    const items = gloss.map((): MendItem => {
      const reach = random() < 0.2 ? 0 : 60 + 15 * whole(5);
      return { down: [0, 0, 0, reach], up: [0, 0, 0, reach], cost: 100 + 50 * whole(4), glossStep: 30, glossCost: 1000 * whole(3) };
    });
    return { gloss, pairs, problem: { items, limits: pairs.map(([a, b], joint): MendLimit => ({ joint, items: [a, b], convex: true, excess: (first, second) => Math.abs(gloss[a] + first[3] - gloss[b] - second[3]) - 50 })) } };
  }

  test('the cheapest changes, tools included, and the least sum of them', async () => {
    let stepped = 0;
    for (let seed = 1; seed <= 500; seed++) {
      const { problem, gloss, pairs } = randomGloss(seed);
      let best: readonly [number, number] | undefined;
      const now = [...gloss];
      const visit = (part: number, cost: number, size: number): void => {
        if (pairs.some(([a, b]) => a < part && b < part && Math.abs(now[a] - now[b]) > 50)) return;
        if (part === gloss.length) {
          if (best === undefined || cost < best[0] || (cost === best[0] && size < best[1])) best = [cost, size];
          return;
        }
        const { up: [, , , reach], cost: own, glossCost } = problem.items[part];
        for (let by = -Math.floor(reach / 30); by <= Math.floor(reach / 30); by++) {
          now[part] = gloss[part] + 30 * by;
          visit(part + 1, cost + (by === 0 ? 0 : own + glossCost), size + 30 * Math.abs(by));
        }
        now[part] = gloss[part];
      };
      visit(0, 0, 0);
      const found = await solveMend(problem);
      expect([seed, found.feasible, found.proved]).toEqual([seed, best !== undefined, true]);
      if (best === undefined) continue;
      expect(found.cost, `cabin ${seed}`).toBe(best[0]);
      expect(found.shifts.reduce((sum, shift) => sum + shiftSize(shift), 0), `cabin ${seed}`).toBeCloseTo(best[1], 4);
      for (const shift of found.shifts) expect(Math.abs(shift[3] / 30 - Math.round(shift[3] / 30)), `cabin ${seed}`).toBeLessThan(1e-6);
      if (found.changed.length > 0) stepped++;
    }
    expect(stepped).toBeGreaterThan(100);
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
