import type { BinaryOperator, Term } from './expression-term.ts';
import type { RuleVariables } from './rule-book.ts';
import { ruleFunctions } from './variables.ts';

type Evaluate<T> = (variables: RuleVariables) => T;

const arithmetic: Partial<Record<BinaryOperator, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': Math.pow,
};

const comparison: Partial<Record<BinaryOperator, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '==': (a, b) => a === b,
  '!=': (a, b) => a !== b,
};

function conditionFunction(term: Term): Evaluate<boolean> {
  if (term.kind === 'unary' && term.operator === 'not') {
    const argument = conditionFunction(term.argument);
    return (variables) => !argument(variables);
  }
  if (term.kind === 'condition') {
    const [test, yes, no] = [conditionFunction(term.test), conditionFunction(term.yes), conditionFunction(term.no)];
    return (variables) => (test(variables) ? yes(variables) : no(variables));
  }
  if (term.kind === 'binary' && (term.operator === 'and' || term.operator === 'or')) {
    const [left, right] = [conditionFunction(term.left), conditionFunction(term.right)];
    return term.operator === 'and' ? (variables) => left(variables) && right(variables) : (variables) => left(variables) || right(variables);
  }
  const compare = term.kind === 'binary' ? comparison[term.operator] : undefined;
  if (term.kind !== 'binary' || compare === undefined) throw new Error(`not a condition: ${term.kind}`);
  const [left, right] = [expressionFunction(term.left), expressionFunction(term.right)];
  return (variables) => compare(left(variables), right(variables));
}

/**
 * Turns a checked expression into a function of the variables: closures over plain arithmetic, each node evaluated at most once.
 * Reads nothing but the named variables. The term must have passed `kindIssues`; a condition where a number belongs throws.
 */
export function expressionFunction(term: Term): Evaluate<number> {
  switch (term.kind) {
    case 'number': {
      const value = term.value;
      return () => value;
    }
    case 'variable': {
      const name = term.name;
      return (variables) => variables[name];
    }
    case 'unary': {
      const argument = expressionFunction(term.argument);
      return term.operator === '-' ? (variables) => -argument(variables) : argument;
    }
    case 'condition': {
      const [test, yes, no] = [conditionFunction(term.test), expressionFunction(term.yes), expressionFunction(term.no)];
      return (variables) => (test(variables) ? yes(variables) : no(variables));
    }
    case 'call': {
      const known = ruleFunctions.find((entry) => entry.name === term.name)!;
      const values = term.values.map(expressionFunction);
      return (variables) => known.evaluate(...values.map((each) => each(variables)));
    }
    case 'binary': {
      const apply = arithmetic[term.operator];
      if (apply === undefined) throw new Error(`not a number: ${term.operator}`);
      const [left, right] = [expressionFunction(term.left), expressionFunction(term.right)];
      return (variables) => apply(left(variables), right(variables));
    }
  }
}
