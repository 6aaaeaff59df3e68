import { expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { actionById, bookOfCabin, openEditor, perform, undoEdit } from '../../src/actions/index.ts';
import type { Action } from '../../src/actions/index.ts';
import type { RuleBook } from '../../src/rules/rule-book.ts';
import { compileRuleBook, typicalVariables } from '../../src/rules/index.ts';
import type { RuleSide } from '../../src/rules/index.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** Edits of the rule book. Limits expected of a pair follow from the combination of classes: the larger of both, 0.2 more where the families differ. */

const basis = 'agreed between the parties';
const run = (cabin: Cabin, id: string, values: Record<string, unknown>): Cabin => {
  const { value, issues } = (actionById(id) as Action).run(cabin, values);
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  return value!;
};
const faults = (cabin: Cabin, id: string, values: Record<string, unknown>): readonly (readonly [string, string | undefined])[] =>
  (actionById(id) as Action).run(cabin, values).issues.map(({ code, path }) => [code, path]);
const bookOf = (cabin: Cabin): RuleBook => bookOfCabin(cabin)!;
const side = (material: string): RuleSide => ({ material, surface: 'solid', zone: 'dash' });
const limitOf = (cabin: Cabin, one: string, other: string): number =>
  compileRuleBook(bookOf(cabin)).value!.resolve([side(one), side(other)], { kind: 'edge' }, typicalVariables).colour.limit;

test('the first edit of a built-in book makes the cabin carry its own copy, the next ones change that; the built-in book stays', () => {
  const cabin = smallCabin();
  const edited = run(cabin, 'material.set', { material: 'moulded', colourLimit: 0.9 });
  expect(edited.ruleBook).toMatchObject({ id: 'ciede2000-own', name: 'CIEDE2000 limits for interior trim, own limits' });
  expect(bookOf(run(edited, 'rule-book.set', { confidence: 0.9 }))).toMatchObject({ id: 'ciede2000-own', decision: { rule: 'guarded', confidence: 0.9 } });
  expect(bookOf(cabin).id).toBe('ciede2000');
  expect(run(cabin, 'rule-book.set', { confidence: 0.95 })).toBe(cabin);
});

test('readings wanted are written in words and may be left out altogether', () => {
  const row = { occasion: 'tool approval', wanted: '3 parts a cavity x 5 spots', basis };
  const edited = run(smallCabin(), 'rule-book.set-readings-wanted', { readingsWanted: [row] });
  expect(bookOf(edited).readingsWanted).toEqual([row]);
  expect(Object.hasOwn(bookOf(run(edited, 'rule-book.set-readings-wanted', { readingsWanted: [] })), 'readingsWanted')).toBe(false);
  expect(faults(edited, 'rule-book.set-readings-wanted', { readingsWanted: [{ ...row, basis: '' }] })).not.toEqual([]);
});

test('a class value reaches every pair that it is combined in', () => {
  const edited = run(smallCabin(), 'material.set', { material: 'moulded', colourLimit: 1.1 });
  // moulded 1.1 and painted 0.7 are both hard; soft-skin 0.8 is skin; carpet has 1.5 and is pile.
  expect([limitOf(edited, 'moulded', 'moulded'), limitOf(edited, 'moulded', 'painted'), limitOf(edited, 'moulded', 'soft-skin'), limitOf(edited, 'moulded', 'carpet')]).toEqual([1.1, 1.1, 1.3, 1.7]);
  expect(limitOf(run(edited, 'material.set', { material: 'moulded', family: 'skin' }), 'moulded', 'soft-skin')).toBe(1.1);
  expect(limitOf(run(edited, 'rule-book.set', { unlikeFamilyAllowance: 0 }), 'moulded', 'soft-skin')).toBe(1.1);
});

test('rules are added, changed, duplicated, moved, renamed and removed; among equals the later one wins', () => {
  const pair = { one: 'moulded', other: 'soft-skin' };
  let cabin = run(smallCabin(), 'rule.add', { ...pair, limit: 0.6, basis });
  cabin = run(cabin, 'rule.add', { ...pair, kind: 'gap', limit: '0.6 + 0.1 * gapMm', basis });
  expect(bookOf(cabin).rules.map(({ id }) => id)).toEqual(['metallised-pair', 'moulded-soft-skin', 'moulded-soft-skin-gap']);
  expect(limitOf(cabin, 'soft-skin', 'moulded')).toBe(0.6);
  cabin = run(cabin, 'rule.duplicate', { rule: 'moulded-soft-skin' });
  cabin = run(cabin, 'rule.set', { rule: 'moulded-soft-skin-2', limit: 0.5, kL: 2, glossStanding: 'advisory', colourIntent: 'tone-step' });
  expect(bookOf(cabin).rules[2]).toEqual({
    id: 'moulded-soft-skin-2', pair: ['moulded', 'soft-skin'], colour: { limit: 0.5, kL: 2 }, standing: { gloss: 'advisory' }, defaultIntent: { colour: 'tone-step' }, basis,
  });
  expect(limitOf(cabin, 'moulded', 'soft-skin')).toBe(0.5);
  expect(limitOf(run(cabin, 'rule.move', { rule: 'moulded-soft-skin-2', place: 0 }), 'moulded', 'soft-skin')).toBe(0.6);
  cabin = run(cabin, 'rule.set', { rule: 'moulded-soft-skin-2', limit: null, kL: null, glossStanding: null, colourIntent: null });
  expect(bookOf(cabin).rules[2]).toEqual({ id: 'moulded-soft-skin-2', pair: ['moulded', 'soft-skin'], basis });
  cabin = run(run(cabin, 'rule.set-id', { rule: 'moulded-soft-skin-2', id: 'dash' }), 'rule.remove', { rule: 'moulded-soft-skin' });
  expect(bookOf(cabin).rules.map(({ id }) => id)).toEqual(['metallised-pair', 'dash', 'moulded-soft-skin-gap']);
});

test('lights, component limits and gloss of a rule, and back to what the classes give', () => {
  const rule = 'moulded-moulded';
  let cabin = run(smallCabin(), 'rule.add', { one: 'moulded', other: 'moulded', basis });
  const lights = [{ light: 'D65', factor: 1, standing: 'required', basis }, { light: 'A', factor: 2, standing: 'shown', basis }];
  cabin = run(cabin, 'rule.set-lights', { rule, lights });
  cabin = run(cabin, 'rule.set-components', { rule, components: [{ component: 'db', max: 0.3, basis }] });
  cabin = run(cabin, 'rule.set-gloss', { rule, kind: 'limit', limit: '0.1 * meanGloss + 0.2', angle: 85, haze: null, basis });
  expect(bookOf(cabin).rules.at(-1)).toEqual({
    id: rule, pair: ['moulded', 'moulded'], colour: { lights, components: [{ component: 'db', max: 0.3, basis }] }, gloss: { kind: 'limit', limit: '0.1 * meanGloss + 0.2', angle: 85, basis }, basis,
  });
  expect(bookOf(run(cabin, 'rule.set-gloss', { rule, kind: 'not applicable', reason: 'hidden' })).rules.at(-1)?.gloss).toEqual({ kind: 'not applicable', reason: 'hidden', basis });
  cabin = run(run(run(cabin, 'rule.set-lights', { rule, lights: null }), 'rule.set-components', { rule, components: null }), 'rule.set-gloss', { rule, kind: null });
  expect(bookOf(cabin).rules.at(-1)).toEqual({ id: rule, pair: ['moulded', 'moulded'], basis });
});

test('what the book cannot hold is refused with its path and changes nothing', () => {
  const cabin = smallCabin();
  expect(faults(cabin, 'rule.add', { one: 'moulded', other: 'mouldet', basis })).toEqual([['unknown-paired-material', 'other']]);
  expect(faults(cabin, 'rule.add', { one: 'moulded', other: '*', limit: '0.7 * gapMn', basis })).toEqual([['unknown-name', 'limit']]);
  expect(faults(cabin, 'rule.set', { rule: 'metallised-pair', basis: ' ' })).toEqual([['empty-text', 'ruleBook.rules[0].basis']]);
  expect(faults(cabin, 'rule.set-lights', { rule: 'metallised-pair', lights: [{ light: 'D65', factor: 1, standing: 'shown', basis }] })).toEqual([['no-required-light', 'lights']]);
  expect(faults(cabin, 'material.set', { material: 'moulded', colourLimit: 0 })).toHaveLength(1);
  expect(faults(cabin, 'material.remove', { material: 'metallised' })).toEqual([['still-used', undefined]]);
  expect(faults(cabin, 'rule-book.set', { stepMinDL: 20 })).toEqual([['out-of-order', 'ruleBook.toneStep']]);
  expect(faults(cabin, 'rule.set-id', { rule: 'metallised-pair', id: '-x' })).toEqual([['bad-id', undefined]]);
});

test('materials are added like another and removed again; a book is begun from a built-in one', () => {
  const cabin = run(smallCabin(), 'material.add', { name: 'cork', like: 'leather' });
  expect(limitOf(cabin, 'cork', 'leather')).toBe(1);
  expect(bookOf(run(cabin, 'material.remove', { material: 'cork' })).materials).toHaveLength(11);
  expect(faults(cabin, 'material.add', { name: 'cork', like: 'leather' })).toEqual([['duplicate-material', 'ruleBook.materials[5].material']]);
  expect(bookOf(run(cabin, 'rule-book.begin', { from: 'cmc', name: 'Plant two' }))).toMatchObject({ id: 'plant-two', name: 'Plant two', formula: 'cmc' });
  expect(bookOf(run(cabin, 'rule-book.begin', { from: 'cmc', name: 'CMC' })).id).toBe('cmc-2');
});

test('every edit is one step with a name, and a new rule is selected', () => {
  const editor = openEditor(smallCabin());
  const { editor: after, label } = perform(editor, actionById('rule.add') as Action, { one: 'moulded', other: '*', basis });
  expect([label, after.selection]).toEqual(['Add a rule for moulded and any material', { rule: 'any-moulded' }]);
  expect(undoEdit(after).history.present).toBe(editor.history.present);
  expect(undoEdit(after).selection).toEqual({});
  expect(perform(after, actionById('rule.set') as Action, { rule: 'any-moulded', limit: 1.2 }).label).toBe('Change colour limit to 1.2 of the rule any-moulded');
});
