import type { Cabin } from '../../cabin/cabin.ts';
import { judgeCabin } from '../../harmony/judge.ts';
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
  const judged = judgeCabin(cabin, book, options);
  const shifts = mendGroups(cabin, judged.context, judged.bases, ownTerms(cabin, options)).map((group) => {
    const card = plan.cards.find(({ parts }) => parts.some((part) => group.parts.includes(part)));
    const shift: Shift = card === undefined ? noShift : [card.shift.dL, card.shift.da, card.shift.db, card.shift.dGloss];
    return { ...group.specimens, shift };
  });
  const met = shiftedCabin(cabin, shifts, judged.context.light('D65')!, judged.context.book.observer);
  return { ...met, name: `${cabin.name}, as if all targets were met`, note: [asMetNote, cabin.note].filter(Boolean).join('\n') };
}
