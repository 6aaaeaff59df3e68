import type { Cabin } from '../cabin/cabin.ts';
import { builtInRuleBooks, ruleBookById } from '../rules/built-in-rule-books.ts';
import { restoreRuleBook } from '../rules/restore-rule-book.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import type { Edited } from './edit.ts';
import { isRefusal, refuse } from './edit.ts';

const read = new WeakMap<object, RuleBook | { readonly faulty: true }>();

/** The rule book that a cabin carries or names, else the first built-in one; undefined where it carries a faulty one or names one that is not known. */
export function bookOfCabin({ ruleBook }: Pick<Cabin, 'ruleBook'>): RuleBook | undefined {
  if (ruleBook === undefined) return builtInRuleBooks[0];
  if (typeof ruleBook === 'string') return ruleBookById(ruleBook);
  const known = read.get(ruleBook) ?? restoreRuleBook(ruleBook).value ?? { faulty: true as const };
  read.set(ruleBook, known);
  return 'faulty' in known ? undefined : known;
}

/** Id and name of a book that begins as a copy of a built-in one. */
const ownCopy = (book: RuleBook): RuleBook => ({ ...book, id: `${book.id}-own`, name: `${book.name}, own limits` });

/**
 * The cabin with its rule book edited. One that names a built-in book carries a copy of its own from then on. The edited book is checked
 * whole; the paths of faults begin with `ruleBook`.
 */
export function editBook(cabin: Cabin, edit: (book: RuleBook) => Edited<RuleBook>): Edited<Cabin> {
  const book = bookOfCabin(cabin);
  if (book === undefined) return refuse('unknown-rule-book', 'a rule book that cannot be read', 'a rule book', 'Name a built-in one first.');
  const edited = edit(book);
  if (isRefusal(edited)) return edited;
  if (edited === book) return cabin;
  const own = typeof cabin.ruleBook === 'object' ? edited : ownCopy(edited);
  const { value, issues } = restoreRuleBook(own);
  const fault = issues.find(({ severity }) => severity === 'error');
  if (fault !== undefined || value === undefined) return { refused: { ...(fault ?? { code: 'wrong-type', severity: 'error' as const }), path: ['ruleBook', fault?.path].filter(Boolean).join('.') } };
  return { ...cabin, ruleBook: own };
}
