import * as fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { checkExpression, ruleVariables } from '../../src/rules/index.ts';
import type { RuleVariables } from '../../src/rules/rule-book.ts';

// Oracle: the complete mathjs, evaluating the text itself with its own evaluator.
const oracle = create(all, {});
const clamp = (x: number, low: number, high: number): number => Math.min(Math.max(x, low), high);
const oracleValue = (text: string, variables: RuleVariables): number => Number(oracle.evaluate(text, { ...variables, clamp }));

const somewhere = (share: (index: number) => number): RuleVariables =>
  Object.fromEntries(ruleVariables.map(({ name, range: [low, high] }, index) => [name, low + (high - low) * share(index)])) as unknown as RuleVariables;
const middle = somewhere(() => 0.37);

describe('checkExpression', () => {
  // Expected values by hand.
  it.each([
    ['0.8 * min(1.3, 1 + gapArcmin/200)', { gapArcmin: 20 }, 0.88],
    ['0.8 * min(1.3, 1 + gapArcmin/200)', { gapArcmin: 200 }, 1.04],
    ['min(1.25, 1 + max(0, gapArcmin - 5)/220)', { gapArcmin: 25 }, 1 + 20 / 220],
    ['meanL < 35 ? 0.5 : 0.9', { meanL: 34.9 }, 0.5],
    ['meanL < 35 ? 0.5 : 0.9', { meanL: 35 }, 0.9],
    ['meanL < 35 and meanC < 5 ? 1 : meanL < 60 or meanC == 0 ? 2 : 3', { meanL: 80, meanC: 6 }, 3],
    ['not (meanL < 35) ? 4 : 5', { meanL: 20 }, 5],
    ['clamp(meanGloss * 0.1, 0.5, 3)', { meanGloss: 12 }, 1.2],
    ['-2^2 + 5', {}, 1],
    ['2 - 3 - 4 + 6', {}, 1],
    ['8 / 4 / 2', {}, 1],
    ['sqrt(gapMm * gapMm) + 1', { gapMm: 3 }, 4],
    ['gapMm + viewMm', { gapMm: 1, viewMm: 700 }, 701],
    ['exp(log(pi)) / e', {}, 1.1557273497909217],
    ['7.5', {}, 7.5],
    ['.5e1', {}, 5],
  ] as const)('gives the value of %s', (text, given, expected) => {
    const checked = checkExpression(text);
    expect(checked.issues).toEqual([]);
    expect(checked.evaluate!({ ...middle, ...given })).toBeCloseTo(expected, 12);
  });

  it('names the variables it uses', () => {
    expect(checkExpression('min(meanL, 3) + 0.1 * meanGloss * meanL').variables).toEqual(['meanL', 'meanGloss']);
  });

  it.each([
    ['1 + gapmm', 'unknown-name', 5, 'gapMm'],
    ['1 + maxx(1, 2)', 'unknown-name', 5, 'max'],
    ['2 + gapMm + meanL', 'unlike-units', 11, 'factor'],
    ['min(gapMm, viewMm, meanL)', 'unlike-units', 1, 'factor'],
    ['meanL < gapMm ? 1 : 2', 'unlike-units', 7, 'factor'],
    ['1 + 2 meanL', 'bad-expression', 7, 'multiplication'],
    ['1 + min(meanL)', 'bad-expression', 5, 'smallest'],
    ['2 * (1 + ', 'bad-expression', 10, undefined],
    ['1 + [3]', 'bad-expression', 5, 'Lists'],
  ])('says where %s is wrong', (text, code, column, hint) => {
    const { issue } = checkExpression(text);
    expect(issue).toMatchObject({ code, column });
    if (hint !== undefined) expect(issue!.hint).toContain(hint);
  });

  it('lists every unknown name, not the first only', () => {
    expect(checkExpression('aa + bb * cc(dd)').issues.map((issue) => issue.column)).toEqual([1, 6, 11, 14]);
  });

  it.each([
    ['meanL - 50', 'meanL = 0'],
    ['1 / meanC', 'meanC = 0'],
    ['1 - maxSa / minSa', 'minSa'],
    ['log(visibility) + 9', 'visibility = 0'],
    ['0', '0'],
  ])('refuses %s as a limit and names the values that break it', (text, found) => {
    expect(checkExpression(text, { positive: true }).issue).toMatchObject({ code: 'expression-out-of-range' });
    expect(checkExpression(text, { positive: true }).issue!.found).toContain(found);
  });

  it('finds a fault inside the ranges that no corner shows', () => {
    // Positive at 0 and 100, negative between about 21 and 79.
    expect(checkExpression('(meanL - 50)^2 - 850', { positive: true }).ok).toBe(false);
  });

  it('never asks a smaller value to exceed the larger one', () => {
    expect(checkExpression('1 + sqrt(maxSa - minSa)', { positive: true }).ok).toBe(true);
  });

  it('lets a negative result pass where no limit is asked', () => {
    expect(checkExpression('-0.3').evaluate!(middle)).toBe(-0.3);
  });
});

