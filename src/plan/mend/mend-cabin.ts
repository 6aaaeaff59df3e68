import type { Cabin, Joint } from '../../cabin/cabin.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import { judgeContext } from '../../harmony/judge-context.ts';
import { jointInput } from '../../harmony/judge-joint.ts';
import { judgeVerdicts } from '../../harmony/judge.ts';
import type { JudgedCabin, JudgeOptions } from '../../harmony/judge.ts';
import type { JointResult, Judgement, Summary } from '../../harmony/judgement.ts';
import { partBasis } from '../../harmony/part-bases.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { Issue } from '../../issue.ts';
import { rejudge } from '../../harmony/rejudge.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import { partOfWork, step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import { deadline, shareOf } from '../deadline.ts';
import type { Deadline } from '../deadline.ts';
import { irreducibleJoints } from './blockers.ts';
import { mendCard } from './mend-cards.ts';
import type { MendCard, PartChange } from './mend-cards.ts';
import { mendGroups } from './mend-items.ts';
import type { MendGroup, MendTerms } from './mend-items.ts';
import { jointDemand, nextMargin } from './mend-limits.ts';
import type { JointDemand, JointMargins } from './mend-limits.ts';
import { noShift, shiftSize } from './mend-problem.ts';
import type { MendProblem, Shift } from './mend-problem.ts';
import { mendIssues, mendWords } from './mend-words.ts';
import { ownTerms } from './own-terms.ts';
import { shiftResponse } from './shift-response.ts';
import type { ShiftResponse } from './shift-response.ts';
import { shiftedCabin } from './shifted-cabin.ts';
import { solveMend } from './solve-mend.ts';

export interface MendOptions extends MendTerms, JudgeOptions {
  /**
   * Seconds for the whole plan by the clock of the watch (without one: for each program), the document's own where absent, else no end. Judging the
   * cabin before and after comes on top.
   */
  readonly timeLimitS?: number;
}

/** A joint that no change of a part can mend, and why. */
export interface NotMendable {
  readonly joint: string;
  readonly because: 'accepted' | 'left out' | 'needs readings' | 'judged by eye' | 'not judged by numbers' | 'texture';
}

/** A joint as the ordinary check judges it with the changes met. */
export type MendedJoint = Pick<JointResult, 'id' | 'verdict' | 'accepted' | 'limitUse'>;

/** The changes that make a cabin hold: plain data. */
export interface MendPlan {
  readonly feasible: boolean;
  /** That no smaller set (or cheaper one) will do is proved in the linear model about the answer. */
  readonly proved: boolean;
  /** What the changes come to: parts, or money for the cheapest set. Infinite where there is no plan. */
  readonly cost: number;
  /** No plan comes to less, in the linear model about the answer. */
  readonly bound: number;
  /** What the plan is above the bound; 0 where proved. */
  readonly gap: number;
  /** The time allowed was over before the answer was found or proved. */
  readonly outOfTime: boolean;
  readonly changes: readonly PartChange[];
  readonly cards: readonly MendCard[];
  readonly before: Summary;
  /** The ordinary check of the cabin with the changes met; undefined where there is no plan. */
  readonly after: Summary | undefined;
  /** All joints with the changes met, in the document's order; empty where there is no plan. */
  readonly outcome: readonly MendedJoint[];
  /** Every joint that the plan answers for holds by the ordinary check. */
  readonly kept: boolean;
  /** Joints that do not hold now and do with the plan. */
  readonly mended: readonly string[];
  /** Joints that make a plan impossible, none of which can be left out. */
  readonly blockers: readonly string[];
  /** That none of them can be left out; false where the time was over before that was known. */
  readonly irreducible?: boolean;
  /** Where there is no plan: what can be done for the others if these joints are left as they are. */
  readonly withoutBlockers: { readonly left: readonly string[]; readonly changes: readonly PartChange[]; readonly cards: readonly MendCard[]; readonly after: Summary; readonly outcome: readonly MendedJoint[] } | undefined;
  readonly notMendable: readonly NotMendable[];
  readonly rounds: number;
  readonly words: readonly string[];
  readonly issues: readonly Issue[];
}

