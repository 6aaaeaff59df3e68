import { withinTime } from '../deadline.ts';
import type { Deadline } from '../deadline.ts';
import { minimise, ProgramRows } from '../solver/highs-solver.ts';
import type { Columns, ProgramResult } from '../solver/highs-solver.ts';
import type { Domains, PickProblem, PickSolution } from './pick-problem.ts';
import { suppliersOf, valueOf } from './pick-problem.ts';

/** What the program found, and how far it is proved. */
export interface ProgramPicks {
  readonly solution: PickSolution | undefined;
  /** No choice is better than this, in harmony cost and then in money. */
  readonly bound: { readonly harmony: number; readonly money: number };
  readonly proved: boolean;
  readonly infeasible: boolean;
}

interface Layout {
  readonly starts: readonly number[];
  readonly ofSupplier: ReadonlyMap<number, number>;
  readonly count: number;
  readonly clash: Float64Array;
  readonly overUse: Float64Array;
  readonly money: Float64Array;
  readonly rows: ProgramRows;
}

/** Share of one unit by which a stage may pass the optimum of the stage before it. */
const slack = 0.25;

/**
 * The best choice by a mixed-integer program in three stages: fewest clashes, then least over-use, then least money, each stage
 * held to what the one before reached. Carries caps on suppliers, set-ups and budgets of any size. Where the time runs out the
 * best choice met so far is given with the bound that is proved.
 * Source: local polytope of a pairwise model with binary alternatives, A. M. C. A. Koster, S. P. M. van Hoesel, A. W. J. Kolen, Operations Research Letters 23 (1998) 89.
 */
export async function picksByProgram(problem: PickProblem, domains: Domains, until?: Deadline): Promise<ProgramPicks> {
  const layout = layOut(problem, domains);
  const { rows, count, clash, overUse, money } = layout;
  const integer = Int32Array.from({ length: count }, (_, column) => (column < layout.starts[layout.starts.length - 1] || column >= count - layout.ofSupplier.size ? 1 : 0));
  const solve = (cost: Float64Array): Promise<ProgramResult> => minimise(
    { cost, lower: new Float64Array(count), upper: new Float64Array(count).fill(1), integer } satisfies Columns, rows,
    until === undefined ? {} : withinTime(until),
  );
  const all = Int32Array.from({ length: count }, (_, column) => column);
  let best: PickSolution | undefined;
  let reached = { clash: 0, overUse: 0 };
  const harmonyOf = (clashes: number, use: number): number => clashes * problem.scale + use;
  for (const [stage, cost] of [clash, overUse, money].entries()) {
    const result = await solve(cost);
    if (result.status === 'infeasible') return { solution: best, bound: { harmony: Infinity, money: Infinity }, proved: best === undefined, infeasible: best === undefined };
    const found = result.values === undefined ? undefined : valueOf(problem, choiceFrom(layout, domains, result.values));
    if (found !== undefined && isAllowed(problem, found) && (best === undefined || found.harmony < best.harmony || (found.harmony === best.harmony && found.money < best.money))) best = found;
    const proved = result.status === 'optimal' && found !== undefined;
    if (!proved) {
      const bound = Math.max(0, Math.ceil(result.bound - 1e-6));
      const harmony = stage === 0 ? harmonyOf(bound, 0) : stage === 1 ? harmonyOf(reached.clash, bound) : harmonyOf(reached.clash, reached.overUse);
      return { solution: best, bound: { harmony, money: stage === 2 ? bound : 0 }, proved: false, infeasible: false };
    }
    const value = Math.round(result.objective);
    if (stage === 0) reached = { ...reached, clash: value };
    if (stage === 1) reached = { ...reached, overUse: value };
    const used = [...all].filter((column) => cost[column] !== 0);
    if (stage < 2) rows.add(-Infinity, value + slack, used, used.map((column) => cost[column]));
  }
  return { solution: best, bound: { harmony: best?.harmony ?? Infinity, money: best?.money ?? Infinity }, proved: best !== undefined, infeasible: false };
}

