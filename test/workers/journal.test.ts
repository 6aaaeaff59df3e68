import fc from 'fast-check';
import { expect, test } from 'vitest';
import { replayed, journalOf } from '../../src/workers/journal.ts';
import type { JournalEntry } from '../../src/workers/journal.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { parseCabin } from '../../src/cabin/parse-cabin.ts';
import { serialiseCabin } from '../../src/cabin/serialise-cabin.ts';
import { drawFrom, editsOf } from '../actions/random-edits.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** As the store gives it back: the text of the first document, and entries that are nobody else's. */
const stored = (cabin: Cabin): Cabin => parseCabin(serialiseCabin(cabin)).value as Cabin;
const plain = (cabin: Cabin): unknown => JSON.parse(JSON.stringify(cabin));

test('the journal of any edits, broken off anywhere, leads to the document as it was after the last whole change', () => {
  fc.assert(fc.property(fc.array(fc.nat(997), { minLength: 6, maxLength: 60 }), fc.nat(), (choices, cut) => {
    const draw = drawFrom(choices);
    // Now and then steps are taken back and done again, as by undo.
    const first = smallCabin();
    const states = [first, ...editsOf(first, choices)].flatMap((state, at, all) => (draw(4) === 0 ? [state, all[draw(at + 1)] as Cabin, state] : [state]));
    const entries: JournalEntry[] = [];
    const after: number[] = [];
    states.slice(1).forEach((state, at) => {
      entries.push(...journalOf(states[at] as Cabin, state, at));
      after.push(entries.length);
    });
    const kept = entries.length === 0 ? 0 : cut % (entries.length + 1);
    const whole = after.filter((count) => count <= kept).length;
    const again = replayed(stored(states[0] as Cabin), structuredClone(entries.slice(0, kept)));
    expect(plain(again)).toEqual(plain(states[whole] as Cabin));
  }), { numRuns: 60 });
});

test('a change with thousands of readings goes in pieces, which say nothing without the change', () => {
  const cabin = smallCabin();
  const readings = Array.from({ length: 4500 }, (_, at) => ({ quantity: 'gloss' as const, spot: { name: `n${at}` }, conditions: 'gloss-a', angle: 60 as const, gloss: 1 + (at % 100) / 100 }));
  const [first, ...others] = cabin.parts;
  const [source, ...more] = first?.sources ?? [];
  if (first === undefined || source === undefined) throw new Error('the small cabin has sources');
  const grown: Cabin = { ...cabin, parts: [{ ...first, sources: [{ ...source, specimens: [...source.specimens, { id: 'many', kind: 'plaque', readings }] }, ...more] }, ...others] };
  const entries = journalOf(cabin, grown, 1);
  expect(entries.map(({ kind }) => kind)).toEqual(['readings', 'readings', 'readings', 'readings', 'readings', 'change']);
  expect(plain(replayed(stored(cabin), structuredClone(entries)))).toEqual(plain(grown));
  expect(plain(replayed(stored(cabin), structuredClone(entries.slice(0, -1))))).toEqual(plain(cabin));
  // A change that was begun, failed and was begun again, with an edit after it.
  const named: Cabin = { ...grown, name: 'After' };
  const again = [...entries.slice(0, 3), ...journalOf(cabin, grown, 4), ...journalOf(grown, named, 5)];
  expect(plain(replayed(stored(cabin), structuredClone(again)))).toEqual(plain(named));
});
