import type { Cabin, Joint, Source } from '../../cabin/cabin.ts';
import type { PairVerdict } from '../../harmony/pair-verdict.ts';
import type { Issue } from '../../issue.ts';
import type { PickPair, PickProblem, PickVariable } from '../picks/pick-problem.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { CandidateTerms, ExcludedSource } from './candidates.ts';
import { candidateSources } from './candidates.ts';
import { combinations, partGroups } from './groups.ts';
import type { PartGroup, Share } from './groups.ts';
import { jointWeights } from './joint-weight.ts';
import type { PairJudge } from './pair-judge.ts';
import { costBasis, inMinorUnits, rateOf, sourceCost } from './source-cost.ts';
import type { Picks } from './with-picks.ts';

export interface ModelTerms extends CandidateTerms {
  readonly shares?: readonly Share[];
  /** Most money, in the currency of the prices. */
  readonly budget?: number;
  readonly maxSuppliers?: number;
}

/** A group of parts with the ways to serve it; each gives the sources in the order of the group's parts. */
export interface GroupChoice extends PartGroup {
  readonly alternatives: readonly (readonly Source[])[];
}

/** A cabin as a problem of picking, with the way back from its numbers to parts and joints. */
export interface PlanModel {
  readonly cabin: Cabin;
  readonly judge: PairJudge;
  readonly groups: readonly GroupChoice[];
  /** Group and place in it of every part. */
  readonly placeOf: ReadonlyMap<string, { readonly group: number; readonly place: number }>;
  readonly suppliers: readonly string[];
  readonly weights: ReadonlyMap<string, number>;
  readonly problem: PickProblem;
  /** Units of one whole over-use in the problem's harmony costs. */
  readonly useUnits: number;
  readonly excluded: readonly ExcludedSource[];
  readonly volume: number;
  readonly currency: string;
  readonly issues: readonly Issue[];
}

/** Ways to serve one group, above which it is refused. */
const mostAlternatives = 5000;
/** A joint counts with at most this use of its limit, so that one hopeless joint does not outweigh all others. Assumption, no source. */
export const mostUse = 10;
/** Clash units of one joint that clashes for certain. */
export const clashUnits = 1e4;
const useUnits = 1e4;

/** How many clashes a joint counts for: 1 where it clashes, what is wanting to certainty where it is open, none where it holds or a decision accepts it. */
export const clashShare = ({ verdict, accepted, totalProbability }: PairVerdict): number =>
  (verdict === 'clashes' ? (accepted ? 0 : 1) : verdict === 'open' ? 1 - totalProbability : 0);

/** What a joint uses above its limits, 0 within them, at most 9. */
export const overUse = ({ limitUse }: PairVerdict): number => Math.max(0, Math.min(mostUse, limitUse ?? 0) - 1);

