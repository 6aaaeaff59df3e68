import { describe, expect, test } from 'vitest';
import { criterionRangeIn } from '../../src/plan/mend/difference-range.ts';
import type { LabBox } from '../../src/plan/mend/difference-range.ts';
import { shiftSize } from '../../src/plan/mend/mend-problem.ts';
import type { MendItem, MendLimit, MendProblem, Shift, ShiftBox } from '../../src/plan/mend/mend-problem.ts';
import { mustChange } from '../../src/plan/mend/must-change.ts';
import { solveMend } from '../../src/plan/mend/solve-mend.ts';
import type { Lab } from '../../src/quantities.ts';
import { criterionValue } from '../../src/readings/criterion-test.ts';
import type { Criterion } from '../../src/readings/stacked-event.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { leastOnGrid, randomChain } from './support/random-chain.ts';

describe('500 seeded cabins of lightness that must be near at some joints and apart at others, up or down, against every shift on their grid', () => {
  interface Line {
    readonly problem: MendProblem;
    readonly lightness: readonly number[];
    readonly reach: readonly number[];
    readonly costs: readonly number[];
    readonly pairs: readonly { readonly items: readonly [number, number]; readonly limit: number; readonly apart: boolean }[];
  }
  /** Everything in tenths, so that some best plan lies on the grid: slopes are those of differences. */
  function randomLine(seed: number): Line {
    const random = seededNumbers(seed);
    const whole = (below: number): number => Math.floor(random() * below);
    const parts = 2 + whole(3);
    const lightness = Array.from({ length: parts }, () => whole(20));
    const reach = Array.from({ length: parts }, () => (random() < 0.25 ? 0 : 3 + whole(10)));
    const costs = reach.map(() => 1 + whole(5));
    const pairs = Array.from({ length: parts + whole(2) }, () => ({ items: [whole(parts), whole(parts)] as const, limit: 3 + whole(7), apart: random() < 0.6 })).filter(({ items: [a, b] }) => a !== b);
    const items = reach.map((most, index): MendItem => ({ down: [most, 0, 0, 0], up: [most, 0, 0, 0], cost: costs[index]!, glossCost: 0 }));
    const limits = pairs.map(({ items: [a, b], limit, apart }, joint): MendLimit => {
      const signed = (first: Shift, second: Shift): number => lightness[a]! + first[0] - lightness[b]! - second[0];
      const both = reach[a]! + reach[b]!;
      return apart
        ? { joint, items: [a, b], convex: false, excess: (first, second) => limit - Math.abs(signed(first, second)), apart: { signed, least: limit, range: [lightness[a]! - lightness[b]! - both, lightness[a]! - lightness[b]! + both] } }
        : { joint, items: [a, b], convex: true, excess: (first, second) => Math.abs(signed(first, second)) - limit };
    });
    return { problem: { items, limits }, lightness, reach, costs, pairs };
  }

  test('the least cost and shift, proved', async () => {
    let [impossible, turned] = [0, 0];
    for (let seed = 1; seed <= 500; seed++) {
      const { problem, lightness, reach, costs, pairs } = randomLine(seed);
      let best: readonly [number, number] | undefined;
      const shifts = lightness.map(() => 0);
      const at = (part: number): number => lightness[part]! + shifts[part]!;
      const visit = (part: number, cost: number, size: number): void => {
        if (best !== undefined && (cost > best[0] || (cost === best[0] && size >= best[1]))) return;
        for (const { items: [a, b], limit, apart } of pairs) {
          if (Math.max(a, b) !== part - 1) continue;
          const gap = Math.abs(at(a) - at(b));
          if (apart ? gap < limit : gap > limit) return;
        }
        if (part === lightness.length) {
          best = [cost, size];
          return;
        }
        for (let shift = -reach[part]!; shift <= reach[part]!; shift++) {
          shifts[part] = shift;
          visit(part + 1, cost + (shift === 0 ? 0 : costs[part]!), size + Math.abs(shift));
        }
        shifts[part] = 0;
      };
      visit(0, 0, 0);
      const found = await solveMend(problem);
      expect([seed, found.feasible, found.proved]).toEqual([seed, best !== undefined, true]);
      if (best === undefined) {
        impossible++;
        continue;
      }
      expect([seed, found.cost, found.bound]).toEqual([seed, best[0], best[0]]);
      expect(found.shifts.reduce((sum, shift) => sum + shiftSize(shift), 0), `cabin ${seed}`).toBeCloseTo(best[1], 3);
      if (pairs.some(({ items: [a, b], apart }) => apart && (lightness[a]! - lightness[b]!) * (lightness[a]! + found.shifts[a]![0] - lightness[b]! - found.shifts[b]![0]) < 0)) turned++;
    }
    expect(impossible).toBeGreaterThan(50);
    // Some steps are turned round, which no slope at the start would have found.
    expect(turned).toBeGreaterThan(10);
  });
});

