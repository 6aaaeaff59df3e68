import type { ModelTerms, PlanModel } from '../model/plan-model.ts';
import type { PickOptions } from '../picks/solve-picks.ts';
import { solvePicks } from '../picks/solve-picks.ts';
import { suppliersInPlay } from '../picks/supplier-subsets.ts';
import { fullDomains } from '../picks/pick-problem.ts';
import type { PickProblem } from '../picks/pick-problem.ts';
import type { PlanNames } from './plan-words.ts';

/** Why no set is allowed, in words: the parts that nothing serves, or what the limits would have to be. */
export async function whyNoSet(model: PlanModel, terms: ModelTerms, names: PlanNames, options: PickOptions): Promise<readonly string[]> {
  const unserved = model.groups.filter((group) => group.alternatives.length === 0);
  if (unserved.length > 0) {
    return unserved.map((group) => {
      if (group.parts.length > 1 && !group.parts.some((part) => nothingOpen(model, part))) {
        return `${group.parts.map(names.part).join(', ')} go together (${group.because.join(', ')}), and no one supplier can serve them all.`;
      }
      const part = group.parts.find((each) => nothingOpen(model, each)) ?? group.parts[0];
      const reasons = [...new Set(model.excluded.filter((each) => each.part === part).map(({ because }) => because))];
      return `Nothing is left for ${names.part(part)}: every source of it is ruled out (${reasons.join(', ')}).`;
    });
  }
  const words: string[] = [];
  const { forced, optional } = suppliersInPlay(model.problem, fullDomains(model.problem));
  if (terms.maxSuppliers !== undefined && forced.length > terms.maxSuppliers) {
    words.push(`${forced.length} suppliers are needed in any case (${forced.map((index) => names.supplier(model.suppliers[index])).join(', ')}), and at most ${terms.maxSuppliers} are allowed.`);
  } else if (terms.maxSuppliers !== undefined && !(await anySet({ ...model.problem, budget: undefined }, options))) {
    words.push(`No ${terms.maxSuppliers} of the ${forced.length + optional.length} suppliers can serve all parts between them.`);
  }
  if (terms.budget !== undefined && words.length === 0) {
    const { solution } = await solvePicks(moneyOnly(model.problem), options);
    if (solution !== undefined) words.push(`The cheapest set that is otherwise allowed costs ${names.money(solution.money / 100)}; ${names.money(terms.budget)} are allowed.`);
  }
  return words.length > 0 ? words : ['No set keeps to all that is asked.'];
}

const nothingOpen = (model: PlanModel, part: string): boolean => {
  const sources = model.judge.context.index.parts.get(part)?.sources ?? [];
  return sources.every((source) => model.excluded.some((each) => each.part === part && each.source === source.id && each.because !== 'group'));
};

const anySet = async (problem: PickProblem, options: PickOptions): Promise<boolean> => (await solvePicks(problem, options)).solution !== undefined;

/** The same choice with nothing to tell harmony apart, so that money alone decides. */
function moneyOnly(problem: PickProblem): PickProblem {
  return { ...problem, variables: problem.variables.map((variable) => ({ ...variable, harmony: variable.harmony.map(() => 0) })), pairs: [], budget: undefined };
}
