import { expect, test } from 'vitest';
import { completed, completions, wordBefore } from '../../components/model/formula-words.ts';
import { checkExpression } from '../../src/rules/index.ts';

/** What goes on from the caret, by the documented names of variables and functions. */
test('the beginning of a name is what stands before the caret, up to a sign, a digit of a number apart', () => {
  expect(wordBefore('0.7 * gapM', 10)).toEqual({ from: 6, word: 'gapM' });
  expect(wordBefore('0.7 * gapMm', 3)).toEqual({ from: 3, word: '' });
  expect(wordBefore('max(me, 2)', 6)).toEqual({ from: 4, word: 'me' });
});

test('names that begin so come first, then those that hold it; a function opens its bracket once', () => {
  expect(completions('me', 2).map(({ name }) => name).slice(0, 3)).toEqual(['meanL', 'meanC', 'meanGloss']);
  expect(completions('gloss', 5).map(({ name }) => name)).toEqual(['meanGloss']);
  expect(completions('', 0).length).toBeGreaterThan(20);
  expect(completions('zz', 2)).toEqual([]);
  const min = completions('mi', 2).find(({ name }) => name === 'min')!;
  expect(completed('1 + mi', 6, min)).toEqual({ text: '1 + min(', caret: 8 });
  expect(completed('1 + mi(2, 3)', 6, min)).toEqual({ text: '1 + min(2, 3)', caret: 7 });
  const gap = completions('gapM', 4)[0]!;
  expect(completed('0.5 + 0.1 * gapXy', 15, gap)).toEqual({ text: '0.5 + 0.1 * gapMm', caret: 17 });
});

test('every variable and constant that is offered is one that a formula may use', () => {
  for (const { written, kind } of completions('', 0)) if (kind !== 'function') expect(checkExpression(written).issues.filter(({ code }) => code === 'unknown-name'), written).toEqual([]);
});