describe('random formulas', () => {
  const word = fc.constantFrom(
    ...ruleVariables.map((entry) => entry.name), 'pi', 'e', 'min', 'max', 'clamp', 'abs', 'sqrt', 'exp', 'log', 'pow', '(', ')', '(', ')', ',', '+', '-', '*', '/', '^',
    '<', '<=', '>', '==', '!=', 'and', 'or', 'not', '?', ':', '1', '0.5', '20', '1e3', ' ', '.', '=', '[', ']', '"', '!', '%', ';', 'x', 'end', '__proto__',
  );

  it('never throw and never hang, whatever the order of the words', () => {
    let accepted = 0;
    fc.assert(fc.property(fc.array(word, { maxLength: 40 }), (words) => {
      const text = words.join('');
      const start = performance.now();
      const checked = checkExpression(text);
      expect(performance.now() - start).toBeLessThan(1000);
      expect(checked.ok).toBe(checked.issues.length === 0);
      if (!checked.ok) return;
      accepted += 1;
      expect(checked.evaluate!(middle)).toBeCloseTo(oracleValue(text, middle), 6);
    }), { seed: 20, numRuns: 6000 });
    expect(accepted).toBeGreaterThan(20);
  });

  it('never throw on any text at all', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
      const checked = checkExpression(text);
      expect(checked.ok).toBe(checked.issues.length === 0);
    }), { seed: 21, numRuns: 3000 });
  });

  const { number } = fc.letrec<{ number: string; condition: string }>((tie) => ({
    number: fc.oneof(
      { maxDepth: 4 },
      fc.constantFrom(...ruleVariables.map((entry) => `(0.7 * ${entry.name})`), '2', '0.35', 'pi', 'e'),
      fc.tuple(tie('number'), fc.constantFrom('+', '-', '*', '/'), tie('number')).map(([a, sign, b]) => `(${a} ${sign} (${b}) * 1.5)`),
      fc.tuple(fc.constantFrom('min', 'max'), tie('number'), tie('number')).map(([name, a, b]) => `${name}(1 * (${a}), 1 * (${b}))`),
      tie('number').map((a) => `sqrt(abs(${a}))`),
      tie('number').map((a) => `clamp(1 * (${a}), -3, 40)`),
      tie('number').map((a) => `-(${a})`),
      fc.tuple(tie('condition'), tie('number'), tie('number')).map(([test, a, b]) => `(${test} ? 1 * (${a}) : 1 * (${b}))`),
    ),
    condition: fc.oneof(
      { maxDepth: 4 },
      fc.tuple(tie('number'), fc.constantFrom('<', '>=', '!='), tie('number')).map(([a, sign, b]) => `(1 * (${a}) ${sign} 1.0001 * (${b}) + 0.017)`),
      fc.tuple(tie('condition'), fc.constantFrom('and', 'or'), tie('condition')).map(([a, sign, b]) => `(${a} ${sign} ${b})`),
      tie('condition').map((a) => `(not (${a}))`),
    ),
  }));

  it('that are accepted equal the value of an independent evaluator', () => {
    let compared = 0;
    fc.assert(fc.property(number, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 14, maxLength: 14 }), (text, shares) => {
      const checked = checkExpression(text);
      if (!checked.ok) {
        expect(['expression-out-of-range', 'expression-too-long', 'expression-too-deep']).toContain(checked.issue!.code);
        return;
      }
      const variables = somewhere((index) => shares[index]!);
      const expected = oracleValue(text, variables);
      const got = checked.evaluate!(variables);
      compared += 1;
      if (Number.isFinite(expected)) expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
      else expect(Number.isFinite(got)).toBe(false);
    }), { seed: 22, numRuns: 2000 });
    expect(compared).toBeGreaterThan(500);
  });
});
