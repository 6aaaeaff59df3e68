import type { Issue } from '../issue.ts';
import { comparisonOperators } from './expression-term.ts';
import type { Term } from './expression-term.ts';
import { expressionIssue } from './expression-tokens.ts';
import { ruleVariables } from './variables.ts';

/** Exponents of the basic units; `free` where a bare number may carry any unit, as a factor of a formula does. */
type Units = 'free' | ReadonlyMap<string, number>;
type Kind = { readonly kind: 'number'; readonly units: Units } | { readonly kind: 'truth' };

const free: Kind = { kind: 'number', units: 'free' };
const truth: Kind = { kind: 'truth' };

const unitsText = (units: Units): string =>
  units === 'free' ? 'a number'
    : units.size === 0 ? 'a pure number'
      : [...units].map(([unit, power]) => (power === 1 ? unit : `${unit}^${Number(power.toPrecision(6))}`)).join(' ');

function sameUnits(a: Units, b: Units): boolean {
  if (a === 'free' || b === 'free') return true;
  return a.size === b.size && [...a].every(([unit, power]) => Math.abs((b.get(unit) ?? 0) - power) < 1e-12);
}

function scaledSum(a: Units, b: Units, factor: number): Units {
  if (a === 'free' || b === 'free') return 'free';
  const sum = new Map(a);
  for (const [unit, power] of b) {
    const total = (sum.get(unit) ?? 0) + factor * power;
    if (Math.abs(total) < 1e-12) sum.delete(unit);
    else sum.set(unit, total);
  }
  return sum;
}

const hasPower = (term: Term): boolean =>
  (term.kind === 'binary' && (term.operator === '^' || hasPower(term.left) || hasPower(term.right)))
  || (term.kind === 'call' && (term.name === 'pow' || term.name === 'exp' || term.values.some(hasPower)))
  || (term.kind === 'unary' && hasPower(term.argument))
  || (term.kind === 'condition' && [term.test, term.yes, term.no].some(hasPower));

/**
 * Checks that conditions are conditions and numbers numbers, that two variables of unlike units are never added or
 * compared bare (`gapMm + meanL`; a written factor makes it legal, as it may carry the unit), and that no exponent holds a power.
 */
export function kindIssues(term: Term): readonly Issue[] {
  const issues: Issue[] = [];
  const fault = (at: Term, found: string, expected: string, hint?: string): void => {
    issues.push(expressionIssue('bad-expression', at.column, found, expected, hint));
  };
  const asUnits = (each: Term, kind: Kind): Units => {
    if (kind.kind === 'number') return kind.units;
    fault(each, 'a condition', 'a number', 'Use condition ? value : value');
    return 'free';
  };
  const number = (each: Term): Units => asUnits(each, kindOf(each));
  const condition = (each: Term): void => {
    if (kindOf(each).kind === 'number') fault(each, 'a number', 'a condition', 'Compare it, for example meanL < 35; put not (...) round a whole comparison');
  };
  const common = (at: Term, all: readonly Units[]): Units => {
    let shared: Units = 'free';
    for (const units of all) {
      if (!sameUnits(shared, units)) {
        issues.push(expressionIssue('unlike-units', at.column, `${unitsText(shared)} with ${unitsText(units)}`, 'like units', 'Multiply one of them by a written factor'));
      } else if (shared === 'free') shared = units;
    }
    return shared;
  };
  const power = (at: Term, base: Term, exponent: Term): Kind => {
    const units = number(base);
    number(exponent);
    if (hasPower(exponent)) fault(at, 'a power inside an exponent', 'a plain exponent');
    return exponent.kind === 'number' ? { kind: 'number', units: scaledSum(new Map(), units, exponent.value) } : free;
  };
  const kindOf = (each: Term): Kind => {
    switch (each.kind) {
      case 'number':
        return free;
      case 'variable': {
        const unit = ruleVariables.find((entry) => entry.name === each.name)!.unit;
        return { kind: 'number', units: unit === '1' ? new Map() : new Map([[unit, 1]]) };
      }
      case 'unary':
        if (each.operator === 'not') {
          condition(each.argument);
          return truth;
        }
        return { kind: 'number', units: number(each.argument) };
      case 'condition': {
        condition(each.test);
        // Each branch is looked at once: twice would double the work at every level of nesting.
        const yes = kindOf(each.yes);
        const no = kindOf(each.no);
        if (yes.kind === 'truth' && no.kind === 'truth') return truth;
        return { kind: 'number', units: common(each, [asUnits(each.yes, yes), asUnits(each.no, no)]) };
      }
      case 'call': {
        if (each.name === 'pow') return power(each, each.values[0]!, each.values[1]!);
        const units = common(each, each.values.map(number));
        if (each.name === 'sqrt') return { kind: 'number', units: scaledSum(new Map(), units, 0.5) };
        return each.name === 'exp' || each.name === 'log' ? free : { kind: 'number', units };
      }
      case 'binary':
        if (each.operator === 'and' || each.operator === 'or') {
          condition(each.left);
          condition(each.right);
          return truth;
        }
        if (comparisonOperators.some((operator) => operator === each.operator)) {
          common(each, [number(each.left), number(each.right)]);
          return truth;
        }
        if (each.operator === '^') return power(each, each.left, each.right);
        if (each.operator === '*' || each.operator === '/') {
          return { kind: 'number', units: scaledSum(number(each.left), number(each.right), each.operator === '*' ? 1 : -1) };
        }
        return { kind: 'number', units: common(each, [number(each.left), number(each.right)]) };
    }
  };
  number(term);
  return issues;
}
