import { cmcBook } from './cmc-book.ts';
import { defaultBook } from './default-book.ts';
import type { RuleBook } from './rule-book.ts';

/** The rule books that come with the product; the first is the default. */
export const builtInRuleBooks: readonly RuleBook[] = [defaultBook, cmcBook];

export const ruleBookById = (id: string): RuleBook | undefined => builtInRuleBooks.find((book) => book.id === id);
