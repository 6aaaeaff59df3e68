import type { Domains, PickProblem } from './pick-problem.ts';

/** `best`: only one best choice need remain. `front`: one choice for every point of the front of harmony and money. */
export type DeadEndAim = 'best' | 'front';

interface Neighbour {
  readonly other: number;
  readonly table: Float64Array;
  /** Offset of alternative r with x: r * own + x * others. */
  readonly own: number;
  readonly others: number;
}

/**
 * Drops alternatives that cannot be part of a best choice, whatever the others are: r goes where some s is never worse.
 * Money counts after harmony for `best`, and must not be worse by itself for `front`. Set-ups, caps and budgets are not looked at,
 * so the problem must already be one of free suppliers; a budget stays satisfied, since money never rises for `front`.
 * Of two alternatives that are alike the first stays.
 * Source: dead-end elimination with the sharper criterion of R. F. Goldstein, Biophysical Journal 66 (1994) 1335.
 */
export function dropDeadEnds(problem: PickProblem, domains: Domains, aim: DeadEndAim): Domains {
  const neighbours = neighboursOf(problem);
  const open = domains.map((domain) => [...domain]);
  const waiting = new Set(open.map((_, index) => index));
  for (const variable of waiting) {
    waiting.delete(variable);
    const before = [...open[variable]];
    for (const r of before) {
      if (open[variable].some((s) => s !== r && neverWorse(problem, open, neighbours[variable], variable, s, r, aim))) {
        open[variable].splice(open[variable].indexOf(r), 1);
      }
    }
    if (open[variable].length < before.length) for (const { other } of neighbours[variable]) waiting.add(other);
  }
  return open;
}

function neighboursOf(problem: PickProblem): readonly (readonly Neighbour[])[] {
  const lists: Neighbour[][] = problem.variables.map(() => []);
  for (const { first, second, harmony } of problem.pairs) {
    const width = problem.variables[second].money.length;
    lists[first].push({ other: second, table: harmony, own: width, others: 1 });
    lists[second].push({ other: first, table: harmony, own: 1, others: width });
  }
  return lists;
}

/** Whether taking s in place of r never makes a choice worse; alike counts only where s comes first. */
function neverWorse(
  problem: PickProblem, open: readonly (readonly number[])[], neighbours: readonly Neighbour[], variable: number, s: number, r: number, aim: DeadEndAim,
): boolean {
  const { harmony, money } = problem.variables[variable];
  const saved = money[r] - money[s];
  if (aim === 'front' && saved < 0) return false;
  let least = harmony[r] - harmony[s];
  for (const { other, table, own, others } of neighbours) {
    let smallest = Infinity;
    for (const x of open[other]) {
      const gain = table[r * own + x * others] - table[s * own + x * others];
      if (gain < smallest) smallest = gain;
    }
    least += smallest;
  }
  if (least !== 0) return least > 0;
  return saved !== 0 ? saved > 0 : s < r;
}