/** Makes the problem of a cabin: every joint judged under every pair of sources that may meet in it. */
export async function planModel(cabin: Cabin, judge: PairJudge, terms: ModelTerms, watch?: Watch): Promise<PlanModel> {
  const { open, excluded } = candidateSources(cabin, terms);
  const { volume, currency, issues } = costBasis(cabin, terms);
  const found = [...issues];
  const left: ExcludedSource[] = [];
  const groups = partGroups(cabin, terms.shares ?? []).map((group): GroupChoice => {
    const candidates = new Map(group.parts.map((part) => [part, (open.get(part) ?? []).map((each) => ({ source: each.id, supplier: each.supplier, each }))]));
    const ways = combinations(group, candidates, mostAlternatives);
    if (ways === undefined) {
      found.push({
        code: 'group-too-large', severity: 'error', found: `more than ${mostAlternatives} ways to serve ${group.because.join(' and ')}`, expected: 'fewer sources to choose among',
        hint: 'Lock some of its parts.',
      });
    }
    const alternatives = (ways ?? []).map((way) => way.map(({ each }) => each));
    group.parts.forEach((part, place) => {
      const used = new Set(alternatives.map((way) => way[place]));
      for (const source of open.get(part) ?? []) if (!used.has(source)) left.push({ part, source: source.id, because: 'group' });
    });
    return { ...group, alternatives };
  });
  const suppliers = [...new Set(cabin.parts.flatMap((part) => part.sources.map((source) => source.supplier)))].sort();
  const placeOf = new Map(groups.flatMap((group, index) => group.parts.map((part, place) => [part, { group: index, place }] as const)));
  const weights = jointWeights(cabin);
  const scale = overUseScale(cabin, weights);
  const harmony = (joint: Joint, first: Source, second: Source): number => {
    const verdict = judge.at(joint, first.id, second.id);
    return Math.round(clashShare(verdict) * clashUnits) * scale.factor + Math.round(overUse(verdict) * (weights.get(joint.id) ?? 1) * scale.units);
  };
  const variables = groups.map(({ alternatives }): PickVariable => ({
    harmony: new Float64Array(alternatives.length),
    money: Float64Array.from(alternatives, (way) => way.reduce((sum, source) => sum + inMinorUnits(sourceCost(source, volume, terms, rateOf(cabin, source, terms))), 0)),
    suppliers: alternatives.map((way) => [...new Set(way.map((source) => suppliers.indexOf(source.supplier)))]),
  }));
  const pairs = new Map<string, PickPair>();
  for (const [index, joint] of cabin.joints.entries()) {
    await step(watch, index / cabin.joints.length, 'judging joints under every pair of sources');
    addJoint(joint, groups, placeOf, variables, pairs, harmony);
  }
  const setups = Float64Array.from(suppliers, (id) => inMinorUnits(judge.context.index.suppliers.get(id)?.setupCost ?? 0));
  return {
    cabin, judge, groups, placeOf, suppliers, weights, useUnits: scale.units, volume, currency, issues: found, excluded: [...excluded, ...left],
    problem: {
      variables, pairs: [...pairs.values()], setups, scale: scale.factor,
      ...(terms.maxSuppliers === undefined ? {} : { maxSuppliers: terms.maxSuppliers }),
      ...(terms.budget === undefined ? {} : { budget: inMinorUnits(terms.budget) }),
    },
  };
}

/** Units of over-use, and how many of them one unit of clash outweighs: more than all joints together can come to, and all of it exact in a double. */
function overUseScale(cabin: Cabin, weights: ReadonlyMap<string, number>): { readonly units: number; readonly factor: number } {
  const most = [...weights.values()].reduce((sum, weight) => sum + weight * (mostUse - 1), 0) + 1;
  const room = Number.MAX_SAFE_INTEGER / (clashUnits * (cabin.joints.length + 1));
  const units = Math.min(useUnits, (room - cabin.joints.length - 1) / most);
  return { units, factor: Math.ceil(most * units) + cabin.joints.length + 1 };
}

function addJoint(
  joint: Joint, groups: readonly GroupChoice[], placeOf: PlanModel['placeOf'], variables: readonly PickVariable[], pairs: Map<string, PickPair>,
  harmony: (joint: Joint, first: Source, second: Source) => number,
): void {
  const [a, b] = joint.parts.map((part) => placeOf.get(part));
  if (a === undefined || b === undefined) return;
  if (a.group === b.group) {
    groups[a.group].alternatives.forEach((way, label) => { variables[a.group].harmony[label] += harmony(joint, way[a.place], way[b.place]); });
    return;
  }
  const turned = a.group > b.group;
  const [low, high] = turned ? [b, a] : [a, b];
  const [rows, columns] = [groups[low.group].alternatives, groups[high.group].alternatives];
  const key = `${low.group} ${high.group}`;
  const pair = pairs.get(key) ?? { first: low.group, second: high.group, harmony: new Float64Array(rows.length * columns.length) };
  pairs.set(key, pair);
  rows.forEach((row, r) => columns.forEach((column, c) => {
    const [own, other] = [row[low.place], column[high.place]];
    pair.harmony[r * columns.length + c] += turned ? harmony(joint, other, own) : harmony(joint, own, other);
  }));
}

/** The picks of a choice of alternatives. */
export const picksOf = (model: PlanModel, choice: readonly number[]): Picks => {
  const picks = new Map(model.groups.flatMap((group, index) => group.parts.map((part, place) => [part, group.alternatives[choice[index]][place].id] as const)));
  return Object.fromEntries(model.cabin.parts.map((part) => [part.id, picks.get(part.id) ?? '']));
};

/** The alternatives behind picks; undefined where a group has no such alternative. */
export function choiceOf(model: PlanModel, picks: Picks): number[] | undefined {
  const choice = model.groups.map((group) => group.alternatives.findIndex((way) => group.parts.every((part, place) => way[place].id === picks[part])));
  return choice.some((label) => label < 0) ? undefined : choice;
}
