import type { Cabin } from '../cabin/cabin.ts';
import { hasErrors } from '../issue.ts';
import { apportionCabin, chooseSources, freeMix, mendCabin, swapsFrom } from '../plan/index.ts';
import type { Watch } from '../plan/index.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import type { PlannedReply, PlanOf, PlanTask, RefusedPlan } from './plan-protocol.ts';
import { ruleBookOf } from './rule-book-of.ts';

/** The book of each cabin, restored once, so that what is judged by it is known again. */
const books = new WeakMap<Cabin, RuleBook>();

/** Makes one plan of a cabin by its own rule book. Whatever is wrong with the terms is an answer. */
export async function makePlan(cabin: Cabin, task: PlanTask, watch: Watch): Promise<PlannedReply | RefusedPlan> {
  const { value: book, issues } = books.has(cabin) ? { value: books.get(cabin), issues: [] } : ruleBookOf(cabin.ruleBook);
  if (book === undefined || hasErrors(issues)) return { kind: 'refused', issues };
  books.set(cabin, book);
  const plan = await planOf(cabin, book, task, watch);
  return 'issues' in plan && hasErrors(plan.issues) ? { kind: 'refused', issues: plan.issues } : { kind: 'planned', plan };
}

function planOf(cabin: Cabin, book: RuleBook, task: PlanTask, watch: Watch): Promise<PlanOf[keyof PlanOf]> {
  switch (task.kind) {
    case 'choose': return chooseSources(cabin, book, task.options, watch);
    case 'swaps': return swapsFrom(cabin, book, task.picks, task.options, watch);
    case 'mix': return freeMix([cabin], book, task.options, watch);
    case 'mend': return mendCabin(cabin, book, task.options, watch);
    case 'apportion': return apportionCabin(cabin, book, task.options, watch);
  }
}
