import { afterEach, expect, test, vi } from 'vitest';
import { cabinPatch } from '../../../src/actions/cabin-patch.ts';
import { answered, committed, openDatabase } from '../../../components/platform/database.ts';
import { askKeeping } from '../../../components/platform/keeping-protocol.ts';
import { openStore } from '../../../components/platform/store-records.ts';
import { DocumentStore } from '../../../components/platform/document-store.ts';
import { renamePart, setPart } from '../../../src/actions/part-actions.ts';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { parseCabin } from '../../../src/cabin/parse-cabin.ts';
import { serialiseCabin } from '../../../src/cabin/serialise-cabin.ts';
import type { Issue } from '../../../src/issue.ts';
import { bigCabin } from '../../bench/big-cabin.ts';
import { smallCabin } from '../../support/small-cabin.ts';

let made = 0;
const opened: DocumentStore[] = [];

/** A store of its own for every test, and the same one again for a name that is given. */
async function store(name = `test-${made += 1}-${performance.now()}`): Promise<DocumentStore> {
  const { value } = await DocumentStore.open(name);
  if (value === undefined) throw new Error('no store');
  opened.push(value);
  return value;
}

afterEach(async () => {
  vi.restoreAllMocks();
  await Promise.all(opened.splice(0).map((one) => one.close()));
});

const card = { key: 'doc', name: 'Small cabin', fileName: 'small.cabin.json' };
const renamed = (cabin: Cabin, name: string): Cabin => renamePart.run(cabin, { part: 'console', name }).value as Cabin;
const nameIn = (cabin: Cabin | undefined): string | undefined => cabin?.parts.find(({ id }) => id === 'console')?.name;
/** The document as it is kept. */
async function keptIn(one: DocumentStore, key = 'doc'): Promise<Cabin | undefined> {
  const { value } = await one.recover(key);
  return value === undefined ? undefined : parseCabin(await value.text()).value;
}
const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

test('what is edited is in the store within a second, and another page finds it', async () => {
  const name = 'within-a-second';
  const first = await store(name);
  const cabin = smallCabin();
  await first.begin(card, cabin);
  const after = renamed(cabin, 'Lid');
  const kept = new Promise((resolve) => first.addEventListener('kept', resolve, { once: true }));
  const start = performance.now();
  first.keep(after, true);
  await kept;
  expect(performance.now() - start).toBeLessThan(1000);
  const other = await store(name);
  expect(await other.recoverable()).toMatchObject([{ ...card, changes: 1, hasOriginal: false }]);
  expect(await keptIn(other)).toEqual(after);
});

test('a change with very many readings is kept in pieces, which say nothing without the last of them', async () => {
  const name = 'many-readings';
  const one = await store(name);
  const cabin = smallCabin();
  await one.begin(card, cabin);
  const readings = Array.from({ length: 12_000 }, (_, at) => ({ quantity: 'gloss' as const, spot: { name: `n${at}` }, conditions: 'gloss-a', angle: 60 as const, gloss: 1 + (at % 100) / 100 }));
  const grown: Cabin = {
    ...cabin,
    parts: cabin.parts.map((part, at) => (at > 0 ? part : { ...part, sources: part.sources.map((source) => ({ ...source, specimens: [...source.specimens, { id: 'many-1', kind: 'plaque' as const, readings: readings.slice(0, 6000) }, { id: 'many-2', kind: 'plaque' as const, readings: readings.slice(6000) }] })) })),
  };
  const shares: number[] = [];
  one.addEventListener('keeping', (event) => shares.push((event as CustomEvent<number>).detail));
  one.keep(grown, true);
  expect(await one.flush()).toBe(true);
  expect(shares.length).toBeGreaterThan(3);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  const after = renamed(grown, 'Lid');
  one.keep(after, true);
  expect(await one.flush()).toBe(true);
  const other = await store(name);
  expect(await other.recoverable()).toMatchObject([{ ...card, changes: 2 }]);
  expect(await keptIn(other)).toEqual(after);
  // As if the page had been killed before the last record of a change came: all before it stands.
  const database = await openStore(name);
  const journal = database.transaction('journal', 'readwrite').objectStore('journal');
  const places = await answered(journal.getAllKeys()) as [string, number][];
  places.slice(-2).forEach((place) => journal.delete(place));
  await committed(journal.transaction);
  database.close();
  expect(await keptIn(await store(name))).toEqual(cabin);
});

