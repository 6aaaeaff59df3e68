import { beforeAll, describe, expect, test } from 'vitest';
import { chosenSet } from '../../src/plan/choose/chosen-set.ts';
import { costFront } from '../../src/plan/choose/cost-front.ts';
import { supplierDropOuts } from '../../src/plan/choose/drop-outs.ts';
import { whyNoSet } from '../../src/plan/choose/no-set.ts';
import { whyNotPicked } from '../../src/plan/choose/not-picked.ts';
import { planNames } from '../../src/plan/choose/plan-words.ts';
import { singleSwaps } from '../../src/plan/choose/swaps.ts';
import { picksOf, planModel } from '../../src/plan/model/plan-model.ts';
import type { PlanModel } from '../../src/plan/model/plan-model.ts';
import { nextBest } from '../../src/plan/picks/next-best.ts';
import { solvePicks } from '../../src/plan/picks/solve-picks.ts';
import { compareListed, everyListedSet, listedCabin } from './support/listed-cabin.ts';
import type { ListedCabin, ListedSet } from './support/listed-cabin.ts';

/** Expected values: all sets of sources of a small cabin, listed one by one and priced as the terms are written. */
interface Case extends ListedCabin {
  readonly all: readonly ListedSet[];
  readonly model: PlanModel;
}
type Told = Omit<ListedSet, 'picks' | 'lead'>;

const rounded = ({ clashes, overUse, cost }: Told): readonly number[] => [clashes, overUse, cost].map((value) => Number(value.toFixed(6)));
const told = (model: PlanModel, choice: readonly number[], terms: ListedCabin['terms']): Told => chosenSet(model, picksOf(model, choice), terms);

