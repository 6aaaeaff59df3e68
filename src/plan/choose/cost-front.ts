import type { PlanModel } from '../model/plan-model.ts';
import { picksOf } from '../model/plan-model.ts';
import type { CostTerms } from '../model/source-cost.ts';
import { compareSolutions } from '../picks/pick-problem.ts';
import type { PickSolution } from '../picks/pick-problem.ts';
import type { PickOptions } from '../picks/solve-picks.ts';
import { pickFront, solvePicks } from '../picks/solve-picks.ts';
import { partOfWork, step } from '../watch.ts';
import type { ChosenSet } from './chosen-set.ts';
import { chosenSet } from './chosen-set.ts';

/** A set that no cheaper one equals in harmony. */
export interface FrontSet extends ChosenSet {
  /** That there is none better at its cost or less is proved. */
  readonly proved: boolean;
}

export interface CostFront {
  /** Best harmony and dearest first. */
  readonly sets: readonly FrontSet[];
  /** Points of the whole front, of which `sets` are spread evenly over the money; undefined where the whole was too large to find. */
  readonly of: number | undefined;
}

/**
 * The front of money and harmony, at most `count` points of it with both ends. Whole and exact by elimination where it stays small; else
 * point by point, each the best set within a budget that steps down evenly.
 */
export async function costFront(model: PlanModel, best: PickSolution, count: number, terms: CostTerms, options: PickOptions): Promise<CostFront> {
  const whole = await pickFront(model.problem, { ...options, watch: partOfWork(options.watch, 0, 0.3) });
  const point = (solution: PickSolution, proved: boolean): FrontSet => ({ ...chosenSet(model, picksOf(model, solution.choice), terms), proved });
  if (whole !== undefined) return { sets: spread(whole, count).map((solution) => point(solution, true)), of: whole.length };
  const stepped = await byBudgets(model, best, count, options);
  return { sets: stepped.map(({ solution, proved }) => point(solution, proved)), of: undefined };
}

/** At most `count` points, both ends among them, each the nearest one left to an even step of money. */
export function spread<T extends { readonly money: number }>(points: readonly T[], count: number): readonly T[] {
  if (points.length <= count) return points;
  const [most, least] = [points[0].money, points[points.length - 1].money];
  const kept = new Set([0, points.length - 1]);
  for (let index = 1; index < count - 1; index++) {
    const wanted = most - (index / (count - 1)) * (most - least);
    let nearest = -1;
    points.forEach((point, at) => {
      if (!kept.has(at) && (nearest < 0 || Math.abs(point.money - wanted) < Math.abs(points[nearest].money - wanted))) nearest = at;
    });
    kept.add(nearest);
  }
  return points.filter((_, index) => kept.has(index));
}

async function byBudgets(model: PlanModel, best: PickSolution, count: number, options: PickOptions): Promise<readonly { solution: PickSolution; proved: boolean }[]> {
  const free = { ...model.problem, variables: model.problem.variables.map((variable) => ({ ...variable, harmony: variable.harmony.map(() => 0) })), pairs: [] };
  const cheapest = (await solvePicks(free, options)).solution;
  const found: { solution: PickSolution; proved: boolean }[] = [{ solution: best, proved: true }];
  const least = cheapest?.money ?? best.money;
  for (let index = 1; index < count && options.until?.passed() !== true; index++) {
    await step(options.watch, 0.3 + (0.7 * index) / count, 'finding the front of cost and harmony');
    const budget = Math.ceil(best.money - (index / (count - 1)) * (best.money - least));
    const { solution, proved } = await solvePicks({ ...model.problem, budget }, options);
    const last = found[found.length - 1].solution;
    if (solution !== undefined && solution.money < last.money && compareSolutions(last, solution) < 0) found.push({ solution, proved });
  }
  return found;
}