test('a kept document goes on from what is kept of it, and counts on', async () => {
  const name = 'goes-on';
  const one = await store(name);
  const cabin = smallCabin();
  await one.begin(card, cabin);
  one.keep(renamed(cabin, 'Lid'), true);
  await one.flush();
  const other = await store(name);
  const text = (await other.recover('doc')).value as Blob;
  const recovered = parseCabin(await text.text()).value as Cabin;
  await other.begin(card, recovered, { unsaved: true, continued: true, text });
  const after = setPart.run(recovered, { part: 'dash-lower', partNumber: 'N-1' }).value as Cabin;
  other.keep(after, true);
  await other.flush();
  const third = await store(name);
  expect(await keptIn(third)).toEqual(after);
  expect(await third.recoverable()).toMatchObject([{ changes: 2 }]);
});

test('what was kept before there was a journal is taken up, and goes on in one', async () => {
  const name = 'before-the-journal';
  const cabin = smallCabin();
  const [old, newer] = [renamed(cabin, 'Old'), setPart.run(renamed(cabin, 'Old'), { part: 'dash-lower', partNumber: 'N-2' }).value as Cabin];
  const database = await openDatabase(name, 1, (made) => ['bases', 'kept', 'originals'].forEach((each) => made.createObjectStore(each, { keyPath: 'key' })));
  const transaction = database.transaction(['bases', 'kept'], 'readwrite');
  transaction.objectStore('bases').put({ key: 'doc', cabin });
  transaction.objectStore('kept').put({ ...card, patch: cabinPatch(cabin, old), keptAt: 1, unsaved: true });
  await committed(transaction);
  database.close();
  const one = await store(name);
  expect(await one.recoverable()).toMatchObject([{ ...card, changes: 1 }]);
  const text = (await one.recover('doc')).value as Blob;
  const recovered = parseCabin(await text.text()).value as Cabin;
  expect(recovered).toEqual(old);
  await one.begin(card, recovered, { unsaved: true, continued: true, text });
  one.keep(newer, true);
  await one.flush();
  expect(await keptIn(await store(name))).toEqual(newer);
});

test('a folded journal gives the same document, and what is edited meanwhile is not lost', async () => {
  const name = 'folded';
  const one = await store(name);
  let present = smallCabin();
  await one.begin(card, present);
  for (let edit = 0; edit < 20; edit += 1) {
    present = renamed(present, `Lid ${edit}`);
    one.keep(present, true);
    await one.flush();
  }
  const folding = askKeeping({ kind: 'fold', database: name, key: 'doc' });
  present = renamed(present, 'Meanwhile');
  one.keep(present, true);
  await one.flush();
  await folding;
  const database = await openStore(name);
  const left = await answered(database.transaction('journal').objectStore('journal').count());
  database.close();
  expect(left).toBeLessThan(3);
  expect(await keptIn(await store(name))).toEqual(present);
});

test('a cabin that is large from the first is kept by its text, and an edit of it at once', async () => {
  const name = 'large';
  const one = await store(name);
  const cabin = bigCabin({ parts: 500, joints: 900, seed: 2 });
  const text = new Blob([serialiseCabin(cabin)]);
  expect(await one.begin(card, cabin, { text, original: { fileName: 'old.cabin.json', text: '{}' } })).toBe(true);
  const after = renamePart.run(cabin, { part: 'part-400', name: 'Lid' }).value as Cabin;
  one.keep(after, true);
  expect(await one.flush()).toBe(true);
  const other = await store(name);
  expect(await other.recoverable()).toMatchObject([{ ...card, changes: 1, hasOriginal: true }]);
  expect(await keptIn(other)).toEqual(after);
});

