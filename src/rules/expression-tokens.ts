import { nameHint } from '../cabin/schema/nearest-name.ts';
import type { Issue } from '../issue.ts';
import { ruleConstants, ruleFunctions, ruleVariables } from './variables.ts';

export interface Token {
  readonly kind: 'number' | 'name' | 'operator' | 'bracket' | 'comma';
  readonly text: string;
  /** First character is 1. */
  readonly column: number;
}

export const maximumLength = 500;
export const maximumDepth = 32;

const wordOperators = ['and', 'or', 'not'];
const functionNames = ruleFunctions.map((entry) => entry.name);
const valueNames = [...ruleVariables.map((entry) => entry.name), ...ruleConstants.map((entry) => entry.name)];
const numberPattern = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const namePattern = /[A-Za-z_$][A-Za-z0-9_$]*/y;
const operatorPattern = /<=|>=|==|!=|[-+*/^<>?:]/y;

const refusedSigns: Readonly<Record<string, string>> = {
  '=': 'An expression cannot assign; compare with ==',
  '!': 'Factorials are not available; negate with not',
  '[': 'Lists and indexing are not available',
  ']': 'Lists and indexing are not available',
  '{': 'Objects are not available',
  '}': 'Objects are not available',
  '"': 'Text is not available',
  '\'': 'Text and transposes are not available',
  '`': 'Text is not available',
  '.': 'Members of values are not available; a number needs a digit beside its point',
  ';': 'Only one expression is allowed',
  '\n': 'Write the expression on one line',
  '\r': 'Write the expression on one line',
  '#': 'Comments are not available; use the basis of the rule',
  '%': 'Write a share as a number, for example 0.1 for 10 per cent',
  '&': 'Join conditions with and',
  '|': 'Join conditions with or',
};

/** An issue of an expression, with the place of the fault in it. */
export function expressionIssue(code: string, column: number, found: string, expected: string, hint?: string): Issue {
  return { code, severity: 'error', column, found, expected, ...(hint === undefined ? {} : { hint }) };
}

function matchAt(pattern: RegExp, text: string, index: number): string | undefined {
  pattern.lastIndex = index;
  return pattern.exec(text)?.[0];
}

function checkName(text: string, index: number, name: string): Issue | undefined {
  if (wordOperators.includes(name)) return undefined;
  const column = index + 1;
  const called = /^\s*\(/.test(text.slice(index + name.length));
  const allowed = called ? functionNames : valueNames;
  if (allowed.includes(name)) return undefined;
  if (functionNames.includes(name)) return expressionIssue('bad-expression', column, `${name} without its arguments`, `${name}(...)`);
  if (valueNames.includes(name)) {
    return expressionIssue('bad-expression', column, `${name} followed by a bracket`, 'an operator between them', 'Write the multiplication sign');
  }
  return expressionIssue('unknown-name', column, `"${name.slice(0, 60)}"`, called ? 'a function of the list' : 'a variable of the list',
    nameHint(name, allowed) ?? `Use one of: ${allowed.join(', ')}`);
}

/**
 * Words of an expression with their columns. Everything that is not in the alphabet of the language is an issue here,
 * before any parser sees the text: names outside the lists, text, members, lists, assignment, several statements.
 * Length is bounded by `maximumLength`, nesting of brackets by `maximumDepth`.
 */
export function expressionTokens(text: string): { readonly tokens: readonly Token[]; readonly issues: readonly Issue[] } {
  if (text.length > maximumLength) {
    return { tokens: [], issues: [expressionIssue('expression-too-long', maximumLength + 1, `${text.length} characters`, `at most ${maximumLength}`)] };
  }
  const tokens: Token[] = [];
  const issues: Issue[] = [];
  let depth = 0;
  let index = 0;
  while (index < text.length) {
    const sign = text[index]!;
    const column = index + 1;
    if (sign === ' ' || sign === '\t') {
      index += 1;
      continue;
    }
    const number = matchAt(numberPattern, text, index);
    const name = number === undefined ? matchAt(namePattern, text, index) : undefined;
    const operator = number === undefined && name === undefined ? matchAt(operatorPattern, text, index) : undefined;
    if (number !== undefined) {
      const next = text[index + number.length] ?? '';
      if (/[A-Za-z0-9_$.]/.test(next)) {
        issues.push(expressionIssue('bad-expression', column, `"${number}${next}"`, 'a decimal number', 'Write the multiplication sign; units are fixed by the variables'));
      } else if (!Number.isFinite(Number(number))) {
        issues.push(expressionIssue('bad-expression', column, number, 'a finite number'));
      }
      tokens.push({ kind: 'number', text: number, column });
      index += number.length;
    } else if (name !== undefined) {
      const issue = checkName(text, index, name);
      if (issue) issues.push(issue);
      tokens.push({ kind: wordOperators.includes(name) ? 'operator' : 'name', text: name, column });
      index += name.length;
    } else if (operator !== undefined) {
      tokens.push({ kind: 'operator', text: operator, column });
      index += operator.length;
    } else if (sign === '(' || sign === ')') {
      depth += sign === '(' ? 1 : -1;
      if (depth > maximumDepth) {
        issues.push(expressionIssue('expression-too-deep', column, `${depth} open brackets`, `at most ${maximumDepth}`));
        return { tokens, issues };
      }
      if (depth < 0) {
        issues.push(expressionIssue('bad-expression', column, 'a closing bracket', 'an opening bracket before it'));
        return { tokens, issues };
      }
      tokens.push({ kind: 'bracket', text: sign, column });
      index += 1;
    } else if (sign === ',') {
      tokens.push({ kind: 'comma', text: sign, column });
      index += 1;
    } else {
      const shown = sign === '\n' || sign === '\r' ? 'a line break' : `"${String.fromCodePoint(text.codePointAt(index)!)}"`;
      issues.push(expressionIssue('bad-expression', column, shown, 'numbers, names of the list, operators and round brackets', refusedSigns[sign]));
      index += 1;
    }
  }
  if (issues.length === 0 && tokens.length === 0) issues.push(expressionIssue('bad-expression', 1, 'nothing', 'an expression'));
  if (issues.length === 0 && depth > 0) {
    issues.push(expressionIssue('bad-expression', text.length + 1, 'the end', `${depth} closing bracket${depth > 1 ? 's' : ''}`));
  }
  return { tokens, issues };
}
