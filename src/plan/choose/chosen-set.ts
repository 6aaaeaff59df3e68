import { sourceOf } from '../../cabin/source-of.ts';
import { runsAlready } from '../model/candidates.ts';
import type { CandidateTerms } from '../model/candidates.ts';
import { clashShare, overUse } from '../model/plan-model.ts';
import type { PlanModel } from '../model/plan-model.ts';
import type { CostTerms } from '../model/source-cost.ts';
import { inMinorUnits, leadWeeksOf, rateOf, sourceCost } from '../model/source-cost.ts';
import type { Picks } from '../model/with-picks.ts';

/** One source for every part, with what it comes to. */
export interface ChosenSet {
  readonly picks: Picks;
  /** Joints that clash, an open one counted by its probability of clashing. */
  readonly clashes: number;
  /** Over-use of limits, weighted by what a customer sees and by length in metres. */
  readonly overUse: number;
  readonly cost: number;
  /** The longest of its sources, but for those of carry-over parts, which run already; 0 where none states one. */
  readonly leadWeeks: number;
  readonly suppliers: readonly string[];
  /** Ids of joints that clash (those a decision accepts left out), and of those that are open. */
  readonly clashing: readonly string[];
  readonly open: readonly string[];
  /** Parts that stand by another source than in the document. */
  readonly changed: readonly string[];
}

/** What picks come to, by the judged joints. */
export function chosenSet(model: PlanModel, picks: Picks, terms: CostTerms & Pick<CandidateTerms, 'releaseFrozen'>): ChosenSet {
  const { cabin, judge, weights, volume } = model;
  const judged = cabin.joints.map((joint) => ({ joint, verdict: judge.at(joint, picks[joint.parts[0]], picks[joint.parts[1]]) }));
  const sources = cabin.parts.map((part) => sourceOf(part, picks[part.id]));
  const suppliers = [...new Set(sources.map((source) => source.supplier))].sort();
  const setups = suppliers.reduce((sum, id) => sum + inMinorUnits(judge.context.index.suppliers.get(id)?.setupCost ?? 0), 0);
  return {
    picks, suppliers,
    clashes: judged.reduce((sum, { verdict }) => sum + clashShare(verdict), 0),
    overUse: judged.reduce((sum, { joint, verdict }) => sum + overUse(verdict) * (weights.get(joint.id) ?? 1), 0),
    cost: sources.reduce((sum, source) => sum + inMinorUnits(sourceCost(source, volume, terms, rateOf(cabin, source, terms))), setups) / 100,
    leadWeeks: sources.reduce((longest, source, index) => Math.max(longest, runsAlready(cabin.parts[index], source, terms) ? 0 : leadWeeksOf(source, terms) ?? 0), 0),
    clashing: judged.filter(({ verdict }) => verdict.verdict === 'clashes' && !verdict.accepted).map(({ joint }) => joint.id),
    open: judged.filter(({ verdict }) => verdict.verdict === 'open').map(({ joint }) => joint.id),
    changed: cabin.parts.filter((part) => sourceOf(part).id !== picks[part.id]).map((part) => part.id),
  };
}

/** What one set comes to beside another. */
export interface SetDifference {
  readonly clashes: number;
  readonly overUse: number;
  readonly cost: number;
  readonly leadWeeks: number;
}

export const setDifference = (from: ChosenSet, to: ChosenSet): SetDifference => ({
  clashes: to.clashes - from.clashes, overUse: to.overUse - from.overUse, cost: Math.round((to.cost - from.cost) * 100) / 100, leadWeeks: to.leadWeeks - from.leadWeeks,
});
