import { parseLocatedJson } from '../cabin/located-json.ts';
import { collectFaults } from '../cabin/schema/index.ts';
import { hasErrors } from '../issue.ts';
import type { Outcome } from '../issue.ts';
import { crossChecks } from './rule-book-cross-checks.ts';
import { ruleBookSchema } from './rule-book-schema.ts';
import type { RuleBook } from './rule-book.ts';

/**
 * Takes any value for a rule book: checks every field and every formula, and lists all faults with their paths, not the first alone.
 * The value comes back whole or, where there is an error, not at all. Never throws.
 */
export function restoreRuleBook(value: unknown): Outcome<RuleBook> {
  const faults = collectFaults();
  const book = ruleBookSchema.read(value, faults);
  if (book !== undefined) crossChecks(book, faults);
  return { value: faults.errors() > 0 ? undefined : book, issues: faults.list() };
}

/** Reads the text of a rule-book file (JSON); issues carry the line and column in the file, and its name where one is given. */
export function parseRuleBook(text: string, file?: string): Outcome<RuleBook> {
  const json = parseLocatedJson(text, file);
  if (json.value === undefined) return { value: undefined, issues: json.issues };
  const { value, issues } = restoreRuleBook(json.value);
  const all = [...json.issues, ...json.locate(issues)];
  return { value: hasErrors(all) ? undefined : value, issues: all };
}

/** Text of a rule book for a file: JSON, keys in the order of the document's description, so that equal books give equal bytes. */
export const serialiseRuleBook = (book: RuleBook): string => `${JSON.stringify(ruleBookSchema.arrange(book), null, 2)}\n`;
