import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import type { Action } from '../../src/actions/action.ts';
import { actions, actionById } from '../../src/actions/registry.ts';
import { cabinPatch, patchCabin } from '../../src/actions/cabin-patch.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { drawFrom, randomValues } from './random-edits.ts';

/** `restoreCabin()` reads a document from nothing and is tested by itself; it is the judge of what actions make. */

describe('the registry', () => {
  test('has one action for each id and says what each does in menus', () => {
    expect(new Set(actions.map(({ id }) => id)).size).toBe(actions.length);
    expect(new Set(actions.map(({ title }) => title)).size).toBe(actions.length);
    for (const action of actions) {
      expect(action.id).toMatch(/^[a-z-]+\.[a-z-]+$/);
      expect(actionById(action.id)).toBe(action);
    }
  });

  test('gives no two actions of one context the same key', () => {
    const keys = actions.flatMap((action) => (action.keys ?? []).map((key) => `${action.context} ${key}`));
    expect(new Set(keys).size).toBe(keys.length);
  });
});

const listsOf = (cabin: Cabin): readonly (readonly { readonly id: string }[])[] =>
  [cabin.parts, cabin.joints, cabin.zones, cabin.suppliers, cabin.instruments, cabin.conditions, cabin.lights ?? [], cabin.masters ?? [], cabin.runs ?? []];

const frozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
};

/** A book of the cabin's own with rules enough to move and remove; it comes with a zone that nothing lies in. */
const ownBook = { ...builtInRuleBooks[0]!, id: 'own', name: 'Own', rules: ['one', 'two', 'three'].map((id) => ({ id, pair: ['moulded', 'soft-skin'], colour: { limit: 0.9 }, basis: 'x' })) };

/** Too much must fit for chance to meet it; `families.test.ts` does these. */
const doneElsewhere: readonly string[] = ['cabin.embed-rule-book', 'master.remove', 'visual-record.remove', 'light.add', 'instrument.remove', 'supplier.remove', 'conditions.remove', 'source.set-stands-by'];

/** Counted, so that the property cannot pass by refusing everything. */
const done = new Map<string, number>();

function checkOne(before: Cabin, action: Action, values: Record<string, unknown>): Cabin {
  const { value: after, issues } = action.run(before, values);
  if (after === undefined) {
    expect(issues.some(({ severity }) => severity === 'error'), `${action.id} refuses without a reason`).toBe(true);
    return before;
  }
  expect(action.label(values, before).length).toBeGreaterThan(5);
  expect(action.run(before, values).value).toEqual(after);
  if (after === before) return before;
  done.set(action.id, (done.get(action.id) ?? 0) + 1);
  const { value: restored, issues: faults } = restoreCabin(JSON.parse(JSON.stringify(after)));
  expect(faults.filter(({ severity }) => severity === 'error'), action.id).toEqual([]);
  expect(restored).toEqual(after);
  listsOf(after).forEach((list, kind) => {
    const old = new Map(listsOf(before)[kind]?.map((item) => [item.id, item]));
    for (const item of list) if (JSON.stringify(old.get(item.id)) === JSON.stringify(item)) expect(old.get(item.id) === item, `${action.id} copies ${item.id}`).toBe(true);
  });
  const patch = JSON.parse(JSON.stringify(cabinPatch(before, after))) as ReturnType<typeof cabinPatch>;
  const patched = patchCabin(before, patch);
  expect(patched).toEqual(after);
  expect(patched.parts.filter((part) => !before.parts.includes(part)).length).toBe(after.parts.filter((part) => !before.parts.includes(part)).length);
  return frozen(after);
}

test('every action leaves a document that a file could hold, changes nothing it was given, and copies nothing that it does not change', () => {
  fc.assert(fc.property(fc.array(fc.nat(), { minLength: 20, maxLength: 60 }), fc.nat(), (choices, first) => {
    const draw = drawFrom(choices);
    let cabin = frozen(smallCabin(first % 2 === 0 ? {} : { ruleBook: ownBook, zones: [...smallCabin().zones, { id: 'empty', name: 'Empty' }] }));
    for (let step = 0; step < 30; step += 1) {
      // A prime beyond their number, so that every start goes through all of them.
      const action = actions[(first + step * 127) % actions.length] as Action;
      cabin = checkOne(cabin, action, randomValues(cabin, action, draw));
    }
  }), { numRuns: 220, seed: 20261125 });
  const never = actions.map(({ id }) => id).filter((id) => (done.get(id) ?? 0) === 0);
  expect(never.filter((id) => !doneElsewhere.includes(id))).toEqual([]);
}, 300_000);

test('values of any kind whatever are refused or make a document that a file could hold', () => {
  fc.assert(fc.property(fc.constantFrom(...actions), fc.array(fc.anything(), { minLength: 12, maxLength: 12 }), (action, anything) => {
    const keys = Object.keys(action.arguments);
    const values = Object.fromEntries(keys.map((key, index) => [key, anything[index]]));
    const { value } = action.run(smallCabin(), values);
    if (value !== undefined) expect(restoreCabin(JSON.parse(JSON.stringify(value))).value).toEqual(value);
  }), { numRuns: 1000, seed: 20261125 });
}, 120_000);

test('an argument that is not asked for, is missing or names what is not there is an issue at its name', () => {
  const issues = (id: string, values: Record<string, unknown>): readonly (readonly [string, string | undefined])[] =>
    (actionById(id) as Action).run(smallCabin(), values).issues.map(({ code, path }) => [code, path]);
  expect(issues('part.rename', { part: 'dash-uper', name: 'Dash' })).toEqual([['unknown-part', 'part']]);
  expect(issues('part.rename', { part: 'dash-upper' })).toEqual([['missing-field', 'name']]);
  expect(issues('part.rename', { part: 'dash-upper', name: 'Dash', nam: 'x' })).toEqual([['unknown-field', 'nam']]);
  expect(issues('joint.set', { joint: 'j1', gapMm: -1, viewMm: Number.NaN })).toEqual([['negative', 'gapMm'], ['not-finite', 'viewMm']]);
  expect(issues('part.choose-source', { part: 'dash-lower', source: 'skin' })).toEqual([['unknown-source', 'source']]);
});
