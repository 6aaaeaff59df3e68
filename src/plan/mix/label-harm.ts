import { clashShare } from './clash-share.ts';
import type { LabelsLeft } from './clash-share.ts';
import { sharesAt } from './mix-problem.ts';
import type { MixProblem } from './mix-problem.ts';

/** What one label of a variable does to a mix. */
export interface LabelHarm {
  /** Share of cabins with a clash among those that have it. */
  readonly with: number;
  /** The same over all cabins if it ran no more, its share spread over the others. */
  readonly without: number;
  /** What dropping it would save. */
  readonly harm: number;
}

/** Share of cabins with a clash over all kinds of cabins, weighed by how many of each are built; the weights sum to 1. */
export const overallShare = (problem: MixProblem, weights: readonly number[], left?: LabelsLeft): number =>
  weights.reduce((sum, weight, cabin) => sum + weight * clashShare(problem, cabin, left).share, 0);

/** The harm of every label of a variable; empty where it has only one. */
export function labelHarm(problem: MixProblem, weights: readonly number[], variable: number, whole = overallShare(problem, weights)): readonly LabelHarm[] {
  const labels = Array.from(problem.shares[variable].keys());
  if (labels.length < 2) return [];
  return labels.map((label) => {
    const without = overallShare(problem, weights, new Map([[variable, labels.filter((other) => other !== label)]]));
    // Cabins of a kind that has more of it are more of those that have it.
    const having = weights.map((weight, cabin) => weight * sharesAt(problem, cabin, variable)[label]);
    const sum = having.reduce((total, each) => total + each, 0);
    const among = sum > 0 ? having.map((each) => each / sum) : weights;
    return { with: overallShare(problem, among, new Map([[variable, [label]]])), without, harm: whole - without };
  });
}
