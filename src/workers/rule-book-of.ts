import type { Cabin } from '../cabin/cabin.ts';
import type { Outcome } from '../issue.ts';
import { builtInRuleBooks, restoreRuleBook, ruleBookById } from '../rules/index.ts';
import type { RuleBook } from '../rules/rule-book.ts';

/** The rule book that a cabin names or carries, else the first built-in one; the paths of faults begin with `ruleBook`. */
export function ruleBookOf(ruleBook: Cabin['ruleBook']): Outcome<RuleBook> {
  if (ruleBook === undefined) return { value: builtInRuleBooks[0], issues: [] };
  if (typeof ruleBook === 'object') {
    const { value, issues } = restoreRuleBook(ruleBook);
    return { value, issues: issues.map((issue) => ({ ...issue, path: ['ruleBook', issue.path].filter(Boolean).join('.') })) };
  }
  const value = ruleBookById(ruleBook);
  if (value !== undefined) return { value, issues: [] };
  const expected = builtInRuleBooks.map((book) => book.id).join(', ');
  return { value: undefined, issues: [{ code: 'unknown-rule-book', severity: 'error', path: 'ruleBook', found: ruleBook, expected }] };
}
