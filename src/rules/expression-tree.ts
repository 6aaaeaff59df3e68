import type { ConditionalNode, ConstantNode, FunctionNode, MathNode, OperatorNode, ParenthesisNode, SymbolNode } from 'mathjs';
import type { Issue } from '../issue.ts';
import { arithmeticOperators, comparisonOperators, joiningOperators } from './expression-term.ts';
import type { BinaryOperator, Term, UnaryOperator } from './expression-term.ts';
import { expressionIssue, expressionTokens, maximumDepth } from './expression-tokens.ts';
import type { Token } from './expression-tokens.ts';
import { formulaParser } from './formula-parser.ts';
import { ruleConstants, ruleFunctions, ruleVariables } from './variables.ts';

const binaryOperators: readonly string[] = [...arithmeticOperators, ...comparisonOperators, ...joiningOperators];
const unaryOperators: readonly string[] = ['-', '+', 'not'];

/** Thrown and caught inside this file only, to leave the walk at the first fault. */
class Refusal extends Error {
  readonly issue: Issue;
  constructor(issue: Issue) {
    super(issue.code);
    this.issue = issue;
  }
}

const refuse = (column: number, found: string, expected: string, hint?: string): never => {
  throw new Refusal(expressionIssue('bad-expression', column, found, expected, hint));
};

/**
 * Walks the parser's tree in the order of the text and consumes the tokens on the way. A node that is not on the
 * allow-list, or that no token stands for (an implied multiplication, a per-cent sign), is refused; so every term has its column.
 */
class TreeWalk {
  private readonly tokens: readonly Token[];
  private readonly end: number;
  private next = 0;

  constructor(tokens: readonly Token[], length: number) {
    this.tokens = tokens.filter((token) => token.kind !== 'bracket' && token.kind !== 'comma');
    this.end = length + 1;
  }

  whole(node: MathNode): Term {
    const term = this.term(node, 1);
    if (this.next < this.tokens.length) refuse(this.column(), `"${this.tokens[this.next]!.text}"`, 'the end of the expression');
    return term;
  }

  private column(): number {
    return this.tokens[this.next]?.column ?? this.end;
  }

  private take(kind: Token['kind'], text: string, hint?: string): number {
    const token = this.tokens[this.next];
    if (token === undefined || token.kind !== kind || token.text !== text) {
      return refuse(this.column(), token === undefined ? 'the end' : `"${token.text}"`, `"${text}"`, hint);
    }
    this.next += 1;
    return token.column;
  }

  private term(node: MathNode, depth: number): Term {
    if (depth > maximumDepth) {
      throw new Refusal(expressionIssue('expression-too-deep', this.column(), `more than ${maximumDepth} levels`, `at most ${maximumDepth}`, 'Shorten the expression'));
    }
    switch (node.type) {
      case 'ConstantNode':
        return this.constant(node as ConstantNode);
      case 'SymbolNode':
        return this.symbol(node as SymbolNode);
      case 'ParenthesisNode':
        return this.term((node as ParenthesisNode).content, depth + 1);
      case 'OperatorNode':
        return this.operation(node as OperatorNode, depth);
      case 'ConditionalNode':
        return this.condition(node as ConditionalNode, depth);
      case 'FunctionNode':
        return this.call(node as FunctionNode, depth);
      case 'RelationalNode':
        return refuse(this.column(), 'a chain of comparisons', 'one comparison', 'Join two comparisons with and');
      default:
        return refuse(this.column(), node.type, 'numbers, variables, operators, conditions and functions of the list');
    }
  }

  private constant(node: ConstantNode): Term {
    const token = this.tokens[this.next];
    if (token?.kind !== 'number' || typeof node.value !== 'number' || Number(token.text) !== node.value) {
      return refuse(this.column(), `"${String(node.value)}"`, 'a decimal number');
    }
    this.next += 1;
    return { kind: 'number', value: node.value, column: token.column };
  }

