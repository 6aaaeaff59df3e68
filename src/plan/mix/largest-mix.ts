import { minimise, ProgramRows } from '../solver/highs-solver.ts';
import type { MixProblem } from './mix-problem.ts';

/** The largest set of sources that may run at once. */
export interface LargestMix {
  /** Labels kept for each variable, at least one each. */
  readonly kept: readonly (readonly number[])[];
  /** Ties, as indices, that some combination of what is kept does not hold at: there is no set without them. */
  readonly unavoidable: readonly number[];
  readonly proved: boolean;
}

/**
 * The most labels that can be kept so that every combination of them holds at every tie. Where some ties cannot be kept clear, as few as
 * possible are left, then as many labels as possible kept. A mixed-integer program in two stages.
 */
export async function largestMix(problem: MixProblem, timeLimitS?: number): Promise<LargestMix> {
  const starts: number[] = [0];
  for (const shares of problem.shares) starts.push(starts[starts.length - 1] + shares.length);
  const labels = starts[starts.length - 1];
  const count = labels + problem.ties.length;
  const rows = new ProgramRows();
  problem.shares.forEach((shares, index) => {
    const own = Array.from(shares.keys(), (label) => starts[index] + label);
    rows.add(1, Infinity, own, own.map(() => 1));
  });
  problem.ties.forEach((tie, index) => {
    const width = problem.shares[tie.second].length;
    tie.uncertain.forEach((uncertain, entry) => {
      if (uncertain === 0) return;
      const [a, b] = [starts[tie.first] + Math.floor(entry / width), starts[tie.second] + (entry % width)];
      // The two labels together leave the tie unclear; a label met with itself does so alone.
      if (tie.first !== tie.second) rows.add(-Infinity, 1, [a, b, labels + index], [1, 1, -1]);
      else if (a === b) rows.add(-Infinity, 0, [a, labels + index], [1, -1]);
    });
  });
  const columns = { lower: new Float64Array(count), upper: new Float64Array(count).fill(1), integer: new Int32Array(count).fill(1) };
  const limit = timeLimitS === undefined ? {} : { timeLimitS };
  const unclear = Float64Array.from({ length: count }, (_, column) => (column < labels ? 0 : 1));
  const first = await minimise({ ...columns, cost: unclear }, rows, limit);
  const tied = Array.from(problem.ties.keys(), (index) => labels + index);
  rows.add(-Infinity, Math.round(first.objective) + 0.25, tied, tied.map(() => 1));
  const second = await minimise({ ...columns, cost: Float64Array.from(unclear, (value) => value - 1) }, rows, limit);
  const values = second.values ?? first.values ?? new Float64Array(count).fill(1);
  return {
    kept: problem.shares.map((shares, index) => Array.from(shares.keys()).filter((label) => values[starts[index] + label] > 0.5)),
    unavoidable: Array.from(problem.ties.keys()).filter((index) => values[labels + index] > 0.5),
    proved: first.status === 'optimal' && second.status === 'optimal',
  };
}
