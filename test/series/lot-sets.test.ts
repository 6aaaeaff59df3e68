import { describe, expect, test } from 'vitest';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { bestSets, costOfSets, setsInOrder } from '../../src/series/build/lot-sets.ts';
import type { LotProblem } from '../../src/series/build/lot-sets.ts';
import { cabinSeries } from '../../src/series/index.ts';
import { generator } from '../readings/support/simulation.ts';
import type { PlannedLot } from './support/lot-cabin.ts';
import { lotCabin, lotPart } from './support/lot-cabin.ts';

/** Ordered choices of so many of the numbers below another. */
function choices(of: number, count: number): number[][] {
  if (count === 0) return [[]];
  return choices(of, count - 1).flatMap((chosen) => Array.from({ length: of }, (_, lot) => lot).filter((lot) => !chosen.includes(lot)).map((lot) => [...chosen, lot]));
}

/** Least cost over every choice of lots for every part: slow, and by the definition alone. */
function byTrying(problem: LotProblem): number {
  const count = Math.min(...problem.lots);
  const all = problem.lots.map((own) => choices(own, count));
  let best = Infinity;
  const go = (part: number, picked: readonly number[][]): void => {
    if (part === all.length) {
      best = Math.min(best, problem.ties.reduce((sum, { first, second, costs }) =>
        sum + picked[first].reduce((inner, lot, set) => inner + costs[lot * problem.lots[second] + picked[second][set]], 0), 0));
      return;
    }
    // The order of the sets does not matter: the first part may keep one choice in rising order.
    for (const own of part === 0 ? all[0].filter((lots) => lots.every((lot, i) => i === 0 || lot > lots[i - 1])) : all[part]) go(part + 1, [...picked, own]);
  };
  go(0, []);
  return best;
}

function problemOf(random: () => number, lots: readonly number[], edges: readonly (readonly [number, number])[]): LotProblem {
  return { lots, ties: edges.map(([first, second]) => ({ first, second, costs: Float64Array.from({ length: lots[first] * lots[second] }, () => Math.floor(20 * random())) })) };
}

const line = [[0, 1], [1, 2]] as const;
const ring = [[0, 1], [2, 1], [0, 2]] as const;
const star = [[1, 0], [0, 2], [3, 0]] as const;

describe('500 seeded problems cost what trying every way finds', () => {
  test.each([
    ['two parts', 200, [4, 5], [[0, 1]]], ['a line of three', 100, [3, 3, 3], line], ['a line with lots left over', 60, [3, 2, 4], line],
    ['a ring', 100, [3, 3, 3], ring], ['a star of four', 40, [3, 3, 3, 3], star],
  ] as const)('%s', (_, rounds, lots, edges) => {
    const random = generator(rounds);
    for (let round = 0; round < rounds; round++) {
      const problem = problemOf(random, lots, edges);
      const found = bestSets(problem);
      expect(found.cost).toBe(byTrying(problem));
      expect(found.proved).toBe(true);
      expect(costOfSets(problem, found.sets)).toBe(found.cost);
      problem.lots.forEach((own, part) => expect(new Set(found.sets.map((set) => set[part])).size).toBe(Math.min(...lots, own)));
    }
  });
});

test('many lots in a ring are searched: never worse than the order of production, never below the bound, and proved only there', () => {
  const random = generator(4);
  for (let round = 0; round < 20; round++) {
    const problem = problemOf(random, [8, 9, 8], ring);
    const found = bestSets(problem);
    expect(found.method).toBe('search');
    expect(found.cost).toBeLessThanOrEqual(costOfSets(problem, setsInOrder(problem)));
    expect(found.cost).toBeGreaterThanOrEqual(found.bound);
    expect(found.proved).toBe(found.cost === found.bound);
  }
});

const [book] = builtInRuleBooks;

describe('lots of parts', () => {
  /** Two families of colour, made by turns on one part and one after the other on its neighbour. */
  const light = (id: string, day: number): PlannedLot => ({ id, day, lab: [30, 0.4, -1] });
  const yellow = (id: string, day: number): PlannedLot => ({ id, day, lab: [30, 0.4, 1] });
  const turns = [light('A1', 0), yellow('A2', 10), light('A3', 20), yellow('A4', 30)];
  const blocks = [light('B1', 0), light('B2', 10), yellow('B3', 20), yellow('B4', 30)];

  test('are matched by their families, where the order of production clashes', async () => {
    const { pairs: [plan], sets } = await cabinSeries(lotCabin(turns, blocks), book);
    // By hand: in order A2 with B2 and A3 with B3 are of two families, 2 apart in b*, far over 0.7; the others are equal.
    expect(plan.asProduced.clashes).toBeCloseTo(2 + 2 * plan.inOrder[0].clashes, 6);
    expect(plan.best.clashes).toBeCloseTo(4 * plan.inOrder[0].clashes, 6);
    const families = plan.sets.map(({ lots: [a, b] }) => [a, b].sort().join());
    for (const family of families) expect(['A1,B1', 'A1,B2', 'A3,B1', 'A3,B2', 'A2,B3', 'A2,B4', 'A4,B3', 'A4,B4']).toContain(family);
    expect(plan).toMatchObject({ proved: true, method: 'assignment', leftOver: [[], []] });
    expect(sets).toEqual([]);
  });

  test('that are not there are not planned with, and what is left over is said', async () => {
    const { pairs: [plan] } = await cabinSeries(lotCabin(turns, blocks), book, { available: { b: ['B1', 'B2'] } });
    expect(plan.sets).toHaveLength(2);
    // Both lots of B are of one family: the lots of A of the other are left.
    expect(plan.leftOver).toEqual([['A2', 'A4'], []]);
    expect(plan.best.clashes).toBeLessThan(plan.asProduced.clashes);
  });

  test('of three parts in a line are built as sets', async () => {
    const cabin = lotCabin(turns, blocks, {
      parts: [lotPart('a', 'Panel A', turns), lotPart('b', 'Panel B', blocks), lotPart('c', 'Panel C', turns.map((lot) => ({ ...lot, id: lot.id.replace('A', 'C') })))],
      joints: [{ id: 'a-b', parts: ['a', 'b'], kind: 'gap', gapMm: 1 }, { id: 'b-c', parts: ['c', 'b'], kind: 'gap', gapMm: 1 }],
    });
    const { sets: [plan], pairs } = await cabinSeries(cabin, book);
    expect(pairs).toHaveLength(2);
    expect(plan).toMatchObject({ parts: ['a', 'b', 'c'], joints: ['a-b', 'b-c'], method: 'assignments along a tree', proved: true });
    // In each joint two of four sets are of two families, and count 1 in place of what a pair of one family counts.
    expect(plan.asProduced.clashes - plan.best.clashes).toBeCloseTo(4 * (1 - pairs[0].inOrder[0].clashes), 6);
  });

  test('names that are not in the cabin are issues', async () => {
    const { issues } = await cabinSeries(lotCabin(turns, blocks), book, { parts: ['z'], joints: ['q'], available: { a: ['A9'] } });
    expect(issues.map(({ code }) => code)).toEqual(['unknown-part', 'unknown-joint', 'unknown-lot']);
  });
});