/** Times the linear model is made again. */
const mostRounds = 10;
/** How far above the asked confidence a joint that binds may end before its margin is taken back. */
const spareConfidence = 0.02;
/** What is kept above the asked confidence for the error of the drawn probabilities. */
const drawError = 0.004;
/** Blockers that are left out one after the other. */
const mostPartial = 4;

/** Share of the time for the least plan; the rest is kept for any plan where none was met by then, and for the joints that stand in the way. */
const shareOfTime = 0.7;

const noPlan = { feasible: false, cost: Infinity, gap: Infinity, changes: [], cards: [], after: undefined, outcome: [], kept: false } as const;

interface Search {
  readonly watch: Watch;
  readonly until: Deadline;
  readonly anyPlan?: boolean;
}

interface Attempt {
  readonly solution: { readonly shifts: readonly Shift[]; readonly proved: boolean; readonly cost: number; readonly bound: number; readonly judgement: Judgement; readonly kept: boolean } | undefined;
  readonly proved: boolean;
  readonly bound: number;
  readonly outOfTime: boolean;
  readonly rounds: number;
  readonly problem: MendProblem;
  /** Joints that the attempt answers for, by their indices. */
  readonly asked: readonly number[];
}

/**
 * Finds the smallest set of parts to change, and the least shifts, so that every joint that a change can mend holds under every light of
 * its rule. The linear model is made again about each answer until the ordinary check says so. A shift is a target to the supplier.
 */
export async function mendCabin(cabin: Cabin, book: RuleBook, asked: MendOptions = {}, watch?: Watch): Promise<MendPlan> {
  const options = ownTerms(cabin, asked);
  const issues = mendIssues(cabin, options);
  await step(watch, 0, 'judging the cabin');
  const judged = judgeVerdicts(cabin, book, options);
  const groups = mendGroups(cabin, judged.context, judged.bases, options);
  const response = responseOf(judged.context, judged.bases, groups);
  const demands = judged.joints.map((own) => jointDemand(own.input, response, judgedWithin(own)));
  const notMendable = notMendableJoints(judged, demands, options);
  const base = { before: judged.judgement.summary, issues, notMendable };
  if (issues.some(({ severity }) => severity === 'error')) {
    return { ...base, ...noPlan, proved: false, bound: 0, outOfTime: false, mended: [], blockers: [], withoutBlockers: undefined, rounds: 0, words: [] };
  }
  // Without the verdicts there is nothing to plan with, so the time begins once they are there.
  const until = deadline(options.timeLimitS, watch);
  const leftOut = new Set(notMendable.filter(({ because }) => because === 'accepted' || because === 'left out').map(({ joint }) => joint));
  const first = await attempt(cabin, book, options, judged, groups, demands, leftOut, { watch: partOfWork(watch, 0.1, 0.6), until: shareOf(until, shareOfTime, watch) });
  // Where the least plan was not met, in time or at all, any plan will do, beside the bound that was reached.
  const anyWillDo = first.solution === undefined && !first.proved;
  const found = anyWillDo
    ? (await attempt(cabin, book, options, judged, groups, demands, leftOut, { watch: partOfWork(watch, 0.6, 0.9), until, anyPlan: true })).solution : first.solution;
  if (found !== undefined) {
    const { shifts, judgement, kept } = found;
    const told = tell(cabin, judged, groups, shifts, judgement);
    const { proved, cost } = found;
    const bound = Math.min(cost, first.solution === undefined ? first.bound : found.bound);
    const plan = { ...base, ...told, feasible: true, proved, cost, bound, gap: cost - bound, outOfTime: first.outOfTime, after: judgement.summary, kept, blockers: [], withoutBlockers: undefined, rounds: first.rounds };
    return { ...plan, words: mendWords(plan, cabin, judged, options, anyWillDo) };
  }
  await step(watch, 0.6, 'finding the joints that make a plan impossible');
  const holdingFirst = [...first.asked].sort((a, b) => Number(judged.judgement.joints[b].verdict === 'holds') - Number(judged.judgement.joints[a].verdict === 'holds') || a - b);
  const standing = first.outOfTime && !first.proved ? [] : await irreducibleJoints(first.problem, holdingFirst, { watch: { ...watch, progress: undefined }, until });
  const blockers = standing.map((index) => cabin.joints[index].id);
  const irreducible = !until.passed();
  const withoutBlockers = await partialPlan(cabin, book, options, judged, groups, demands, leftOut, first, blockers, { watch: partOfWork(watch, 0.7, 1), until });
  const plan = { ...base, ...noPlan, proved: first.proved, bound: first.bound, outOfTime: first.outOfTime, mended: [], blockers, irreducible, withoutBlockers, rounds: first.rounds };
  return { ...plan, words: mendWords(plan, cabin, judged, options) };
}

