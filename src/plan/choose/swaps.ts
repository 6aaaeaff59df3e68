import type { Cabin } from '../../cabin/cabin.ts';
import type { JudgeOptions } from '../../harmony/judge.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import { pairJudge } from '../model/pair-judge.ts';
import { choiceOf, picksOf, planModel } from '../model/plan-model.ts';
import type { ModelTerms, PlanModel } from '../model/plan-model.ts';
import type { CostTerms } from '../model/source-cost.ts';
import type { Picks } from '../model/with-picks.ts';
import type { ChosenSet, SetDifference } from './chosen-set.ts';
import { chosenSet, setDifference } from './chosen-set.ts';
import type { Watch } from '../watch.ts';
import { differenceInWords, planNames } from './plan-words.ts';
import type { PlanNames } from './plan-words.ts';

/** What changes if one group of parts takes another alternative, everything else staying as in the best set. */
export interface Swap {
  readonly parts: readonly string[];
  /** The sources taken instead. */
  readonly to: Picks;
  readonly change: SetDifference;
  /** Joints that clash only after it, and those that clash no more. */
  readonly nowClashing: readonly string[];
  readonly noLongerClashing: readonly string[];
  readonly withinBudget: boolean;
  readonly sentence: string;
}

/** Every single swap from a set, in the order of parts and sources. */
export function singleSwaps(model: PlanModel, best: ChosenSet, choice: readonly number[], terms: CostTerms, names: PlanNames): readonly Swap[] {
  return model.groups.flatMap((group, index) => group.alternatives.flatMap((way, label): Swap[] => {
    if (label === choice[index]) return [];
    const to = Object.fromEntries(group.parts.map((part, place) => [part, way[place].id]));
    const set = chosenSet(model, picksOf(model, choice.map((taken, other) => (other === index ? label : taken))), terms);
    const change = setDifference(best, set);
    const nowClashing = set.clashing.filter((id) => !best.clashing.includes(id));
    const noLongerClashing = best.clashing.filter((id) => !set.clashing.includes(id));
    const what = differenceInWords(change, names);
    const joints = nowClashing.length === 0 ? '' : `; then ${nowClashing.slice(0, 3).map(names.joint).join(', ')}${nowClashing.length > 3 ? ` and ${nowClashing.length - 3} more` : ''} clash`;
    return [{
      parts: group.parts, to, change, nowClashing, noLongerClashing,
      withinBudget: set.cost * 100 <= (model.problem.budget ?? Infinity),
      sentence: `${group.parts.map((part) => names.source(part, to[part])).join(', ')} instead: ${what === '' ? 'no difference' : what}${joints}.`,
    }];
  }));
}

/** Every single swap from picks that keep to the terms, such as a point of the front; none where they do not. */
export async function swapsFrom(cabin: Cabin, book: RuleBook, picks: Picks, options: ModelTerms & JudgeOptions = {}, watch?: Watch): Promise<readonly Swap[]> {
  const model = await planModel(cabin, pairJudge(cabin, book, options), options, watch);
  const choice = choiceOf(model, picks);
  return choice === undefined ? [] : singleSwaps(model, chosenSet(model, picks, options), choice, options, planNames(model));
}
