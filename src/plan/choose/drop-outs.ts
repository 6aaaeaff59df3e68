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

/** What becomes of the best set if one supplier drops out. */
export interface DropOut {
  readonly supplier: string;
  /** What the best set without it comes to beside the best of all; undefined where there is none. */
  readonly change: SetDifference | undefined;
  /** Parts that no one else may serve. */
  readonly unserved: readonly string[];
  /** In a few words, for a list: "1.2 more clashes and 4 500 EUR more". */
  readonly short: string;
  readonly sentence: string;
}

const mostNamed = 3;

/** The best set without each of the suppliers that may serve a part, one after the other; a question of the terms that are asked, carry-over parts included. */
export async function supplierDropOuts(model: PlanModel, best: ChosenSet, terms: CostTerms, names: PlanNames, options: PickOptions, watch?: Watch): Promise<readonly DropOut[]> {
  const { variables } = model.problem;
  const inPlay = model.suppliers.map((id, index) => ({ id, index })).filter(({ index }) => variables.some(({ suppliers }) => suppliers.some((own) => own.includes(index))));
  const found: DropOut[] = [];
  for (const [position, { id, index }] of inPlay.entries()) {
    await step(watch, position / inPlay.length, 'finding what becomes of it if a supplier drops out');
    const domains = fullDomains(model.problem).map((domain, variable) => domain.filter((label) => !variables[variable].suppliers[label].includes(index)));
    const unserved = domains.flatMap((domain, variable) => (domain.length === 0 ? model.groups[variable].parts : []));
    const { solution, proved } = unserved.length > 0 ? { solution: undefined, proved: true }
      : options.until?.passed() === true ? { solution: undefined, proved: false } : await solvePicks(model.problem, { ...options, domains });
    const change = solution === undefined ? undefined : setDifference(best, chosenSet(model, picksOf(model, solution.choice), terms));
    const words = change === undefined ? '' : differenceInWords(change, names);
    const short = change === undefined ? unserved.length > 0 ? `no one else serves ${unserved.length === 1 ? 'one part' : `${unserved.length} parts`}` : proved ? 'no set is left' : 'not reckoned in the time allowed' : words === '' ? 'no difference' : words;
    const few = unserved.slice(0, mostNamed).map(names.part).join('; ');
    found.push({
      supplier: id, change, unserved, short,
      sentence: `Without ${names.supplier(id)}: ${change !== undefined ? words === '' ? 'no difference' : `the best set comes to ${words}`
        : unserved.length > 0 ? `no set is left, since no one else may serve ${few}${unserved.length > mostNamed ? `; ${unserved.length - mostNamed} more` : ''}`
          : proved ? 'no set keeps to all that is asked' : 'not reckoned in the time allowed'}.`,
    });
  }
  return found;
}
