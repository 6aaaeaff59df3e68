import type { Cabin } from '../../cabin/cabin.ts';
import { judgeContext } from '../../harmony/judge-context.ts';
import { partBasis } from '../../harmony/part-bases.ts';
import { compileRuleBook } from '../../rules/compile-rule-book.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import type { MendOptions, MendPlan } from './mend-cabin.ts';
import { mendGroups } from './mend-items.ts';
import { noShift } from './mend-problem.ts';
import type { Shift } from './mend-problem.ts';
import { ownTerms } from './own-terms.ts';
import { shiftedCabin } from './shifted-cabin.ts';

/** What a cabin as met says of itself, so that nobody takes it for a measured one. */
export const asMetNote = 'Not measured: the readings of the changed parts are what they would be if every target of a mend were met.';

/** The document as it would be if every target of a plan were met, named and noted as such: to be judged by the ordinary check, not to be kept. */
export function cabinAsMet(cabin: Cabin, book: RuleBook, plan: Pick<MendPlan, 'cards'>, options: MendOptions = {}): Cabin {
  const { value: rules, issues } = compileRuleBook(book);
  if (rules === undefined) throw new RangeError(`rule book ${book.id} does not compile: ${issues[0]?.code ?? 'unknown fault'}`);
  const context = judgeContext(cabin, rules, options.stage ?? cabin.stage ?? 'new', options.asOf ?? cabin.asOf);
  const bases = new Map(cabin.parts.map((part) => [part.id, partBasis(context, part)]));
  const shifts = mendGroups(cabin, context, bases, ownTerms(cabin, options)).map((group) => {
    const card = plan.cards.find(({ parts }) => parts.some((part) => group.parts.includes(part)));
    const shift: Shift = card === undefined ? noShift : [card.shift.dL, card.shift.da, card.shift.db, card.shift.dGloss];
    return { ...group.specimens, shift };
  });
  const met = shiftedCabin(cabin, shifts, context.light('D65')!, context.book.observer);
  return { ...met, name: `${cabin.name}, as if all targets were met`, note: [asMetNote, cabin.note].filter(Boolean).join('\n') };
}
