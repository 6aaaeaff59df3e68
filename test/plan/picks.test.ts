import { describe, expect, test } from 'vitest';
import { deadline } from '../../src/plan/deadline.ts';
import { dropDeadEnds } from '../../src/plan/picks/dead-ends.ts';
import { eliminationOrder } from '../../src/plan/picks/elimination-order.ts';
import { nextBest } from '../../src/plan/picks/next-best.ts';
import { fullDomains, valueOf } from '../../src/plan/picks/pick-problem.ts';
import type { PickProblem } from '../../src/plan/picks/pick-problem.ts';
import { pickFront, solvePicks } from '../../src/plan/picks/solve-picks.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { everyPick, randomPicks } from './support/random-picks.ts';
import type { RandomPicks } from './support/random-picks.ts';

/** Expected values: all choices of a small problem listed one by one. */

function shapeOf(seed: number): RandomPicks {
  const random = seededNumbers(seed);
  const variables = 1 + Math.floor(6 * random());
  return {
    variables, alternatives: 1 + Math.floor(4 * random()), pairs: Math.floor(2.5 * variables * random()), suppliers: 1 + Math.floor(4 * random()),
    setups: random() < 0.5,
    ...(random() < 0.4 ? { maxSuppliers: 1 + Math.floor(3 * random()) } : {}),
    ...(random() < 0.4 ? { budgetShare: 0.9 * random() } : {}),
  };
}

const problems = Array.from({ length: 500 }, (_, index): PickProblem => randomPicks(index + 1, shapeOf(index + 1)));

describe('500 seeded small problems against all their choices', () => {
  test('the best choice', async () => {
    const kinds = new Set<string>();
    let without = 0;
    for (const [index, problem] of problems.entries()) {
      const [best] = everyPick(problem);
      const found = await solvePicks(problem);
      expect(found.proved, `problem ${index}`).toBe(true);
      kinds.add(found.method);
      if (best === undefined) without++;
      expect([found.solution?.harmony, found.solution?.money], `problem ${index} by ${found.method}`).toEqual([best?.harmony, best?.money]);
    }
    expect([...kinds].sort()).toEqual(['elimination', 'elimination over fronts', 'elimination over sets of suppliers']);
    expect(without).toBeGreaterThan(20);
  });

  test('the front: every choice that no other beats in both', async () => {
    for (const [index, problem] of problems.entries()) {
      const all = everyPick(problem);
      const expected: number[][] = [];
      for (const { harmony, money } of all) if (money < (expected.at(-1)?.[1] ?? Infinity)) expected.push([harmony, money]);
      const front = await pickFront(problem);
      expect(front?.map(({ harmony, money }) => [harmony, money]), `problem ${index}`).toEqual(expected);
      for (const point of front ?? []) expect(valueOf(problem, point.choice)).toEqual(point);
    }
  });

  test('the next best choices', async () => {
    for (const [index, problem] of problems.entries()) {
      const all = everyPick(problem);
      const { solutions } = await nextBest(problem, 5);
      expect(solutions.map(({ harmony, money }) => [harmony, money]), `problem ${index}`).toEqual(all.slice(0, 5).map(({ harmony, money }) => [harmony, money]));
      expect(new Set(solutions.map(({ choice }) => choice.join())).size).toBe(solutions.length);
    }
  });

  test('the mixed-integer program, which the elimination is checked by where listing is too long', async () => {
    for (const [index, problem] of problems.entries()) {
      const [best] = everyPick(problem);
      const found = await solvePicks(problem, { only: 'program' });
      expect(found.method).toBe('mixed-integer program');
      expect([found.solution?.harmony, found.solution?.money, found.proved], `problem ${index}`).toEqual([best?.harmony, best?.money, true]);
    }
  });

  test('dead ends never drop the last best choice, nor a point of the front', () => {
    let dropped = 0;
    for (const [index, problem] of problems.entries()) {
      const free: PickProblem = { ...problem, setups: problem.setups.map(() => 0), budget: undefined, maxSuppliers: undefined };
      const all = everyPick(free);
      const open = dropDeadEnds(free, fullDomains(free), 'best');
      const within = (domains: readonly (readonly number[])[]) => all.filter(({ choice }) => choice.every((label, variable) => domains[variable].includes(label)));
      const [best] = within(open);
      expect([best.harmony, best.money], `problem ${index}`).toEqual([all[0].harmony, all[0].money]);
      dropped += fullDomains(free).flat().length - open.flat().length;
      const kept = within(dropDeadEnds(free, fullDomains(free), 'front'));
      for (const point of all) {
        expect(kept.some(({ harmony, money }) => harmony <= point.harmony && money <= point.money), `problem ${index}`).toBe(true);
      }
    }
    expect(dropped).toBeGreaterThan(500);
  });
});

