import type { Cabin } from '../cabin/cabin.ts';
import { hasErrors } from '../issue.ts';
import type { Issue } from '../issue.ts';
import { apportionCabin, chooseSources, freeMix, mendCabin, swapsFrom } from '../plan/index.ts';
import type { Watch } from '../plan/index.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import { cabinSeries } from '../series/index.ts';
import type { PlannedReply, PlanOf, PlanTask, RefusedPlan } from './plan-protocol.ts';
import { ruleBookOf } from './rule-book-of.ts';

/** The book of each cabin, restored once, so that what is judged by it is known again. */
const books = new WeakMap<Cabin, RuleBook>();

/** Makes one plan of a cabin by its own rule book. Whatever is wrong with the terms is an answer. */
export async function makePlan(cabin: Cabin, task: PlanTask, watch: Watch): Promise<PlannedReply | RefusedPlan> {
  const cabins = [cabin, ...(task.kind === 'mix' ? task.further ?? [] : [])];
  const found = cabins.map(bookOf);
  const issues = found.flatMap((each) => each.issues);
  const known = found.flatMap(({ book }) => (book === undefined ? [] : [book]));
  if (known.length < cabins.length || hasErrors(issues)) return { kind: 'refused', issues };
  const plan = await planOf(cabins, known, task, watch);
  return 'issues' in plan && hasErrors(plan.issues) ? { kind: 'refused', issues: plan.issues } : { kind: 'planned', plan };
}

function bookOf(cabin: Cabin): { readonly book: RuleBook | undefined; readonly issues: readonly Issue[] } {
  const known = books.get(cabin);
  if (known !== undefined) return { book: known, issues: [] };
  const { value, issues } = ruleBookOf(cabin.ruleBook);
  if (value !== undefined) books.set(cabin, value);
  return { book: value, issues };
}

function planOf(cabins: readonly Cabin[], known: readonly RuleBook[], task: PlanTask, watch: Watch): Promise<PlanOf[keyof PlanOf]> {
  const [cabin, book] = [cabins[0], known[0]];
  switch (task.kind) {
    case 'choose': return chooseSources(cabin, book, task.options, watch);
    case 'swaps': return swapsFrom(cabin, book, task.picks, task.options, watch);
    case 'mix': return freeMix(cabins, known, task.options, watch);
    case 'mend': return mendCabin(cabin, book, task.options, watch);
    case 'apportion': return apportionCabin(cabin, book, task.options, watch);
    case 'series': return cabinSeries(cabin, book, task.options, watch);
  }
}
