import fc from 'fast-check';
import { expect, test } from 'vitest';
import { patchSequence, sequencePatch } from '../../src/workers/sequence-patch.ts';

const pool = Array.from({ length: 400 }, (_, id) => ({ id }));
const listOf = fc.uniqueArray(fc.nat(399), { maxLength: 300 }).map((places) => places.map((place) => pool[place]!));

test('any list is made from any other, and what both have is the same object, also when the patch was sent', () => {
  fc.assert(fc.property(listOf, listOf, (before, after) => {
    const made = patchSequence(before, sequencePatch(before, after));
    expect(made).toEqual(after);
    expect(made.every((item, place) => item === after[place])).toBe(true);
    const sent = patchSequence(before, structuredClone(sequencePatch(before, after)));
    expect(sent).toEqual(after);
    const shared = new Set(after);
    for (const item of before) if (shared.has(item) && before.length !== after.length) expect(sent).toContain(item);
  }), { numRuns: 300, seed: 11 });
});

test('one item replaced, taken out or put in is told by one item and the places beside it', () => {
  const before = pool.slice(0, 300);
  const fresh = { id: 999 };
  expect(sequencePatch(before, before.with(7, fresh))).toEqual([[0, 7], { fresh: [fresh] }, [8, 300]]);
  expect(sequencePatch(before, before.toSpliced(7, 1))).toEqual([[0, 7], [8, 300]]);
  expect(sequencePatch(before, before.toSpliced(7, 0, fresh))).toEqual([[0, 7], { fresh: [fresh] }, [7, 300]]);
  // Moved to the end: more places differ than are looked at one by one, and nothing is sent.
  expect(sequencePatch(before, [...before.slice(1), before[0]!])).toEqual([[1, 300], [0, 1]]);
  expect(patchSequence(before, sequencePatch(before, [...before]))).toBe(before);
});