describe('larger problems', () => {
  test('elimination and the mixed-integer program agree on 40 variables with 4 alternatives', async () => {
    for (const seed of [1, 2, 3]) {
      const problem = randomPicks(seed, { variables: 40, alternatives: 4, pairs: 70, suppliers: 4, setups: false });
      const first = await solvePicks(problem);
      const second = await solvePicks(problem, { only: 'program' });
      expect(first.method).toBe('elimination');
      expect([second.solution?.harmony, second.solution?.money, second.proved]).toEqual([first.solution?.harmony, first.solution?.money, true]);
    }
  });

  test('a cap on suppliers and set-ups: both ways agree', async () => {
    const problem = randomPicks(7, { variables: 24, alternatives: 5, pairs: 40, suppliers: 5, setups: true, maxSuppliers: 4 });
    const first = await solvePicks(problem);
    const second = await solvePicks(problem, { only: 'program' });
    expect(first.method).toBe('elimination over sets of suppliers');
    expect([second.solution?.harmony, second.solution?.money, second.proved]).toEqual([first.solution?.harmony, first.solution?.money, true]);
  });

  test('where tables may not grow, the program takes over and still proves', async () => {
    const problem = randomPicks(3, { variables: 20, alternatives: 4, pairs: 60, suppliers: 3, setups: false });
    const small = await solvePicks(problem, { limits: { work: 10, table: 10 } });
    const large = await solvePicks(problem);
    expect(small.method).toBe('mixed-integer program');
    expect([small.solution?.harmony, small.solution?.money, small.proved]).toEqual([large.solution?.harmony, large.solution?.money, true]);
  });

  test('where the time is too short, the best so far has a bound below it and is not called proved', async () => {
    const problem = randomPicks(5, { variables: 120, alternatives: 6, pairs: 500, suppliers: 4, setups: false });
    const found = await solvePicks(problem, { until: deadline(0.5, undefined) });
    expect(found.method).toBe('mixed-integer program');
    expect(found.proved).toBe(false);
    expect(found.bound.harmony).toBeLessThanOrEqual(found.solution?.harmony ?? Infinity);
  });
});

describe('edges', () => {
  const empty: PickProblem = { variables: [], pairs: [], setups: new Float64Array(0), scale: 1 };

  test('nothing to choose', async () => {
    expect((await solvePicks(empty)).solution).toEqual({ choice: [], harmony: 0, money: 0 });
    expect(await pickFront(empty)).toEqual([{ choice: [], harmony: 0, money: 0 }]);
    expect((await nextBest(empty, 3)).solutions).toHaveLength(1);
  });

  test('a variable with nothing left has no choice', async () => {
    const problem = randomPicks(2, { variables: 3, alternatives: 3, pairs: 2, suppliers: 2, setups: false });
    const outcome = await solvePicks(problem, { domains: [[0], [], [0]] });
    expect(outcome.solution).toBeUndefined();
    expect(outcome.proved).toBe(true);
  });

  test('a stop arrives between the sets of suppliers', async () => {
    const problem = randomPicks(7, { variables: 24, alternatives: 5, pairs: 40, suppliers: 5, setups: true });
    const signal = { aborted: false };
    const asked: string[] = [];
    const run = solvePicks(problem, { watch: { signal, progress: (_, doing) => { asked.push(doing); signal.aborted = asked.length > 1; } } });
    await expect(run).rejects.toThrow('the plan was stopped');
    expect(asked).toHaveLength(2);
  });

  test('a tree costs two-variable tables only', () => {
    const ties = Array.from({ length: 30 }, (_, index): [number, number] => [index + 1, Math.floor(index / 2)]);
    const { largest, order } = eliminationOrder(new Array<number>(31).fill(5), ties);
    expect(largest).toBe(5);
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: 31 }, (_, index) => index));
  });
});
