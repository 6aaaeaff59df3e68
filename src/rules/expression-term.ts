import type { RuleVariables } from './rule-book.ts';

export const arithmeticOperators = ['+', '-', '*', '/', '^'] as const;
export const comparisonOperators = ['<', '<=', '>', '>=', '==', '!='] as const;
export const joiningOperators = ['and', 'or'] as const;
export type BinaryOperator = (typeof arithmeticOperators)[number] | (typeof comparisonOperators)[number] | (typeof joiningOperators)[number];
export type UnaryOperator = '-' | '+' | 'not';

/** An expression after the allow-list: nothing but what is named here can be evaluated. Columns count from 1. */
export type Term =
  | { readonly kind: 'number'; readonly value: number; readonly column: number }
  | { readonly kind: 'variable'; readonly name: keyof RuleVariables; readonly column: number }
  | { readonly kind: 'unary'; readonly operator: UnaryOperator; readonly argument: Term; readonly column: number }
  | { readonly kind: 'binary'; readonly operator: BinaryOperator; readonly left: Term; readonly right: Term; readonly column: number }
  | { readonly kind: 'condition'; readonly test: Term; readonly yes: Term; readonly no: Term; readonly column: number }
  | { readonly kind: 'call'; readonly name: string; readonly values: readonly Term[]; readonly column: number };

export function termChildren(term: Term): readonly Term[] {
  switch (term.kind) {
    case 'number':
    case 'variable':
      return [];
    case 'unary':
      return [term.argument];
    case 'binary':
      return [term.left, term.right];
    case 'condition':
      return [term.test, term.yes, term.no];
    case 'call':
      return term.values;
  }
}

/** Names of the variables that an expression uses, each once, in the order they are met. */
export function variablesOf(term: Term): readonly (keyof RuleVariables)[] {
  const names = new Set<keyof RuleVariables>();
  const visit = (each: Term): void => {
    if (each.kind === 'variable') names.add(each.name);
    termChildren(each).forEach(visit);
  };
  visit(term);
  return [...names];
}