  private symbol(node: SymbolNode): Term {
    const column = this.take('name', node.name);
    const constant = ruleConstants.find((entry) => entry.name === node.name);
    if (constant) return { kind: 'number', value: constant.value, column };
    const variable = ruleVariables.find((entry) => entry.name === node.name);
    return variable ? { kind: 'variable', name: variable.name, column } : refuse(column, `"${node.name}"`, 'a variable of the list');
  }

  private operation(node: OperatorNode, depth: number): Term {
    const [first, second] = node.args;
    if (first !== undefined && node.args.length === 1) {
      const column = this.column();
      if (!unaryOperators.includes(node.op)) return refuse(column, `operator "${node.op}"`, 'an operator of the list');
      this.take('operator', node.op);
      return { kind: 'unary', operator: node.op as UnaryOperator, argument: this.term(first, depth + 1), column };
    }
    if (first === undefined || second === undefined || node.args.length !== 2 || !binaryOperators.includes(node.op)) {
      return refuse(this.column(), `operator "${node.op}"`, 'an operator of the list');
    }
    const left = this.term(first, depth + 1);
    const column = this.take('operator', node.op, node.implicit ? 'Write the multiplication sign' : undefined);
    const right = this.term(second, depth + 1);
    return { kind: 'binary', operator: node.op as BinaryOperator, left, right, column };
  }

  private condition(node: ConditionalNode, depth: number): Term {
    const test = this.term(node.condition, depth + 1);
    const column = this.take('operator', '?');
    const yes = this.term(node.trueExpr, depth + 1);
    this.take('operator', ':');
    return { kind: 'condition', test, yes, no: this.term(node.falseExpr, depth + 1), column };
  }

  private call(node: FunctionNode, depth: number): Term {
    if ((node.fn as MathNode).type !== 'SymbolNode') return refuse(this.column(), 'a call of a value', 'a function of the list');
    const name = (node.fn as SymbolNode).name;
    const column = this.take('name', name);
    const known = ruleFunctions.find((entry) => entry.name === name);
    if (known === undefined) return refuse(column, `"${name}"`, 'a function of the list');
    const count = node.args.length;
    if (count < known.minArguments || count > known.maxArguments) {
      const expected = known.minArguments === known.maxArguments ? `${known.minArguments}` : `${known.minArguments} to ${known.maxArguments}`;
      return refuse(column, `${count} arguments of ${name}`, expected, known.meaning);
    }
    return { kind: 'call', name, values: node.args.map((each) => this.term(each, depth + 1)), column };
  }
}

/** Column of a syntax fault, from the parser's own count. */
function faultColumn(fault: unknown): number | undefined {
  const place: unknown = fault instanceof Error && 'char' in fault ? fault.char : undefined;
  return typeof place === 'number' ? place : undefined;
}

/**
 * Parses an expression and brings it through the allow-list; never throws. Time is linear in the text, whose length is bounded.
 * At most one fault of structure is given, after all faults of spelling.
 */
export function expressionTree(text: string): { readonly term: Term | undefined; readonly issues: readonly Issue[] } {
  const { tokens, issues } = expressionTokens(text);
  if (issues.length > 0) return { term: undefined, issues };
  const parse = formulaParser();
  if (parse === undefined) {
    return { term: undefined, issues: [expressionIssue('parser-not-loaded', 1, 'a formula', 'the parser of formulas', 'It is still being loaded: try again in a moment.')] };
  }
  let root: MathNode;
  try {
    root = parse(text);
  } catch (fault) {
    const column = Math.min(faultColumn(fault) ?? 1, text.length + 1);
    const found = column > text.length ? 'the end' : `"${text.slice(column - 1, column + 19)}"`;
    return { term: undefined, issues: [expressionIssue('bad-expression', column, found, 'a complete expression')] };
  }
  try {
    return { term: new TreeWalk(tokens, text.length).whole(root), issues: [] };
  } catch (fault) {
    if (fault instanceof Refusal) return { term: undefined, issues: [fault.issue] };
    throw fault;
  }
}