test('edits that never pause are kept all the same', async () => {
  const one = await store();
  let cabin = smallCabin();
  await one.begin(card, cabin);
  let kept = 0;
  one.addEventListener('kept', () => { kept += 1; });
  const end = performance.now() + 2500;
  for (let edit = 0; performance.now() < end; edit += 1) {
    cabin = renamed(cabin, `Lid ${edit}`);
    one.keep(cabin, true);
    await wait(40);
  }
  expect(kept).toBeGreaterThanOrEqual(2);
});

test('the last of many edits is what is recovered, also beyond the largest patch', async () => {
  const name = 'many-edits';
  const one = await store(name);
  const parts = Array.from({ length: 300 }, (_, index) => ({ ...smallCabin().parts[4]!, id: `p${index}`, name: `Part ${index}`, module: undefined, sources: [{ ...smallCabin().parts[4]!.sources[0]!, specimens: [] }] }));
  const cabin: Cabin = { ...smallCabin(), parts: [...smallCabin().parts, ...parts.map(({ module, ...part }) => part)] };
  await one.begin(card, cabin);
  let present = cabin;
  for (let index = 0; index < 300; index += 1) {
    present = setPart.run(present, { part: `p${index}`, partNumber: `N-${index}` }).value as Cabin;
    one.keep(present, true);
    if (index % 50 === 0) void one.flush();
  }
  one.keep(renamed(present, 'Last'), true);
  expect(await one.flush()).toBe(true);
  expect(await keptIn(await store(name))).toEqual(renamed(present, 'Last'));
});

test('a hidden page writes at once', async () => {
  const one = await store();
  await one.begin(card, smallCabin());
  one.keep(renamed(smallCabin(), 'Hidden'), true);
  vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
  const start = performance.now();
  const kept = new Promise((resolve) => one.addEventListener('kept', resolve, { once: true }));
  document.dispatchEvent(new Event('visibilitychange'));
  await kept;
  expect(performance.now() - start).toBeLessThan(240);
  expect(nameIn(await keptIn(one))).toBe('Hidden');
});

test('a full store is said aloud, and the next edit tries again', async () => {
  const one = await store();
  await one.begin(card, smallCabin());
  const faults: Issue[] = [];
  one.addEventListener('fault', (event) => faults.push((event as CustomEvent<Issue>).detail));
  const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => { throw new DOMException('The quota has been exceeded.', 'QuotaExceededError'); });
  one.keep(renamed(smallCabin(), 'Full'), true);
  expect(await one.flush()).toBe(false);
  expect(faults.map(({ code, severity }) => [code, severity])).toEqual([['storage-full', 'error']]);
  put.mockRestore();
  expect(await one.flush()).toBe(true);
  expect(nameIn(await keptIn(one))).toBe('Full');
});

test('the untouched original stays beside a document that was brought to a newer version', async () => {
  const name = 'original';
  const one = await store(name);
  const text = '{"format": "adjoin-cabin",  "version": 0}\r\n';
  await one.begin(card, smallCabin(), { original: { fileName: 'old.json', text } });
  one.keep(renamed(smallCabin(), 'New'), true);
  await one.flush();
  const other = await store(name);
  expect(await other.recoverable()).toMatchObject([{ hasOriginal: true }]);
  expect(await other.original('doc')).toMatchObject({ fileName: 'old.json', text });
});

test('a saved document is not offered, a forgotten one is gone', async () => {
  const name = 'forget';
  const one = await store(name);
  await one.begin(card, smallCabin());
  one.keep(renamed(smallCabin(), 'Saved'), false);
  await one.flush();
  const other = await store(name);
  expect(await other.recoverable()).toEqual([]);
  one.keep(renamed(smallCabin(), 'Again'), true);
  await one.flush();
  expect((await other.recoverable()).length).toBe(1);
  expect(await other.forget('doc')).toBe(true);
  expect([await other.recoverable(), (await other.recover('doc')).issues.map(({ code }) => code)]).toEqual([[], ['not-kept']]);
});