const isAllowed = (problem: PickProblem, found: PickSolution): boolean =>
  found.money <= (problem.budget ?? Infinity) && suppliersOf(problem, found.choice).length <= (problem.maxSuppliers ?? Infinity);

function choiceFrom({ starts }: Layout, domains: Domains, values: Float64Array): number[] {
  return domains.map((domain, index) => {
    let chosen = 0;
    domain.forEach((_, position) => { if (values[starts[index] + position] > values[starts[index] + chosen]) chosen = position; });
    return domain[chosen];
  });
}

function layOut(problem: PickProblem, domains: Domains): Layout {
  const starts = [0];
  for (const domain of domains) starts.push(starts[starts.length - 1] + domain.length);
  const joints = problem.pairs.map((pair) => ({ ...pair, table: openTable(problem, domains, pair) })).filter(({ table }) => table.some((value) => value !== 0));
  const jointStarts: number[] = [];
  let count = starts[starts.length - 1];
  for (const { table } of joints) {
    jointStarts.push(count);
    count += table.length;
  }
  const inPlay = [...new Set(domains.flatMap((domain, index) => domain.flatMap((label) => problem.variables[index].suppliers[label])))].sort((a, b) => a - b);
  const tied = problem.maxSuppliers !== undefined || inPlay.some((supplier) => problem.setups[supplier] > 0);
  const ofSupplier = new Map(tied ? inPlay.map((supplier, index) => [supplier, count + index]) : []);
  count += ofSupplier.size;
  const [clash, overUse, money] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  const setHarmony = (column: number, value: number): void => {
    clash[column] = Math.floor(value / problem.scale);
    overUse[column] = value - clash[column] * problem.scale;
  };
  const rows = new ProgramRows();
  domains.forEach((domain, index) => {
    const columns = domain.map((_, position) => starts[index] + position);
    rows.add(1, 1, columns, columns.map(() => 1));
    domain.forEach((label, position) => {
      setHarmony(columns[position], problem.variables[index].harmony[label]);
      money[columns[position]] = problem.variables[index].money[label];
      for (const supplier of problem.variables[index].suppliers[label]) {
        const opened = ofSupplier.get(supplier);
        if (opened !== undefined) rows.add(-Infinity, 0, [columns[position], opened], [1, -1]);
      }
    });
  });
  joints.forEach(({ first, second, table }, joint) => {
    const [tall, wide] = [domains[first].length, domains[second].length];
    const at = (a: number, b: number): number => jointStarts[joint] + a * wide + b;
    table.forEach((value, entry) => setHarmony(jointStarts[joint] + entry, value));
    for (let a = 0; a < tall; a++) {
      const row = Array.from({ length: wide }, (_, b) => at(a, b));
      rows.add(0, 0, [...row, starts[first] + a], [...row.map(() => 1), -1]);
    }
    for (let b = 0; b < wide; b++) {
      const column = Array.from({ length: tall }, (_, a) => at(a, b));
      rows.add(0, 0, [...column, starts[second] + b], [...column.map(() => 1), -1]);
    }
  });
  for (const [supplier, column] of ofSupplier) money[column] = problem.setups[supplier];
  if (problem.maxSuppliers !== undefined) rows.add(-Infinity, problem.maxSuppliers, [...ofSupplier.values()], [...ofSupplier.values()].map(() => 1));
  if (problem.budget !== undefined) {
    const priced = Array.from(money.keys()).filter((column) => money[column] !== 0);
    rows.add(-Infinity, problem.budget, priced, priced.map((column) => money[column]));
  }
  return { starts, ofSupplier, count, clash, overUse, money, rows };
}

function openTable(problem: PickProblem, domains: Domains, { first, second, harmony }: PickProblem['pairs'][number]): number[] {
  const width = problem.variables[second].money.length;
  return domains[first].flatMap((a) => domains[second].map((b) => harmony[a * width + b]));
}