/** What can still be done for the others, leaving out joints that stand in the way and do not hold. */
async function partialPlan(
  cabin: Cabin, book: RuleBook, options: MendOptions, judged: JudgedCabin, groups: readonly MendGroup[], demands: readonly JointDemand[],
  leftOut: ReadonlySet<string>, first: Attempt, blockers: readonly string[], { watch, until }: Search,
): Promise<MendPlan['withoutBlockers']> {
  const verdicts = new Map(judged.judgement.joints.map((joint) => [joint.id, joint.verdict]));
  const left: string[] = [];
  let standing = blockers;
  for (let round = 0; round < mostPartial && standing.length > 0; round++) {
    const failing = standing.filter((joint) => verdicts.get(joint) !== 'holds');
    left.push(...(failing.length > 0 ? failing : standing));
    const next = await attempt(cabin, book, options, judged, groups, demands, new Set([...leftOut, ...left]), { watch: partOfWork(watch, round / mostPartial, (round + 1) / mostPartial), until });
    if (next.solution !== undefined) {
      const { changes, cards, outcome } = tell(cabin, judged, groups, next.solution.shifts, next.solution.judgement);
      return { left, changes, cards, outcome, after: next.solution.judgement.summary };
    }
    if (next.outOfTime || until.passed()) return undefined;
    standing = (await irreducibleJoints(first.problem, next.asked, { watch: { ...watch, progress: undefined }, until })).map((index) => cabin.joints[index].id);
  }
  return undefined;
}

function tell(cabin: Cabin, judged: JudgedCabin, groups: readonly MendGroup[], shifts: readonly Shift[], judgement: Judgement) {
  const mended = new Set(cabin.joints.filter((_, index) => judged.judgement.joints[index].verdict !== 'holds' && judgement.joints[index].verdict === 'holds').map(({ id }) => id));
  const changed = groups.map((group, index) => ({ group, shift: shifts[index] })).filter(({ shift }) => shift.some((value) => value !== 0));
  return {
    outcome: judgement.joints.map(({ id, verdict, accepted, limitUse }): MendedJoint => ({ id, verdict, accepted, limitUse })),
    mended: [...mended],
    changes: changed.flatMap(({ group, shift: [dL, da, db, dGloss] }) => group.parts.map((part): PartChange => ({ part, dL, da, db, dGloss }))),
    cards: changed.map(({ group, shift }) => mendCard(cabin, judged.context, judged.bases, group, shift, mended)),
  };
}

