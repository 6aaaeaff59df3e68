import { describe, expect, it } from 'vitest';
import { checkExpression } from '../../src/rules/index.ts';

/** Attempts to get out of the formula language, to make it hang, or to have it give something that is no number. */
const attempts: readonly (readonly [title: string, text: string])[] = [
  ['reach the constructor of a value', 'meanL.constructor'],
  ['reach the constructor by index', 'meanL["constructor"]'],
  ['build a function from text', 'meanL.constructor.constructor("return process")()'],
  ['name the constructor', 'constructor'],
  ['call the constructor', 'constructor("return 1")'],
  ['name the prototype', '__proto__'],
  ['reach the prototype', 'meanL.__proto__.polluted'],
  ['name an inherited method', 'toString'],
  ['call an inherited method', 'toString()'],
  ['name an inherited method of objects', 'hasOwnProperty'],
  ['call valueOf', 'valueOf()'],
  ['define a getter', '__defineGetter__(1)'],
  ['import functions', 'import({min: 1})'],
  ['make a unit', 'createUnit("trap")'],
  ['evaluate text', 'evaluate("1")'],
  ['parse text', 'parse("1")'],
  ['make a parser', 'parser()'],
  ['compile text', 'compile("1")'],
  ['simplify', 'simplify("1 + 1")'],
  ['derive', 'derivative("x", "x")'],
  ['rebuild from JSON', 'reviver(1, 2)'],
  ['read the configuration', 'config(1)'],
  ['assign', 'meanL = 0'],
  ['assign to a member', 'min.x = 1'],
  ['assign to an index', 'meanL[1] = 0'],
  ['define a function', 'f(x) = x'],
  ['redefine a function', 'min(x) = 5'],
  ['define a recursive function', 'f(x) = f(x)'],
  ['two statements', '1; 2'],
  ['two lines', '1\n2'],
  ['a carriage return', '1\r2'],
  ['a range', '1:1000000000'],
  ['a stepped range', '0:0.0001:1000000'],
  ['the end keyword', 'end'],
  ['a list', '[1, 2]'],
  ['a matrix function', 'zeros(100000, 100000)'],
  ['an object', '{a: 1}'],
  ['a text', '"1"'],
  ['a text in single quotes', '\'1\''],
  ['a template text', '`1`'],
  ['a transpose', 'meanL\''],
  ['a unit', '2 mm'],
  ['a unit conversion', '2 mm to m'],
  ['an implied multiplication', '2 meanL'],
  ['an implied multiplication of brackets', '(2)(meanL)'],
  ['a function without a call', 'sqrt'],
  ['a call of a call', 'sqrt(4)(2)'],
  ['a call of a member', 'sqrt.call(4)'],
  ['a factorial', '170!'],
  ['a factorial of factorials', '9!!!'],
  ['a tower of exponents', '9^9^9^9'],
  ['a tower hidden in a call', 'pow(9, pow(9, 9))'],
  ['a tower hidden in exp', '2^exp(9)'],
  ['an infinite result', 'exp(exp(exp(9)))'],
  ['an infinite number', '1e999'],
  ['infinity by name', 'Infinity'],
  ['not a number by name', 'NaN'],
  ['null', 'null'],
  ['undefined', 'undefined'],
  ['a truth value', 'true'],
  ['a condition as the result', 'meanL > 3'],
  ['an imaginary number', '1i'],
  ['a hexadecimal number', '0xff'],
  ['a big integer', '5n'],
  ['a chain of comparisons', '1 < meanL < 3 ? 1 : 2'],
  ['bits', 'meanL << 30'],
  ['a per-cent sign', '50%'],
  ['a remainder', 'meanL mod 3'],
  ['a null fallback', 'meanL ?? 1'],
  ['a guarded member', 'meanL?.x'],
  ['a comment', '1 # comment'],
  ['an arrow function', '() => 1'],
  ['a spread', 'min(...meanL)'],
  ['a random number', 'random()'],
  ['a look-alike letter', 'mean\u216C'],
  ['a zero-width joiner', 'mean\u200DL'],
  ['a null character', 'meanL\u0000'],
  ['brackets 33 deep', `${'('.repeat(33)}1${')'.repeat(33)}`],
  ['brackets 240 deep', `${'('.repeat(240)}1${')'.repeat(240)}`],
  ['brackets never closed', '('.repeat(500)],
  ['a long chain of signs', `${'-'.repeat(499)}1`],
  ['a long sum', `1${'+1'.repeat(249)}`],
  ['conditions 60 deep', `${'meanL<1?1:'.repeat(49)}1`],
  ['501 characters', `${' '.repeat(500)}1`],
  ['a megabyte', '1+'.repeat(524_288)],
  ['nothing', ''],
  ['blanks', '  \t '],
  ['a lone operator', '*'],
  ['an open end', '1 +'],
  ['a lone comma', ','],
];

describe('formulas of a rule book', () => {
  it.each(attempts)('refuses %s', (_title, text) => {
    const start = performance.now();
    const checked = checkExpression(text);
    expect(performance.now() - start).toBeLessThan(1000);
    expect(checked.ok).toBe(false);
    expect(checked.evaluate).toBeUndefined();
    expect(checked.issues.length).toBeGreaterThan(0);
    expect(checked.issue).toBe(checked.issues[0]);
    for (const issue of checked.issues) {
      expect(issue.severity).toBe('error');
      expect(issue.column).toBeGreaterThanOrEqual(1);
      expect(issue.column).toBeLessThanOrEqual(Math.min(text.length, 500) + 1);
    }
  });

  it('leaves the prototypes of the language alone', () => {
    const before = [Object.prototype, Function.prototype, Number.prototype, Array.prototype].map((each) => Reflect.ownKeys(each).length);
    attempts.forEach(([, text]) => checkExpression(text));
    expect([Object.prototype, Function.prototype, Number.prototype, Array.prototype].map((each) => Reflect.ownKeys(each).length)).toEqual(before);
  });

  it('refuses what is neither a number nor a text', () => {
    for (const value of [null, undefined, {}, [], true, Number.NaN, Infinity, { toString: () => '1' }]) {
      expect(checkExpression(value as unknown as string).ok).toBe(false);
    }
  });
});
