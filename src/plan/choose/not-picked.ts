import type { Exclusion } from '../model/candidates.ts';
import type { PlanModel } from '../model/plan-model.ts';
import { picksOf } from '../model/plan-model.ts';
import type { CostTerms } from '../model/source-cost.ts';
import { fullDomains } from '../picks/pick-problem.ts';
import type { PickOptions } from '../picks/solve-picks.ts';
import { solvePicks } from '../picks/solve-picks.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { ChosenSet, SetDifference } from './chosen-set.ts';
import { chosenSet, setDifference } from './chosen-set.ts';
import { differenceInWords } from './plan-words.ts';
import type { PlanNames } from './plan-words.ts';

/** Why a source is not in the best set. */
export interface NotPicked {
  readonly part: string;
  readonly source: string;
  readonly because: Exclusion | 'not allowed' | 'not reckoned' | 'worse' | 'as good';
  /** What the best set that has it comes to beside the best of all. */
  readonly bestWithIt?: SetDifference;
  readonly sentence: string;
}

const exclusionWords: Readonly<Record<Exclusion, string>> = {
  locked: 'the part is locked to another source',
  frozen: 'the part is carried over and stays as it is',
  'lead time': 'its lead time is longer than allowed',
  'lead time unknown': 'it states no lead time, and one is asked for',
  'supplier left out': 'its supplier is left out',
  group: 'no supplier could then serve all parts that go together',
};

const unreckoned = { solution: undefined, proved: false };

/** One sentence for every source that was not picked. For those that were open, the best set that has it is found. */
export async function whyNotPicked(
  model: PlanModel, best: ChosenSet, terms: CostTerms, names: PlanNames, options: PickOptions, watch?: Watch,
): Promise<readonly NotPicked[]> {
  const reasons: NotPicked[] = model.excluded.map(({ part, source, because }) => ({ part, source, because, sentence: `${names.source(part, source)}: ${exclusionWords[because]}.` }));
  const open = model.groups.flatMap((group, index) => group.parts.flatMap((part, place) =>
    [...new Set(group.alternatives.map((way) => way[place].id))].filter((source) => source !== best.picks[part]).map((source) => ({ index, part, place, source }))));
  for (const [position, { index, part, place, source }] of open.entries()) {
    await step(watch, position / open.length, 'finding why sources were not picked');
    const domains = fullDomains(model.problem).map((domain, variable) => (variable === index ? domain.filter((each) => model.groups[index].alternatives[each][place].id === source) : domain));
    const { solution, proved } = options.until?.passed() === true ? unreckoned : await solvePicks(model.problem, { ...options, domains });
    if (solution === undefined && !proved) {
      reasons.push({ part, source, because: 'not reckoned', sentence: `${names.source(part, source)}: not reckoned in the time allowed.` });
      continue;
    }
    if (solution === undefined) {
      reasons.push({ part, source, because: 'not allowed', sentence: `${names.source(part, source)}: no set that has it keeps to the budget and the number of suppliers.` });
      continue;
    }
    const bestWithIt = setDifference(best, chosenSet(model, picksOf(model, solution.choice), terms));
    const what = differenceInWords(bestWithIt, names);
    reasons.push({
      part, source, bestWithIt, because: what === '' ? 'as good' : 'worse',
      sentence: `${names.source(part, source)}: ${what === '' ? 'as good as the one picked, which comes first in the document' : `the best set that has it comes to ${what}`}.`,
    });
  }
  const order = new Map(model.cabin.parts.flatMap((part) => part.sources.map((source) => JSON.stringify([part.id, source.id]))).map((key, index) => [key, index]));
  const rank = ({ part, source }: NotPicked): number => order.get(JSON.stringify([part, source])) ?? 0;
  return reasons.sort((a, b) => rank(a) - rank(b));
}
