import { seededBits } from '../../readings/seeded-random.ts';
import { eliminateSum } from '../picks/eliminate-sum.ts';
import type { WeightFactor } from '../picks/eliminate-sum.ts';
import type { MixProblem } from './mix-problem.ts';
import { clashAt, sharesAt } from './mix-problem.ts';

export interface ClashShare {
  /** Share of cabins with at least one clash, 0..1. */
  readonly share: number;
  /** Standard error of the share; 0 where it is exact. */
  readonly error: number;
  /** Cabins drawn; 0 where it is exact. */
  readonly draws: number;
}

/** Cabins drawn where the sum is too large: the standard error is then at most 0.0025. */
const drawn = 40_000;

/** Labels that are left for each variable; all where absent. Shares of those left are taken to sum to 1. */
export type LabelsLeft = ReadonlyMap<number, readonly number[]>;

/**
 * Share of the cabins of one kind with at least one clash when the sources of each variable are mixed by their shares, each independently
 * of the others. Exact by elimination where the tables stay small, else simulated with a seed.
 */
export function clashShare(problem: MixProblem, cabin: number, left: LabelsLeft = new Map(), simulate = false): ClashShare {
  const ties = problem.ties.filter((tie) => tie.cabin === cabin);
  const labels = problem.shares.map((shares, index) => left.get(index) ?? Array.from(shares.keys()));
  const weights = labels.map((own, index) => {
    const kept = own.map((label) => sharesAt(problem, cabin, index)[label]);
    const sum = kept.reduce((total, share) => total + share, 0);
    return Float64Array.from(kept, (share) => (sum > 0 ? share / sum : 1 / kept.length));
  });
  if (!simulate) {
    const factors: WeightFactor[] = weights.map((own, index) => ({ scope: [index], weights: own.slice() }));
    for (const tie of ties) {
      if (tie.first === tie.second) {
        factors.push({ scope: [tie.first], weights: Float64Array.from(labels[tie.first], (label) => 1 - clashAt(problem, tie, label, label)) });
      } else {
        factors.push({ scope: [tie.first, tie.second], weights: Float64Array.from(labels[tie.first].flatMap((a) => labels[tie.second].map((b) => 1 - clashAt(problem, tie, a, b)))) });
      }
    }
    const none = eliminateSum(labels.map((own) => own.length), factors);
    if (none !== undefined) return { share: Math.min(1, Math.max(0, 1 - none)), error: 0, draws: 0 };
  }
  return simulated(problem, ties, labels, weights);
}

/** Draws the sources of each cabin; the chance that its open joints hold is carried as a number, which leaves less to chance. */
function simulated(problem: MixProblem, ties: MixProblem['ties'], labels: readonly (readonly number[])[], weights: readonly Float64Array[]): ClashShare {
  const bits = seededBits(20);
  let sum = 0;
  let squares = 0;
  for (let draw = 0; draw < drawn; draw++) {
    const taken = weights.map((own, index) => {
      let rest = bits() / 2 ** 32;
      let at = 0;
      while (at < own.length - 1 && rest >= own[at]) rest -= own[at++];
      return labels[index][at];
    });
    let none = 1;
    for (const tie of ties) none *= 1 - clashAt(problem, tie, taken[tie.first], taken[tie.second]);
    sum += 1 - none;
    squares += (1 - none) ** 2;
  }
  const share = sum / drawn;
  return { share, error: Math.sqrt(Math.max(0, squares / drawn - share * share) / drawn), draws: drawn };
}
