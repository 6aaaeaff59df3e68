import type { Domains, PickProblem, PickSolution } from './pick-problem.ts';
import { compareSolutions, fullDomains } from './pick-problem.ts';
import type { PickOptions } from './solve-picks.ts';
import { solvePicks } from './solve-picks.ts';
import { step } from '../watch.ts';

/**
 * The `count` best choices in order, the best first; fewer where there are no more. `proved` is false from the first one that the
 * time limit left open.
 * Source: partition of the choices that are left, E. L. Lawler, Management Science 18 (1972) 401.
 */
export async function nextBest(problem: PickProblem, count: number, options: PickOptions = {}): Promise<{ readonly solutions: readonly PickSolution[]; readonly proved: boolean }> {
  const waiting: { readonly domains: Domains; readonly solution: PickSolution }[] = [];
  const solutions: PickSolution[] = [];
  let proved = true;
  const ask = async (domains: Domains): Promise<void> => {
    const outcome = await solvePicks(problem, { ...options, domains, watch: { ...options.watch, progress: undefined } });
    proved &&= outcome.proved;
    if (outcome.solution !== undefined) waiting.push({ domains, solution: outcome.solution });
  };
  await ask(options.domains ?? fullDomains(problem));
  while (solutions.length < count && waiting.length > 0) {
    if (options.until?.passed() === true) return { solutions, proved: false };
    await step(options.watch, solutions.length / count, 'finding the next best sets');
    waiting.sort((a, b) => compareSolutions(a.solution, b.solution) || comparePicks(a.solution, b.solution));
    const { domains, solution } = waiting.shift()!;
    solutions.push(solution);
    if (solutions.length === count) break;
    const settled = domains.map((domain) => [...domain]);
    for (let variable = 0; variable < domains.length; variable++) {
      const taken = solution.choice[variable];
      if (domains[variable].length > 1) {
        await ask(settled.map((domain, index) => (index === variable ? domain.filter((label) => label !== taken) : domain)));
        settled[variable] = [taken];
      }
    }
  }
  return { solutions, proved };
}

function comparePicks(a: PickSolution, b: PickSolution): number {
  const at = a.choice.findIndex((label, index) => label !== b.choice[index]);
  return at < 0 ? 0 : a.choice[at] - b.choice[at];
}
