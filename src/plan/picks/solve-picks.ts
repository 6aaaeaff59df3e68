import type { Deadline } from '../deadline.ts';
import type { Watch } from '../watch.ts';
import { step } from '../watch.ts';
import { dropDeadEnds } from './dead-ends.ts';
import type { EliminationLimits } from './eliminate-best.ts';
import { eliminateBest, usualLimits } from './eliminate-best.ts';
import { eliminateFront, labelsOf, undominated } from './eliminate-front.ts';
import { pickNetwork } from './pick-network.ts';
import { compareSolutions, fullDomains, valueOf } from './pick-problem.ts';
import type { Domains, PickProblem, PickSolution } from './pick-problem.ts';
import { picksByProgram } from './pick-program.ts';
import { servedBy, supplierSubsets, suppliersMatter } from './supplier-subsets.ts';

export type PickMethod = 'elimination' | 'elimination over sets of suppliers' | 'elimination over fronts' | 'mixed-integer program';

export interface PickOptions {
  readonly domains?: Domains;
  readonly watch?: Watch;
  /** When a mixed-integer program ends, where one is needed. */
  readonly until?: Deadline;
  readonly limits?: EliminationLimits;
  /** Another method than the one that suits, for checks of one by the other. */
  readonly only?: 'program';
}

export interface PickOutcome {
  /** Undefined where no choice keeps to the budget and the cap (`proved`), or none was met in time. */
  readonly solution: PickSolution | undefined;
  readonly proved: boolean;
  readonly bound: { readonly harmony: number; readonly money: number };
  readonly method: PickMethod;
}

/**
 * The best choice: least harmony cost, then least money, within the budget and the cap on suppliers. Exact and proved by elimination
 * wherever the tables stay small; else by a mixed-integer program, whose bound is given where its time runs out.
 */
export async function solvePicks(problem: PickProblem, options: PickOptions = {}): Promise<PickOutcome> {
  const domains = options.domains ?? fullDomains(problem);
  if (domains.some((domain) => domain.length === 0)) return nothing('elimination');
  if (options.only !== 'program') {
    const free = await bestWithoutBudget(problem, domains, options);
    if (free !== undefined) {
      const { solution, method } = free;
      if (free.over === true) return { solution: keeping(problem, solution), proved: false, bound: { harmony: bestOf(problem, domains, options.limits ?? usualLimits)?.harmony ?? 0, money: 0 }, method };
      if (solution === undefined || solution.money <= (problem.budget ?? Infinity)) return proved(solution, method);
      const front = await pickFront(problem, { ...options, domains });
      if (front !== undefined) return proved(front[0], 'elimination over fronts');
    }
  }
  const found = await picksByProgram(problem, domains, options.until);
  return { solution: found.solution, proved: found.proved, bound: found.bound, method: 'mixed-integer program' };
}

/** A choice that was met before the time was over, if the budget allows it. */
const keeping = (problem: PickProblem, solution: PickSolution | undefined): PickSolution | undefined =>
  (solution !== undefined && solution.money <= (problem.budget ?? Infinity) ? solution : undefined);

const nothing = (method: PickMethod): PickOutcome => proved(undefined, method);

const proved = (solution: PickSolution | undefined, method: PickMethod): PickOutcome => ({
  solution, proved: true, method,
  bound: { harmony: solution?.harmony ?? Infinity, money: solution?.money ?? Infinity },
});

/** Undefined where the tables would grow too large. */
async function bestWithoutBudget(
  problem: PickProblem, domains: Domains, options: PickOptions,
): Promise<{ readonly solution: PickSolution | undefined; readonly method: PickMethod; readonly over?: boolean } | undefined> {
  const limits = options.limits ?? usualLimits;
  if (!suppliersMatter(problem, domains)) {
    const solution = bestOf(problem, domains, limits);
    return solution === undefined ? undefined : { solution, method: 'elimination' };
  }
  const subsets = supplierSubsets(problem, domains);
  if (subsets === undefined) return undefined;
  let best: PickSolution | undefined;
  // A set of suppliers cannot be better in harmony than one that holds it, and larger sets come first.
  const beaten: { readonly set: ReadonlySet<number>; readonly harmony: number }[] = [];
  for (const [index, subset] of subsets.entries()) {
    await step(options.watch, index / subsets.length, 'comparing sets of suppliers');
    if (index > 0 && options.until?.passed() === true) return { solution: best, method: 'elimination over sets of suppliers', over: true };
    const least = best?.harmony ?? Infinity;
    if (beaten.some(({ set, harmony }) => harmony > least && subset.every((supplier) => set.has(supplier)))) continue;
    const served = servedBy(problem, domains, subset);
    if (served === undefined) continue;
    const found = bestOf(problem, served, limits);
    if (found === undefined) return undefined;
    beaten.push({ set: new Set(subset), harmony: found.harmony });
    if (best === undefined || compareSolutions(found, best) < 0) best = found;
  }
  return { solution: best, method: 'elimination over sets of suppliers' };
}

function bestOf(problem: PickProblem, domains: Domains, limits: EliminationLimits): PickSolution | undefined {
  const open = dropDeadEnds(problem, domains, 'best');
  const found = eliminateBest(pickNetwork(problem, open), limits);
  return found === undefined ? undefined : valueOf(problem, open.map((domain, index) => domain[found.labels[index]]));
}

/**
 * Every choice that no other beats in both harmony and money, least harmony cost first; exact. Empty where nothing is allowed;
 * undefined where it would grow too large.
 */
export async function pickFront(problem: PickProblem, options: PickOptions = {}): Promise<readonly PickSolution[] | undefined> {
  const domains = options.domains ?? fullDomains(problem);
  if (domains.some((domain) => domain.length === 0)) return [];
  const subsets = suppliersMatter(problem, domains) ? supplierSubsets(problem, domains) : [undefined];
  if (subsets === undefined) return undefined;
  const points: PickSolution[] = [];
  for (const [index, subset] of subsets.entries()) {
    await step(options.watch, index / subsets.length, 'finding the front');
    const served = subset === undefined ? domains : servedBy(problem, domains, subset);
    if (served === undefined) continue;
    const setups = subset?.reduce((sum, supplier) => sum + problem.setups[supplier], 0) ?? forcedSetups(problem, domains);
    const open = dropDeadEnds(problem, served, 'front');
    const front = eliminateFront(pickNetwork(problem, open), (problem.budget ?? Infinity) - setups);
    if (front === undefined) return undefined;
    for (const point of front) {
      const labels = labelsOf(point, open.length);
      points.push(valueOf(problem, open.map((domain, variable) => domain[labels[variable]])));
    }
  }
  return undominated(points).filter((point) => point.money <= (problem.budget ?? Infinity));
}

/** Set-ups of the suppliers that every choice needs, where none of the others has one. */
const forcedSetups = (problem: PickProblem, domains: Domains): number => {
  const used = new Set(domains.flatMap((domain, index) => problem.variables[index].suppliers[domain[0]]));
  return [...used].reduce((sum, supplier) => sum + problem.setups[supplier], 0);
};
