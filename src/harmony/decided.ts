import { decide } from '../readings/decide.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import type { ScalarComparison } from './scalar-comparison.ts';
import type { Verdict } from './judgement.ts';

export type DecisionRule = RuleBook['decision'];

/** The verdict by the book's decision rule, and the plain one by value against limit beside it. */
export function decided(rule: DecisionRule, comparison: ScalarComparison): { readonly verdict: Verdict; readonly simple: Verdict } {
  const simple = comparison.inside ? 'holds' : 'clashes';
  return { verdict: decide({ rule: rule.rule, confidence: rule.confidence, ...comparison }), simple };
}
