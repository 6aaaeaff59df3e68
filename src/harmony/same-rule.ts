import type { ResolvedRule } from '../rules/rule-book.ts';

/** Whether two resolved rules ask for the same: the same limits, factors, lights, standings and words. */
export const sameRule = (first: ResolvedRule, second: ResolvedRule): boolean => first === second || JSON.stringify(first) === JSON.stringify(second);
