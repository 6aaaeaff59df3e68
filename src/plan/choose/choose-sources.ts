import type { Cabin } from '../../cabin/cabin.ts';
import type { JudgeOptions } from '../../harmony/judge.ts';
import type { Issue } from '../../issue.ts';
import { hasErrors } from '../../issue.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import { pairJudge } from '../model/pair-judge.ts';
import { clashUnits, picksOf, planModel } from '../model/plan-model.ts';
import type { ModelTerms, PlanModel } from '../model/plan-model.ts';
import { presentPicks, withPicks } from '../model/with-picks.ts';
import { nextBest } from '../picks/next-best.ts';
import { solvePicks } from '../picks/solve-picks.ts';
import type { PickMethod, PickOptions, PickOutcome } from '../picks/solve-picks.ts';
import { deadline, shareOf } from '../deadline.ts';
import type { Deadline } from '../deadline.ts';
import { partOfWork, step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import { termIssues } from './choose-terms.ts';
import { chosenSet, setDifference } from './chosen-set.ts';
import type { ChosenSet } from './chosen-set.ts';
import { costFront } from './cost-front.ts';
import type { CostFront } from './cost-front.ts';
import { supplierDropOuts } from './drop-outs.ts';
import type { DropOut } from './drop-outs.ts';
import { whyNoSet } from './no-set.ts';
import { whyNotPicked } from './not-picked.ts';
import type { NotPicked } from './not-picked.ts';
import { differenceInWords, planNames } from './plan-words.ts';
import { judgePromise } from './promise.ts';
import type { KeptPromise } from './promise.ts';
import { singleSwaps } from './swaps.ts';
import type { Swap } from './swaps.ts';

export interface ChooseOptions extends ModelTerms, JudgeOptions {
  /** Sets wanted, the best one included; 1 where absent. */
  readonly best?: number;
  /** Points of the front of cost and harmony wanted; none where absent. */
  readonly front?: number;
  /** Leave out why each source was not picked, and what becomes of it if a supplier drops out. */
  readonly withoutReasons?: boolean;
  /**
   * Seconds for the whole plan by the clock of the watch (without one: for each mixed-integer program, where one is needed), once the joints
   * are judged; the document's own where absent, else 60. What comes after the best set is left out where they are over: the words say so.
   */
  readonly timeLimitS?: number;
}

/** The sources chosen for a cabin: plain data. */
export interface ChoicePlan {
  readonly feasible: boolean;
  /** That the first set is the best is proved. */
  readonly proved: boolean;
  readonly method: PickMethod;
  /** No set is better than this. */
  readonly bound: { readonly clashes: number; readonly overUse: number; readonly cost: number };
  /** What the first set is above the bound, by its clashes; 0 where proved. */
  readonly gap: number;
  readonly sets: readonly ChosenSet[];
  /** The document as it is. */
  readonly present: ChosenSet;
  readonly front: CostFront | undefined;
  readonly swaps: readonly Swap[];
  readonly notPicked: readonly NotPicked[];
  /** What becomes of the best set if one of the suppliers drops out. */
  readonly dropOuts: readonly DropOut[];
  /** The ordinary check of the first set; undefined where there is none. */
  readonly after: KeptPromise | undefined;
  readonly volume: number;
  readonly currency: string;
  /** What the plan says, in whole sentences. */
  readonly words: readonly string[];
  readonly issues: readonly Issue[];
}

const usualTimeLimitS = 60;
/** Share of the time for the best set; the rest is for the next best, the front and the reasons. */
const shareOfTime = 0.6;
/** Rounds in which readings borrowed from the other hand are brought in line with the picks. */
const mostRounds = 3;

/**
 * Chooses one source for each part: fewest clashes, then least weighted over-use, then least cost, within all that the options ask.
 * The first set is judged by the ordinary check before it is given. Deterministic, but for what the time limit leaves open.
 */
export async function chooseSources(cabin: Cabin, book: RuleBook, options: ChooseOptions = {}, watch?: Watch): Promise<ChoicePlan> {
  const asked = termIssues(cabin, options);
  let document = cabin;
  let until: Deadline | undefined;
  for (let round = 1; ; round++) {
    const model = await planModel(document, pairJudge(document, book, options), options, partOfWork(watch, 0, 0.5));
    // Without the joints judged there is nothing to choose by, so the time begins once they are.
    until ??= deadline(options.timeLimitS ?? cabin.planning?.timeLimitS ?? usualTimeLimitS, watch);
    const picking: PickOptions = { until: shareOf(until, shareOfTime, watch) };
    const issues = [...asked, ...model.issues];
    const present = chosenSet(model, presentPicks(cabin), options);
    if (hasErrors(issues)) return withoutSet(model, present, issues, [], { solution: undefined, proved: false, bound: { harmony: 0, money: 0 }, method: 'elimination' });
    const outcome = await solvePicks(model.problem, { ...picking, watch: partOfWork(watch, 0.5, 0.6) });
    if (outcome.solution === undefined) {
      const why = outcome.proved ? await whyNoSet(model, options, planNames(model), picking) : ['No set was found in the time allowed; that there is none is not proved.'];
      return withoutSet(model, present, issues, why, outcome);
    }
    const best = chosenSet(model, picksOf(model, outcome.solution.choice), options);
    await step(watch, 0.6, 'judging the cabin with the sources chosen');
    const after = judgePromise(document, book, best.picks, model.judge, options);
    if (!after.kept && round < mostRounds) {
      document = withPicks(cabin, best.picks);
      continue;
    }
    return await explained(model, cabin, best, present, outcome, after, issues, options, until, watch);
  }
}

async function explained(
  model: PlanModel, cabin: Cabin, best: ChosenSet, present: ChosenSet, outcome: PickOutcome, after: KeptPromise, issues: readonly Issue[],
  options: ChooseOptions, until: Deadline, watch: Watch | undefined,
): Promise<ChoicePlan> {
  const solution = outcome.solution!;
  const names = planNames(model);
  const changed = cabin.parts.filter((part) => presentPicks(cabin)[part.id] !== best.picks[part.id]).map((part) => part.id);
  const picking: PickOptions = { until };
  const nothingToChoose = model.groups.every((group) => group.alternatives.length === 1);
  // What is not begun in time is left out and named.
  const skipped: string[] = [];
  const inTime = (what: string, wanted: boolean): boolean => {
    if (wanted && until.passed()) skipped.push(what);
    return wanted && !until.passed();
  };
  const more = inTime('the next best sets', (options.best ?? 1) > 1) ? await nextBest(model.problem, options.best ?? 1, { ...picking, watch: partOfWork(watch, 0.6, 0.7) }) : { solutions: [solution], proved: true };
  const [, ...others] = more.solutions;
  const front = !inTime('the front of cost and harmony', options.front !== undefined) ? undefined : await costFront(model, solution, options.front ?? 0, options, { ...picking, watch: partOfWork(watch, 0.7, 0.85) });
  const notPicked = !inTime('why the other sources were not picked', options.withoutReasons !== true) ? [] : await whyNotPicked(model, best, options, names, picking, partOfWork(watch, 0.85, 0.95));
  const dropOuts = !inTime('what becomes of it if a supplier drops out', options.withoutReasons !== true) ? [] : await supplierDropOuts(model, best, options, names, picking, partOfWork(watch, 0.95, 1));
  const bound = boundOf(model, outcome);
  const gap = Math.max(0, best.clashes - bound.clashes);
  const sets = [{ ...best, changed }, ...others.map((each) => chosenSet(model, picksOf(model, each.choice), options))];
  const against = differenceInWords(setDifference(present, best), names);
  return {
    feasible: true, proved: outcome.proved, method: outcome.method, bound, gap: outcome.proved ? 0 : gap,
    sets, present, front, swaps: singleSwaps(model, best, solution.choice, options, names), notPicked, dropOuts, after,
    volume: model.volume, currency: model.currency, issues,
    words: [
      model.cabin.parts.length === 0 ? 'The cabin has no parts: there is nothing to choose.'
        : nothingToChoose ? 'Every part has only one source that may be picked: there is nothing to choose.'
          : changed.length === 0 ? `The sources the cabin stands by are the best set: ${setInWords(best, names.money(best.cost))}.`
            : `The best set changes ${changed.length} of ${cabin.parts.length} parts and comes to ${setInWords(best, names.money(best.cost))}${against === '' ? '' : `: ${against} than now`}.`,
      outcome.proved ? `That no set is better is proved (${outcome.method}).`
        : `That no set is better is not proved: none has fewer than ${Number(bound.clashes.toFixed(2))} clashes, this one has ${Number(best.clashes.toFixed(2))}, a gap of ${Number(gap.toFixed(2))}.`,
      after.kept ? 'The ordinary check of the cabin with these sources gives the verdicts reckoned with.'
        : `The ordinary check differs from what was reckoned with at ${after.differing.map(({ joint }) => names.joint(joint)).join(', ')}.`,
      ...(after.driftingRuns > 0 ? [`${after.driftingRuns === 1 ? 'One run drifts' : `${after.driftingRuns} runs drift`} beyond the limit with these sources; the choice reckons with joints only.`] : []),
      ...(more.proved ? [] : ['The order of the next best sets is not proved.']),
      ...(skipped.length === 0 || (nothingToChoose && model.excluded.length === 0) ? [] : [`The time allowed was over before ${skipped.length < 2 ? skipped.join('') : `${skipped.slice(0, -1).join(', ')} and ${skipped[skipped.length - 1]}`} could be found.`]),
    ],
  };
}

const setInWords = (set: ChosenSet, cost: string): string =>
  `${set.clashing.length === 0 ? 'no clash' : set.clashing.length === 1 ? 'one clash' : `${set.clashing.length} clashes`}, ${set.open.length} open, ${cost} from ${set.suppliers.length === 1 ? 'one supplier' : `${set.suppliers.length} suppliers`}`;

function boundOf(model: PlanModel, { bound }: PickOutcome): ChoicePlan['bound'] {
  const { scale } = model.problem;
  const clash = Math.floor(bound.harmony / scale);
  return { clashes: clash / clashUnits, overUse: (bound.harmony - clash * scale) / model.useUnits, cost: bound.money / 100 };
}

function withoutSet(model: PlanModel, present: ChosenSet, issues: readonly Issue[], words: readonly string[], outcome: PickOutcome): ChoicePlan {
  return {
    feasible: false, proved: outcome.proved, method: outcome.method, bound: { clashes: 0, overUse: 0, cost: 0 }, gap: 0, sets: [], present, front: undefined, swaps: [],
    notPicked: model.excluded.map(({ part, source, because }) => ({ part, source, because, sentence: `${planNames(model).source(part, source)}: ${because}.` })),
    dropOuts: [], after: undefined, volume: model.volume, currency: model.currency, words, issues,
  };
}