describe('limits on chroma and hue, and differences to be kept, in chains of three parts', () => {
  test('300 seeded chains: where shifts on a grid make all limits hold, a plan is found that costs no more, and all limits hold by it', async () => {
    let [served, still] = [0, 0];
    for (let seed = 1; seed <= 300; seed++) {
      const chain = randomChain(seed);
      const expected = leastOnGrid(chain);
      const { feasible, shifts, cost, changed } = await solveMend(chain.problem);
      const { items, limits } = chain.problem;
      if (expected !== undefined) expect([feasible, feasible ? cost <= expected : cost], `chain ${seed}`).toEqual([true, true]);
      if (!feasible) continue;
      served++;
      if (cost === 0) still++;
      for (const { items: [a, b], excess } of limits) expect(excess(shifts[a]!, shifts[b]!), `chain ${seed}`).toBeLessThan(1e-4);
      shifts.forEach((shift, item) => shift.forEach((value, axis) => {
        expect(value, `chain ${seed}`).toBeLessThanOrEqual(items[item]!.up[axis]! + 1e-7);
        expect(-value, `chain ${seed}`).toBeLessThanOrEqual(items[item]!.down[axis]! + 1e-7);
      }));
      expect(changed.reduce((sum, item) => sum + items[item]!.cost, 0), `chain ${seed}`).toBe(cost);
    }
    expect(served - still).toBeGreaterThan(150);
  });

  test('300 seeded chains: the bound is never above what shifts on a grid cost, and is nearer to it than that something must change', async () => {
    let [broken, raised, met, metBefore, noPlan, outOfReach] = [0, 0, 0, 0, 0, 0];
    for (let seed = 1; seed <= 300; seed++) {
      const chain = randomChain(seed);
      const expected = leastOnGrid(chain);
      const found = await solveMend(chain.problem);
      const before = await solveMend({ ...chain.problem, limits: chain.problem.limits.map(({ leastExcess: _, ...limit }) => limit) });
      if (expected !== undefined) expect(found.bound, `chain ${seed}`).toBeLessThanOrEqual(expected + 1e-9);
      expect(found.bound, `chain ${seed}`).toBeGreaterThanOrEqual(before.bound - 1e-9);
      // What is called impossible is so on the grid, and what is called proved is not undercut there.
      if (!found.feasible && found.proved) {
        expect(expected, `chain ${seed}`).toBeUndefined();
        outOfReach++;
      }
      if (found.feasible && found.proved && expected !== undefined) expect(found.cost, `chain ${seed}`).toBeLessThanOrEqual(expected);
      if (expected === undefined) noPlan++;
      if (expected === undefined || expected === 0) continue;
      broken++;
      if (found.bound > before.bound + 1e-9) raised++;
      if (found.bound >= expected - 1e-9) met++;
      if (before.bound >= expected - 1e-9) metBefore++;
    }
    expect([broken > 80, noPlan > 20]).toEqual([true, true]);
    expect(raised).toBeGreaterThan(broken / 10);
    expect(met).toBeGreaterThan(metBefore + broken / 10);
    expect(outOfReach).toBeGreaterThan(noPlan / 2);
  });

  test('150 seeded chains of strong colours: the bound is never above what shifts on a grid cost, and mostly reaches it', async () => {
    let [broken, met] = [0, 0];
    for (let seed = 1; seed <= 150; seed++) {
      const chain = randomChain(seed, 70);
      const expected = leastOnGrid(chain);
      const { feasible, proved, bound } = await solveMend(chain.problem);
      if (!feasible && proved) expect(expected, `chain ${seed}`).toBeUndefined();
      if (expected === undefined || expected === 0) continue;
      expect([feasible, bound <= expected + 1e-9], `chain ${seed}`).toEqual([true, true]);
      broken++;
      if (bound >= expected - 1e-9) met++;
    }
    expect(broken).toBeGreaterThan(50);
    expect(met).toBeGreaterThan(0.8 * broken);
  });

  test('which part must change, by hand: chroma 3 and 5 that may differ by 1, with a reach of 0.5 and of 2', () => {
    const limit = (reach: readonly [number, number]): readonly number[] | undefined => {
      const labs: readonly [Lab, Lab] = [[30, 3, 0], [30, 5, 0]];
      const criterion: Criterion = { kind: 'component', component: 'dC', absolute: true, max: 1 };
      const box = (lab: Lab, { low, high }: ShiftBox): LabBox => lab.map((value, axis) => [value + low[axis]!, value + high[axis]!]) as unknown as LabBox;
      const moved = (lab: Lab, shift: Shift): Lab => lab.map((value, axis) => value + shift[axis]!) as unknown as Lab;
      return mustChange({
        joint: 0, items: [0, 1], convex: false, excess: (first, second) => criterionValue(criterion, moved(labs[0], first), moved(labs[1], second)) - 1,
        leastExcess: (first, second) => criterionRangeIn(criterion, box(labs[0], first), box(labs[1], second))![0] - 1,
      }, reach.map((most): MendItem => ({ down: [most, most, most, 0], up: [most, most, most, 0], cost: 1, glossCost: 0 })));
    };
    expect(limit([0.5, 2])).toEqual([1]);
    expect(limit([2, 0.5])).toEqual([0]);
    expect(limit([0.6, 0.6])).toEqual([0, 1]);
    expect(limit([2, 2])).toBeUndefined();
    // Along both axes at once a reach of 0.2 takes neither by more than 0.29.
    expect(limit([0.2, 0.2])).toEqual([]);
  });
});
