import { expect, test } from 'vitest';
import { materialsInUse, ruleCells, ruleFilter } from '../../components/model/rule-cells.ts';
import { judge } from '../../src/harmony/judge.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import type { RuleBook } from '../../src/rules/rule-book.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { twoPartCabin } from '../support/two-part-cabin.ts';

/** Limits are those of the table of classes, common practice, no source: the larger of both, 0.2 more for unlike families. */
const rules: RuleBook['rules'] = [
  { id: 'skins', pair: ['moulded', 'soft-skin'], colour: { limit: 0.9 }, basis: 'x' },
  { id: 'skins-gap', pair: ['moulded', 'soft-skin'], kind: 'gap', colour: { limit: '0.5 + 0.1 * gapMm' }, basis: 'x' },
];
const book: RuleBook = { ...defaultBook, rules };

test('every pair stands once, with the rule that wins, its limit, and each joint in one cell', () => {
  const cabin = smallCabin();
  const { joints } = judge(cabin, defaultBook);
  const materials = materialsInUse(cabin, defaultBook);
  const cells = ruleCells(cabin, defaultBook, joints, {}, materials);
  expect(cells.map((row) => row.length)).toEqual(materials.map((_, index) => index + 1));
  expect(cells.flat().reduce((sum, cell) => sum + cell.joints.length, 0)).toBe(joints.length);
  for (const { joints: own, holds, open, clashes, accepted } of cells.flat()) expect(holds + open + clashes + accepted).toBe(own.length);
  const limit = (a: string, b: string): string | undefined => ruleCells(cabin, defaultBook, joints, {}, [a, b])[1]?.[0]?.limit;
  expect([limit('moulded', 'painted'), limit('moulded', 'soft-skin'), limit('leather', 'carpet')]).toEqual(['0.7', '1.0', '1.7']);
});

test('a more specific rule wins only where the filter lets its joints through', () => {
  const cabin = twoPartCabin({ material: 'moulded' }, { material: 'soft-skin' });
  const { joints } = judge(cabin, book);
  const cell = (options: Readonly<Record<string, string>>) => ruleCells(cabin, book, joints, ruleFilter(options), ['moulded', 'soft-skin'])[1]![0]!;
  const told = (options: Readonly<Record<string, string>>) => { const { winners, limit, joints: own } = cell(options); return [winners.map((winner) => winner?.id), limit, own.length]; };
  expect(told({})).toEqual([['skins-gap'], '0.5 + 0.1 * gapMm', 1]);
  expect(told({ kind: 'gap', 'in-zone': 'door' })).toEqual([['skins-gap'], '0.5 + 0.1 * gapMm', 1]);
  expect(told({ kind: 'edge' })).toEqual([['skins'], '0.9', 0]);
  expect(told({ intent: 'contrast' })).toEqual([['skins'], '0.9', 0]);
  expect(told({ kind: 'nonsense' })).toEqual([['skins-gap'], '0.5 + 0.1 * gapMm', 1]);
});