describe('500 seeded small cabins with modules, shared suppliers and sources, locks, carry-over parts, lead times, budgets, caps and set-ups', () => {
  let cases: readonly Case[];
  beforeAll(async () => {
    cases = await Promise.all(Array.from({ length: 500 }, async (_, index): Promise<Case> => {
      const made = listedCabin(index + 1);
      return { ...made, all: everyListedSet(made), model: await planModel(made.cabin, made.judge, made.terms) };
    }));
  });

  test('every kind of term is asked for often, and some cabins have no set', () => {
    const often = (has: (each: Case) => boolean): number => cases.filter(has).length;
    for (const term of ['budget', 'maxSuppliers', 'maxLeadWeeks', 'locked', 'without', 'shares', 'seriesPaid', 'releaseFrozen', 'volume'] as const) expect(often(({ terms }) => terms[term] !== undefined), term).toBeGreaterThan(40);
    expect(often(({ cabin }) => cabin.parts.filter(({ module }) => module !== undefined).length > 1)).toBeGreaterThan(60);
    expect(often(({ cabin }) => cabin.parts.some(({ frozen }) => frozen === true))).toBeGreaterThan(100);
    expect(often(({ all }) => all.length === 0)).toBeGreaterThan(50);
    expect(often(({ all }) => all.length > 20)).toBeGreaterThan(50);
  });

  test('the best set', async () => {
    for (const [index, { all, model, terms }] of cases.entries()) {
      const { solution, proved } = await solvePicks(model.problem);
      expect(proved, `cabin ${index}`).toBe(true);
      expect(solution === undefined ? undefined : rounded(told(model, solution.choice, terms)), `cabin ${index}`).toEqual(all[0] === undefined ? undefined : rounded(all[0]));
      if (solution !== undefined) expect(all.map(({ picks }) => picks), `cabin ${index}`).toContainEqual(picksOf(model, solution.choice));
    }
  });

  test('where there is none, the reason has a figure or a part', async () => {
    for (const { all, model, terms } of cases.filter((each) => each.all.length === 0)) {
      const words = await whyNoSet(model, terms, planNames(model), {});
      expect(words.length).toBeGreaterThan(0);
      const free = everyListedSet({ ...cases[0], cabin: model.cabin, judge: model.judge, terms: { ...terms, budget: undefined } as ListedCabin['terms'] });
      const cheapest = free.length === 0 ? undefined : Math.min(...free.map(({ cost }) => cost));
      if (cheapest !== undefined) expect(words.join(' ').replaceAll('\u00a0', '')).toContain(`costs ${cheapest}`);
      expect(all).toEqual([]);
    }
  });

  test('the next best sets', async () => {
    for (const [index, { all, model, terms }] of cases.entries()) {
      const { solutions } = await nextBest(model.problem, 5);
      expect(solutions.map(({ choice }) => rounded(told(model, choice, terms))), `cabin ${index}`).toEqual(all.slice(0, 5).map(rounded));
      expect(new Set(solutions.map(({ choice }) => choice.join())).size).toBe(solutions.length);
    }
  });

  test('the front of cost and harmony', async () => {
    for (const [index, { all, model, terms }] of cases.entries()) {
      const { solution } = await solvePicks(model.problem);
      if (solution === undefined) continue;
      const expected = all.filter((set) => !all.some((other) => other.cost <= set.cost && compareListed({ ...other, cost: 0 }, { ...set, cost: 0 }) <= 0 && compareListed(other, set) !== 0));
      const distinct = expected.filter((set, at) => at === 0 || compareListed(set, expected[at - 1]) !== 0);
      const front = await costFront(model, solution, 1000, terms, {});
      expect(front.sets.every(({ proved }) => proved)).toBe(true);
      expect(front.sets.map(rounded), `cabin ${index}`).toEqual(distinct.map(rounded));
    }
  });

  test('single swaps from the best set: what changes, as between two sets of the list', async () => {
    let seen = 0;
    for (const [index, { cabin, judge, model, terms }] of cases.entries()) {
      const { solution } = await solvePicks(model.problem);
      if (solution === undefined) continue;
      const best = chosenSet(model, picksOf(model, solution.choice), terms);
      // A swap is told though it may break the budget or the cap: it is a question, not a plan.
      const free = everyListedSet({ cabin, judge, terms: { ...terms, budget: undefined, maxSuppliers: undefined } as ListedCabin['terms'] });
      const swaps = singleSwaps(model, best, solution.choice, terms, planNames(model));
      expect(swaps.length).toBe(model.groups.reduce((sum, { alternatives }) => sum + alternatives.length - 1, 0));
      for (const { to, change } of swaps) {
        const picks = { ...best.picks, ...to };
        const set = free.find((each) => Object.entries(each.picks).every(([part, source]) => picks[part] === source))!;
        expect(set, `cabin ${index}: ${JSON.stringify(to)} is in the list`).toBeDefined();
        expect(change.clashes).toBeCloseTo(set.clashes - best.clashes, 9);
        expect(change.overUse).toBeCloseTo(set.overUse - best.overUse, 9);
        expect(change.cost).toBeCloseTo(set.cost - best.cost, 6);
        expect(change.leadWeeks).toBe(set.lead - best.leadWeeks);
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(500);
  });

  test('why a source was not picked: the best set that has it, by the list', async () => {
    let [compared, ruledOut] = [0, 0];
    for (const [index, { cabin, all, model, terms }] of cases.entries()) {
      const { solution } = await solvePicks(model.problem);
      if (solution === undefined) continue;
      const best = chosenSet(model, picksOf(model, solution.choice), terms);
      const reasons = await whyNotPicked(model, best, terms, planNames(model), {});
      // Every source that is not in the set is told once.
      expect(reasons.map(({ part, source }) => `${part} ${source}`).sort()).toEqual(cabin.parts.flatMap((part) => part.sources.filter(({ id }) => best.picks[part.id] !== id).map(({ id }) => `${part.id} ${id}`)).sort());
      for (const { part, source, because, bestWithIt } of reasons) {
        const having = all.filter(({ picks }) => picks[part] === source);
        if (bestWithIt === undefined) {
          expect(having, `cabin ${index}: ${part} ${source} is ${because}`).toEqual([]);
          ruledOut++;
          continue;
        }
        expect([bestWithIt.clashes, bestWithIt.overUse, bestWithIt.cost].map((value) => Number(value.toFixed(6)) + 0), `cabin ${index}: ${part} ${source}`)
          .toEqual([having[0].clashes - best.clashes, having[0].overUse - best.overUse, having[0].cost - best.cost].map((value) => Number(value.toFixed(6)) + 0));
        expect(because).toBe(compareListed(having[0], best) === 0 && having[0].lead === best.leadWeeks ? 'as good' : 'worse');
        compared++;
      }
    }
    expect([compared > 300, ruledOut > 300]).toEqual([true, true]);
  });

  test('what becomes of it if a supplier drops out: the best set without it, by the list', async () => {
    let [without, none] = [0, 0];
    for (const [index, { cabin, all, model, terms }] of cases.entries()) {
      const { solution } = await solvePicks(model.problem);
      if (solution === undefined) continue;
      const best = chosenSet(model, picksOf(model, solution.choice), terms);
      for (const { supplier, change, unserved } of await supplierDropOuts(model, best, terms, planNames(model), {})) {
        const served = all.filter(({ picks }) => cabin.parts.every(({ id, sources }) => sources.find((source) => source.id === picks[id])!.supplier !== supplier));
        if (change === undefined) {
          expect(served, `cabin ${index} without ${supplier}`).toEqual([]);
          none++;
          continue;
        }
        expect(unserved).toEqual([]);
        expect([change.clashes, change.overUse, change.cost].map((value) => Number(value.toFixed(6)) + 0), `cabin ${index} without ${supplier}`)
          .toEqual([served[0].clashes - best.clashes, served[0].overUse - best.overUse, served[0].cost - best.cost].map((value) => Number(value.toFixed(6)) + 0));
        without++;
      }
    }
    expect([without > 200, none > 200]).toEqual([true, true]);
  });
});
