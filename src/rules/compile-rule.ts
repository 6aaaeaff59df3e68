import { checkExpression } from './expression.ts';
import { plainNumber } from './plain-number.ts';
import type { CompiledGloss } from './resolve-gloss.ts';
import type { ComponentRule, Expression, GlossRule, LightRule, PairRule, RuleVariables } from './rule-book.ts';

/** A limit or factor ready to be evaluated many times. */
export interface CompiledValue {
  /** As written in the book. */
  readonly text: string;
  readonly variables: readonly (keyof RuleVariables)[];
  /** NaN where a variable it uses is not known (NaN), so that a comparison with an unknown value decides nothing. */
  readonly at: (variables: RuleVariables) => number;
}

export interface CompiledComponent {
  readonly rule: ComponentRule;
  readonly min?: CompiledValue;
  readonly max?: CompiledValue;
}

export interface CompiledRule {
  readonly rule: PairRule;
  readonly limit?: CompiledValue;
  readonly kL?: CompiledValue;
  readonly kC?: CompiledValue;
  readonly kH?: CompiledValue;
  readonly lights?: readonly LightRule[];
  readonly components?: readonly CompiledComponent[];
  readonly gloss?: CompiledGloss;
  readonly metamerismLimit?: CompiledValue;
}

/** Compiles an expression of a book that `restoreRuleBook` has passed; throws on one it has not. */
export function compileValue(expression: Expression): CompiledValue {
  const { evaluate, variables, issue } = checkExpression(expression);
  if (evaluate === undefined) throw new Error(`unchecked expression: ${issue?.code ?? ''} ${String(expression).slice(0, 80)}`);
  return {
    text: typeof expression === 'number' ? plainNumber(expression) : expression,
    variables,
    at: (values) => (variables.some((name) => Number.isNaN(values[name])) ? Number.NaN : evaluate(values)),
  };
}

const optionalValue = <Key extends string>(key: Key, expression: Expression | undefined): { readonly [K in Key]?: CompiledValue } =>
  (expression === undefined ? {} : { [key]: compileValue(expression) } as { readonly [K in Key]: CompiledValue });

export const compileGloss = (rule: GlossRule): CompiledGloss => (rule.kind === 'limit' ? { ...rule, limit: compileValue(rule.limit).at } : rule);

export function compileRule(rule: PairRule): CompiledRule {
  const { colour = {} } = rule;
  return {
    rule,
    ...optionalValue('limit', colour.limit),
    ...optionalValue('kL', colour.kL),
    ...optionalValue('kC', colour.kC),
    ...optionalValue('kH', colour.kH),
    ...(colour.lights === undefined ? {} : { lights: colour.lights }),
    ...(colour.components === undefined ? {} : {
      components: colour.components.map((component) => ({
        rule: component, ...optionalValue('min', component.min), ...optionalValue('max', component.max),
      })),
    }),
    ...(rule.gloss === undefined ? {} : { gloss: compileGloss(rule.gloss) }),
    ...optionalValue('metamerismLimit', rule.metamerismLimit),
  };
}
