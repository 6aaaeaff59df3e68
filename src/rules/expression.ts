import type { Issue } from '../issue.ts';
import { expressionFunction } from './expression-function.ts';
import { kindIssues } from './expression-kinds.ts';
import { rangeIssue } from './expression-range.ts';
import { variablesOf } from './expression-term.ts';
import { expressionIssue } from './expression-tokens.ts';
import { expressionTree } from './expression-tree.ts';
import type { Expression, RuleVariables } from './rule-book.ts';

export interface CheckedExpression {
  readonly ok: boolean;
  /** The result for given variables; NaN where one it needs is NaN. Present only where the expression is usable. */
  readonly evaluate?: (variables: RuleVariables) => number;
  /** Variables it uses. */
  readonly variables: readonly (keyof RuleVariables)[];
  /** All faults, each with its column in the text. */
  readonly issues: readonly Issue[];
  /** The first of them. */
  readonly issue?: Issue;
}

const refused = (issues: readonly Issue[]): CheckedExpression => ({ ok: false, variables: [], issues, issue: issues[0]! });

/**
 * Reads a limit or factor of a rule book: a number, or a formula in the notation of mathjs over `ruleVariables`.
 * Only arithmetic, comparisons, conditions and the functions of `ruleFunctions` pass; there is no assignment, no text,
 * no member, no list and no call of anything else. Bounded in length (500), depth (32) and time; never throws.
 * With `positive`, the result must be above 0 over the documented ranges, else it must be finite.
 */
export function checkExpression(expression: Expression, options: { readonly positive?: boolean } = {}): CheckedExpression {
  const positive = options.positive ?? false;
  if (typeof expression === 'number') {
    if (Number.isFinite(expression) && (!positive || expression > 0)) return { ok: true, evaluate: () => expression, variables: [], issues: [] };
    return refused([expressionIssue('expression-out-of-range', 1, `${expression}`, `a finite number${positive ? ' above 0' : ''}`)]);
  }
  if (typeof expression !== 'string') return refused([expressionIssue('bad-expression', 1, typeof expression, 'a number or a formula')]);
  const { term, issues } = expressionTree(expression);
  if (term === undefined) return refused(issues);
  const kinds = kindIssues(term);
  if (kinds.length > 0) return refused(kinds);
  const evaluate = expressionFunction(term);
  const variables = variablesOf(term);
  const range = rangeIssue(evaluate, variables, positive);
  return range === undefined ? { ok: true, evaluate, variables, issues: [] } : refused([range]);
}