/** Tries to make all joints hold but those left out. */
async function attempt(
  cabin: Cabin, book: RuleBook, options: MendOptions, judged: JudgedCabin, groups: readonly MendGroup[], firstDemands: readonly JointDemand[],
  leftOut: ReadonlySet<string>, { watch, until, anyPlan }: Search,
): Promise<Attempt> {
  const itemOf = new Map(groups.flatMap((group, index) => group.parts.map((part) => [part, index] as const)));
  const { rule, confidence } = book.decision;
  const start: JointMargins = rule === 'simple' ? { colour: 0, gloss: 0 } : { colour: 1.3, gloss: 1.7 };
  const margins = cabin.joints.map(() => start);
  /** Margins that were taken back too far once are not taken back so far again, so that rounds do not turn in a circle. */
  const leastMargins = cabin.joints.map(() => ({ colour: -Infinity, gloss: -Infinity }));
  /** Rounds in a row in which a joint failed: a margin that does not bind yet has far to go. */
  const failures = cabin.joints.map(() => ({ colour: 0, gloss: 0 }));
  const sidesOf = judged.joints.map(({ input }) => input.sides.map((side) => side.part.id) as unknown as readonly [string, string]);
  const asked = cabin.joints.flatMap((joint, index) => (leftOut.has(joint.id) || (firstDemands[index].colour === undefined && firstDemands[index].gloss === undefined) ? [] : [index]));
  const itemsAt = (index: number): readonly [number, number] => [itemOf.get(sidesOf[index][0])!, itemOf.get(sidesOf[index][1])!];
  let demands = [...firstDemands];
  let shifts: readonly Shift[] = groups.map(() => noShift);
  let readAt = cabin.joints.map((): readonly [Shift, Shift] => [noShift, noShift]);
  let best: { readonly shifts: readonly Shift[]; readonly proved: boolean; readonly cost: number; readonly bound: number; readonly size: number } | undefined;
  let outOfTime = false;
  let bound = 0;
  const problemNow = (): MendProblem => ({
    items: groups.map(({ item }) => item),
    limits: asked.flatMap((index) => demands[index].limits(holdingMargins(judged, firstDemands, index, margins[index], leastMargins[index], confidence, rule), {
      joint: index, items: itemsAt(index), at: readAt[index], reach: [groups[itemsAt(index)[0]].item, groups[itemsAt(index)[1]].item],
    })),
  });
  let rounds = 0;
  for (let round = 1; round <= mostRounds; round++) {
    rounds = round;
    await step(watch, round / mostRounds, 'finding the least change');
    const problem = problemNow();
    const found = await solveMend(problem, { watch: { ...watch, progress: undefined }, ...(round === 1 ? {} : { from: shifts }), until, ...(anyPlan === undefined ? {} : { anyPlan }) });
    outOfTime ||= found.outOfTime;
    if (!found.feasible) {
      if (best !== undefined) break;
      return { solution: undefined, proved: found.proved, bound: Math.max(bound, found.bound), outOfTime, rounds: round, problem, asked };
    }
    bound = found.bound;
    shifts = found.shifts;
    const read = readShifted(cabin, judged, groups, shifts, asked, sidesOf, itemOf);
    // A joint whose parts are let go again is as it was at first, whatever an earlier round read of it.
    demands = demands.map((_, index) => read.demands.get(index) ?? firstDemands[index]);
    readAt = readAt.map((_, index) => (read.demands.has(index) ? [shifts[itemsAt(index)[0]], shifts[itemsAt(index)[1]]] : [noShift, noShift]));
    const failing = asked.filter((index) => fails(demands[index], confidence, rule, problemNow, index, shifts));
    if (failing.length === 0) {
      const size = shifts.reduce((sum, shift) => sum + shiftSize(shift), 0);
      if (best === undefined || found.cost < best.cost || (found.cost === best.cost && size < best.size)) best = { shifts, proved: found.proved, cost: found.cost, bound: found.bound, size };
    }
    let moved = false;
    for (const index of asked) {
      const { colour, gloss } = demands[index];
      const turn = (quantity: 'colour' | 'gloss', within: number | undefined): number => {
        const margin = margins[index][quantity];
        if (within === undefined || rule === 'simple') return margin;
        const spare = read.demands.has(index) && within > confidence + spareConfidence && within < 0.999;
        failures[index][quantity] = within < confidence ? failures[index][quantity] + 1 : 0;
        if (within >= confidence && !spare) return margin;
        const step = nextMargin(margin, within, confidence + drawError) - margin;
        const turned = Math.min(mostMargin, margin + step * 2 ** Math.max(0, failures[index][quantity] - 1));
        if (within < confidence) leastMargins[index][quantity] = Math.max(leastMargins[index][quantity], Math.min(turned, start[quantity]));
        return Math.max(turned, leastMargins[index][quantity]);
      };
      const next = { colour: turn('colour', colour), gloss: turn('gloss', gloss) };
      if (next.colour !== margins[index].colour || next.gloss !== margins[index].gloss) moved = true;
      margins[index] = next;
    }
    if (!moved || (best !== undefined && (anyPlan === true || round >= mostRounds / 2))) break;
  }
  if (best === undefined) return { solution: undefined, proved: false, bound, outOfTime, rounds: mostRounds, problem: problemNow(), asked };
  const light = judged.context.light('D65')!;
  const met = shiftedCabin(cabin, groups.map((group, index) => ({ ...group.specimens, shift: best.shifts[index] })), light, judged.context.book.observer);
  const { judgement } = rejudge(judged, met, options);
  const answersFor = (index: number, check: string): boolean => {
    const { colour, gloss, unattainable, incomplete } = demands[index];
    if (check === 'gloss') return gloss !== undefined && !unattainable.includes('gloss');
    return (check === 'colour' || check === 'near-miss') && colour !== undefined && !incomplete && !unattainable.includes('colour');
  };
  const kept = asked.every((index) => judgement.joints[index].checks.every((check) =>
    check.standing !== 'required' || !answersFor(index, check.check) || check.verdict === 'holds' || check.verdict === 'not applicable'));
  return { solution: { shifts: best.shifts, proved: best.proved, cost: best.cost, bound: best.bound, judgement, kept }, proved: best.proved, bound: best.bound, outOfTime, rounds, problem: problemNow(), asked };
}

