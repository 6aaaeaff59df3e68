import fc from 'fast-check';
import { expect, test } from 'vitest';
import { importedAgain } from '../../src/workers/imported-again.ts';
import { replayed, journalOf } from '../../src/workers/journal.ts';
import type { JournalEntry } from '../../src/workers/journal.ts';
import { patchCabin } from '../../src/actions/cabin-patch.ts';
import { digestOf } from '../../src/workers/digest-of.ts';
import { ImportSession } from '../../src/workers/import-session.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { parseCabin } from '../../src/cabin/parse-cabin.ts';
import { serialiseCabin } from '../../src/cabin/serialise-cabin.ts';
import { drawFrom, editsOf } from '../actions/random-edits.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** As the store gives it back: the text of the first document, and entries that are nobody else's. */
const stored = (cabin: Cabin): Cabin => parseCabin(serialiseCabin(cabin)).value as Cabin;
const noImport = (): Promise<Cabin> => Promise.reject(new Error('there was no import'));
const plain = (cabin: Cabin): unknown => JSON.parse(JSON.stringify(cabin));

test('the journal of any edits, broken off anywhere, leads to the document as it was after the last whole change', async () => {
  await fc.assert(fc.asyncProperty(fc.array(fc.nat(997), { minLength: 6, maxLength: 60 }), fc.nat(), async (choices, cut) => {
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
    const again = await replayed(stored(states[0] as Cabin), structuredClone(entries.slice(0, kept)), noImport);
    expect(plain(again)).toEqual(plain(states[whole] as Cabin));
  }), { numRuns: 60 });
});

test('a change with thousands of readings goes in pieces, which say nothing without the change', async () => {
  const cabin = smallCabin();
  const readings = Array.from({ length: 4500 }, (_, at) => ({ quantity: 'gloss' as const, spot: { name: `n${at}` }, conditions: 'gloss-a', angle: 60 as const, gloss: 1 + (at % 100) / 100 }));
  const [first, ...others] = cabin.parts;
  const [source, ...more] = first?.sources ?? [];
  if (first === undefined || source === undefined) throw new Error('the small cabin has sources');
  const grown: Cabin = { ...cabin, parts: [{ ...first, sources: [{ ...source, specimens: [...source.specimens, { id: 'many', kind: 'plaque', readings }] }, ...more] }, ...others] };
  const entries = journalOf(cabin, grown, 1);
  expect(entries.map(({ kind }) => kind)).toEqual(['readings', 'readings', 'readings', 'readings', 'readings', 'change']);
  expect(plain(await replayed(stored(cabin), structuredClone(entries), noImport))).toEqual(plain(grown));
  expect(plain(await replayed(stored(cabin), structuredClone(entries.slice(0, -1)), noImport))).toEqual(plain(cabin));
  // A change that was begun, failed and was begun again, with an edit after it.
  const named: Cabin = { ...grown, name: 'After' };
  const again = [...entries.slice(0, 3), ...journalOf(cabin, grown, 4), ...journalOf(grown, named, 5)];
  expect(plain(await replayed(stored(cabin), structuredClone(again), noImport))).toEqual(plain(named));
});

test('an import of which only the files were kept is taken over again from them, after the edits before it and under those after it', async () => {
  const cabin = smallCabin();
  const named: Cabin = { ...cabin, name: 'Before' };
  const session = new ImportSession();
  const files = [
    { name: 'one.csv', blob: new Blob(['# instrument: Gloss one (invented)\npart,specimen,kind,spot,gloss 60\ndoor-left,B1,plaque,s1,2.1\nconsole,B2,plaque,s1,1.9\n']), choices: {} },
    { name: 'two.csv', blob: new Blob(['# instrument: Gloss one (invented)\npart,specimen,kind,spot,gloss 60\nSitz,S,plaque,s1,2.5\n']), choices: { newParts: { Sitz: { name: 'Seat', zone: 'console', supplier: 'Weft (invented)', material: 'textile' } } } },
  ];
  const answered = (request: Parameters<ImportSession['answer']>[0]): ReturnType<ImportSession['answer']> => session.answer(request, () => undefined, digestOf);
  await answered({ kind: 'cabin', cabin: named });
  for (const { name, blob } of files) await answered({ kind: 'read', file: { key: name, name, blob } });
  const taken = await answered({ kind: 'take', files: files.map(({ name, choices }) => ({ key: name, choices })), sheets: [] });
  if (taken.kind !== 'taken') throw new Error(taken.kind);
  const grown = patchCabin(named, taken.patch);
  expect(grown.parts.length).toBe(cabin.parts.length + 1);
  const last: Cabin = { ...grown, parts: grown.parts.with(-1, { ...grown.parts.at(-1), name: 'Renamed' } as Cabin['parts'][number]) };
  const unfinished = journalOf(named, grown, 3).slice(0, -1);
  const entries: JournalEntry[] = [...journalOf(cabin, named, 1), { kind: 'import', source: { files, sheets: [] } }, ...unfinished];
  expect(plain(await replayed(stored(cabin), structuredClone(entries), importedAgain))).toEqual(plain(grown));
  expect(plain(await replayed(stored(cabin), structuredClone([...entries, ...journalOf(grown, last, 9)]), importedAgain))).toEqual(plain(last));
});

test('where its files cannot be read any more, what was there before the import stays', async () => {
  const cabin = smallCabin();
  const source = { files: [{ name: 'gone.csv', blob: new Blob(['specimen,gloss 60\nA,two\n']), choices: {} }], sheets: [] };
  expect(plain(await replayed(stored(cabin), [{ kind: 'import', source }], importedAgain))).toEqual(plain(cabin));
});
