import { expect, test } from 'vitest';
import { filterChoices, filterProperty, filterText, partsById, passes } from '../../components/model/joint-filter.ts';
import type { JointFilter } from '../../components/controllers/route.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { madeUpCabin, madeUpJudgement } from '../support/hand-made-judgement.ts';

const parts = partsById(madeUpCabin);
const ids = (filter: JointFilter): string[] => madeUpJudgement.joints.filter((joint) => passes(joint, filter, parts)).map((joint) => joint.id);

test('no filter lets every joint through', () => {
  expect(ids({})).toHaveLength(madeUpJudgement.joints.length);
});

test('a filter that is read anew from an address is another one only where it lets something else through', () => {
  const { hasChanged } = filterProperty;
  expect(hasChanged({}, undefined)).toBe(true);
  expect(hasChanged({}, {})).toBe(false);
  expect(hasChanged({ zone: 'console', search: 'lid' }, { search: 'lid', zone: 'console' })).toBe(false);
  for (const field of ['search', 'zone', 'verdict', 'check', 'supplier'] as const) {
    expect(hasChanged({ [field]: 'a' }, {})).toBe(true);
    expect(hasChanged({}, { [field]: 'a' })).toBe(true);
    expect(hasChanged({ [field]: 'a' }, { [field]: 'b' })).toBe(true);
  }
});

test('an accepted clash is not among the clashes', () => {
  expect(ids({ verdict: 'clashes' })).toEqual(['j4']);
  expect(ids({ verdict: 'accepted' })).toEqual(['j2']);
});

test('a zone holds every joint that touches it', () => {
  expect(ids({ zone: 'console' })).toEqual(['j4', 'j6']);
});

test('a check holds the joints that it troubles, not those it merely judged', () => {
  expect(ids({ check: 'colour' })).toEqual(['j2', 'j3', 'j4']);
  expect(ids({ check: 'gloss' })).toEqual([]);
});

test('the words of a search may stand anywhere and in any order and case', () => {
  expect(ids({ search: 'LEFT dash' })).toEqual(['j2']);
  expect(ids({ search: 'gloss-black quill' })).toEqual(['j4', 'j6']);
});

test('a choice counts what the other fields leave, not itself', () => {
  const choices = filterChoices(madeUpJudgement.joints, madeUpCabin, { zone: 'console', verdict: 'open' });
  expect(choices.verdict.map(({ value, count }) => [value, count])).toEqual([['clashes', 1], ['accepted', 0], ['open', 1], ['holds', 0]]);
  expect(choices.zone.find(({ value }) => value === 'dash')?.count).toBe(1);
});

test('a filter is told in words, with the names of the cabin', () => {
  const cabin = { zones: [{ id: 'z1', name: 'Doors' }], suppliers: [{ id: 's1', name: 'Mouldings Ltd' }] } as unknown as Cabin;
  expect(filterText({}, cabin)).toBe('joints');
  expect(filterText({ verdict: 'clashes', zone: 'z1', check: 'gloss' }, cabin)).toBe('clashes, in the zone Doors, with gloss in trouble');
  expect(filterText({ supplier: 's1', search: 'sill' }, cabin)).toBe('joints, with parts of Mouldings Ltd, found by “sill”');
  expect(filterText({ zone: 'gone' }, cabin)).toBe('joints, in the zone gone');
});