/** A joint that holds now is not asked for more certainty than it has; where it failed with that once its parts changed, for as much as it has. */
function holdingMargins(
  judged: JudgedCabin, first: readonly JointDemand[], index: number, own: JointMargins, least: JointMargins, confidence: number, rule: 'guarded' | 'simple',
): JointMargins {
  if (rule === 'simple' || judged.judgement.joints[index].verdict !== 'holds') return own;
  const { colour = 1, gloss = 1 } = first[index];
  const spare = (quantity: 'colour' | 'gloss', within: number): number => {
    if (!(within >= confidence && within < confidence + 2 * spareConfidence)) return own[quantity];
    return Math.min(own[quantity], least[quantity] > restingMargin ? Math.max(restingMargin, marginAtRest(first[index], quantity, own[quantity])) : restingMargin);
  };
  return { colour: spare('colour', colour), gloss: spare('gloss', gloss) };
}

/** What a joint that just holds is asked for at first. */
const restingMargin = 1;
/** No margin is larger, in standard uncertainties. */
const mostMargin = 8;

/** The largest margin up to `most` that a joint's limits are kept with by its sides as they are, to a hundredth. */
function marginAtRest(demand: JointDemand, quantity: 'colour' | 'gloss', most: number): number {
  const keeps = (margin: number): boolean =>
    demand.limits({ colour: -mostMargin, gloss: -mostMargin, [quantity]: margin }, { joint: 0, items: [0, 1], at: [noShift, noShift] }).every(({ excess }) => excess(noShift, noShift) <= 0);
  let [low, high] = [0, most];
  if (keeps(high)) return high;
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (keeps(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function fails(demand: JointDemand, confidence: number, rule: 'guarded' | 'simple', problem: () => MendProblem, joint: number, shifts: readonly Shift[]): boolean {
  if (rule === 'simple') return problem().limits.some((limit) => limit.joint === joint && limit.excess(shifts[limit.items[0]], shifts[limit.items[1]]) > 1e-4);
  const asked = [
    ...(demand.colour === undefined || demand.unattainable.includes('colour') ? [] : [demand.colour]),
    ...(demand.gloss === undefined || demand.unattainable.includes('gloss') ? [] : [demand.gloss]),
  ];
  return asked.some((within) => within < confidence);
}

/** What the joints of changed parts ask for, read again with the readings as they would be. */
function readShifted(
  cabin: Cabin, judged: JudgedCabin, groups: readonly MendGroup[], shifts: readonly Shift[], asked: readonly number[],
  sidesOf: readonly (readonly [string, string])[], itemOf: ReadonlyMap<string, number>,
): { readonly demands: ReadonlyMap<number, JointDemand> } {
  const light = judged.context.light('D65')!;
  const document = shiftedCabin(cabin, groups.map((group, index) => ({ ...group.specimens, shift: shifts[index] })), light, judged.context.book.observer);
  const context = judgeContext(document, judged.context.rules, judged.context.stage, judged.context.asOf, judged.context.memory, judged.context.names);
  const isChanged = (part: string): boolean => shifts[itemOf.get(part)!].some((value) => value !== 0);
  const affected = asked.filter((index) => sidesOf[index].some(isChanged));
  const parts = new Set(affected.flatMap((index) => sidesOf[index]));
  const bases = new Map([...parts].map((part) => [part, isChanged(part) ? partBasis(context, context.index.parts.get(part)!) : judged.bases.get(part)!]));
  const response = responseOf(context, bases, groups);
  return { demands: new Map(affected.map((index) => [index, jointDemand(jointInput(context, cabin.joints[index] as Joint, bases).input, response)])) };
}

/** Every round goes on from the readings as they are, so the smallest curvature is always that of the whole shift. */
function responseOf(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, groups: readonly MendGroup[]): ShiftResponse {
  const specimens = new Map(groups.flatMap((group) => group.parts.map((part) => [part, group.specimens] as const)));
  return shiftResponse(context, bases, (part) => specimens.get(part)?.spectrum);
}

/** The probability that all holds that is asked of a match in colour, where the check has reckoned it. */
const judgedWithin = ({ input, pairing, result }: JudgedCabin['joints'][number]): number | undefined => (input.rule.intent.colour === 'match' && pairing.further.length === 0
  ? result.checks.find(({ check }) => check === 'colour')?.withinProbability : undefined);

/** Joints that do not hold and that no change can make hold by itself, by what their checks say. */
function notMendableJoints(judged: JudgedCabin, demands: readonly JointDemand[], options: MendOptions): readonly NotMendable[] {
  const reason = (joint: JointResult, index: number): NotMendable['because'] | undefined => {
    if (options.except?.includes(joint.id) === true) return 'left out';
    if (joint.accepted) return 'accepted';
    if (joint.verdict === 'holds') return undefined;
    const failing = joint.checks.filter((check) => check.standing !== 'advisory' && (check.verdict === 'clashes' || check.verdict === 'open' || (check.verdict === 'no data' && check.standing === 'required')));
    if (failing.some((check) => check.check === 'texture' && check.verdict !== 'no data')) return 'texture';
    if (failing.some((check) => check.cause === 'judged by eye')) return 'judged by eye';
    if (demands[index].unattainable.length > 0 || failing.some((check) => check.cause === 'conditions' || check.cause === 'missing data')) return 'needs readings';
    return demands[index].colour === undefined && demands[index].gloss === undefined ? 'not judged by numbers' : undefined;
  };
  return judged.judgement.joints.flatMap((joint, index) => {
    const because = reason(joint, index);
    return because === undefined ? [] : [{ joint: joint.id, because }];
  });
}
