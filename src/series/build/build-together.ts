import type { Joint } from '../../cabin/cabin.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import { pairVerdict } from '../../harmony/pair-verdict.ts';
import type { PairVerdict } from '../../harmony/pair-verdict.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import { clashShare, overUse } from '../../plan/model/plan-model.ts';
import { step } from '../../plan/watch.ts';
import type { Watch } from '../../plan/watch.ts';
import { partLots } from '../lots/part-lots.ts';
import type { Lot } from '../lots/part-lots.ts';
import { bestSets, costOfSets, setsInOrder } from './lot-sets.ts';
import type { LotProblem, LotSets, LotTie } from './lot-sets.ts';

/** Clashes and over-use are weighed in these units: a clash to a hundred-thousandth, use of a limit to a thousandth. */
const clashUnits = 1e5;
const useUnits = 1e3;
/** What one joint of one set can over-use at most, in units: nine limits. */
const mostUse = 9 * useUnits;

/** What some way of building comes to. */
export interface BuildCost {
  /** Joints that clash, an open one by its probability of clashing. */
  readonly clashes: number;
  /** Use of limits above them, summed over the joints. */
  readonly overUse: number;
}

export interface BuiltSet {
  /** Lot of each part, in the order of `parts`. */
  readonly lots: readonly string[];
  readonly clashes: number;
  readonly overUse: number;
  /** Clashes to be expected at each joint, in the order of `joints`. */
  readonly atJoints: readonly number[];
}

/** Which lots to build together, beside what building in order of production comes to. */
export interface BuildPlan {
  readonly parts: readonly string[];
  readonly joints: readonly string[];
  /** Places in `parts` of the two parts of each joint. */
  readonly sides: readonly (readonly [number, number])[];
  readonly sets: readonly BuiltSet[];
  readonly inOrder: readonly BuiltSet[];
  readonly best: BuildCost;
  readonly asProduced: BuildCost;
  /** Lots that no set takes, by part. */
  readonly leftOver: readonly (readonly string[])[];
  readonly proved: boolean;
  readonly method: LotSets['method'];
  /** No way of building has fewer clashes than this. */
  readonly boundClashes: number;
}

/** Judges joints with their parts standing by lots; every pair is judged once. */
export interface LotJudge {
  readonly lots: (part: string) => readonly Lot[];
  readonly at: (joint: Joint, first: Lot, second: Lot) => PairVerdict;
}

/** Of each part the lots that were read in colour; with `available` only those named, of the parts that it names. Borrowed readings are no lots. */
export function lotJudge(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, available: Readonly<Record<string, readonly string[]>> = {}): LotJudge {
  const verdicts = new Map<Joint, Map<Lot, Map<Lot, PairVerdict>>>();
  return {
    lots: (part) => {
      const basis = bases.get(part);
      if (basis === undefined || basis.colour?.borrowedFrom !== undefined) return [];
      const named = Object.hasOwn(available, part) ? available[part] : undefined;
      return partLots(context, basis).filter((lot) => lot.basis.colour !== undefined && (named === undefined || named.includes(lot.id)));
    },
    at: (joint, first, second) => {
      const ofJoint = verdicts.get(joint) ?? new Map<Lot, Map<Lot, PairVerdict>>();
      const ofLot = ofJoint.get(first) ?? new Map<Lot, PairVerdict>();
      verdicts.set(joint, ofJoint.set(first, ofLot));
      const verdict = ofLot.get(second) ?? pairVerdict(context, joint, new Map([[joint.parts[0], first.basis], [joint.parts[1], second.basis]]));
      ofLot.set(second, verdict);
      return verdict;
    },
  };
}

/**
 * Which lots of some joined parts to build together: each lot at most once, as many sets as the part with the fewest lots has, fewest expected clashes
 * first and then least over-use. Every lot counts the same, whatever its size. Undefined where fewer than two of the parts have two lots.
 */
export async function buildTogether(judge: LotJudge, joints: readonly Joint[], watch?: Watch): Promise<BuildPlan | undefined> {
  const parts = [...new Set(joints.flatMap((joint) => joint.parts))].filter((part) => judge.lots(part).length > 1);
  const among = joints.filter((joint) => joint.parts.every((part) => parts.includes(part)));
  if (among.length === 0) return undefined;
  const lots = parts.map((part) => judge.lots(part));
  const sets = Math.min(...lots.map((own) => own.length));
  const factor = mostUse * sets * among.length + 1;
  const units = ({ clashes, overUse: use }: BuildCost): number => Math.round(clashes * clashUnits) * factor + Math.min(mostUse, Math.round(use * useUnits));
  const costOf = (joint: Joint, first: Lot, second: Lot): BuildCost => {
    const verdict = judge.at(joint, first, second);
    return { clashes: clashShare(verdict), overUse: overUse(verdict) };
  };
  const ties: LotTie[] = [];
  for (const [index, joint] of among.entries()) {
    await step(watch, index / among.length, 'judging joints under every pair of lots');
    const [first, second] = joint.parts.map((part) => parts.indexOf(part));
    ties.push({ first, second, costs: Float64Array.from(lots[first].flatMap((one) => lots[second].map((other) => units(costOf(joint, one, other))))) });
  }
  const problem: LotProblem = { lots: lots.map((own) => own.length), ties };
  const best = bestSets(problem);
  const inOrder = setsInOrder(problem);
  const told = (set: readonly number[]): BuiltSet => {
    const costs = among.map((joint) => {
      const [first, second] = joint.parts.map((part) => parts.indexOf(part));
      return costOf(joint, lots[first][set[first]], lots[second][set[second]]);
    });
    return { lots: set.map((lot, part) => lots[part][lot].id), ...total(costs), atJoints: costs.map(({ clashes }) => clashes) };
  };
  // Equal in all that counts: the order of production is then as good and needs no sorting.
  const chosen = costOfSets(problem, inOrder) === best.cost ? inOrder : best.sets;
  const [bestSetsTold, inOrderTold] = [[...chosen].sort((p, q) => p[0] - q[0]).map(told), inOrder.map(told)];
  return {
    parts, joints: among.map(({ id }) => id), sides: ties.map(({ first, second }) => [first, second] as const), sets: bestSetsTold, inOrder: inOrderTold, best: total(bestSetsTold), asProduced: total(inOrderTold),
    leftOver: lots.map((own, part) => own.filter((_, lot) => !chosen.some((set) => set[part] === lot)).map(({ id }) => id)),
    proved: best.proved, method: best.method, boundClashes: Math.floor(best.bound / factor) / clashUnits,
  };
}

const total = (costs: readonly BuildCost[]): BuildCost =>
  costs.reduce<BuildCost>((sum, { clashes, overUse: use }) => ({ clashes: sum.clashes + clashes, overUse: sum.overUse + use }), { clashes: 0, overUse: 0 });
