import type { MendProblem } from './mend-problem.ts';
import { solveMend } from './solve-mend.ts';
import type { MendSolverOptions } from './solve-mend.ts';

/**
 * Joints that make a plan impossible, none of which can be left out: without any one of them the others can all be made to hold. Found by
 * leaving joints out one after the other, those in the order given first. Empty where a plan is possible. Where the time ends before, what is
 * left by then: a plan is impossible by them, though some might be left out.
 * Source: deletion filter, J. W. Chinneck and E. W. Dravnieks, ORSA Journal on Computing 3 (1991) 157.
 */
export async function irreducibleJoints(problem: MendProblem, joints: readonly number[], options: MendSolverOptions = {}): Promise<readonly number[]> {
  const free: MendProblem = { ...problem, items: problem.items.map((item) => ({ ...item, cost: 0, glossCost: 0 })) };
  const over = (): boolean => options.until?.passed() === true;
  const possible = async (kept: readonly number[]): Promise<boolean> => (await solveMend(free, { ...options, joints: new Set(kept) })).feasible;
  if (await possible(joints)) return [];
  let kept = [...joints];
  // Halves first: most joints have no part in it.
  for (let size = Math.ceil(kept.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
    for (let from = 0; from < kept.length;) {
      const rest = [...kept.slice(0, from), ...kept.slice(from + size)];
      if (over()) return kept;
      if (rest.length > 0 && !(await possible(rest)) && !over()) kept = rest;
      else from += size;
    }
  }
  return kept;
}
