import { patchCabin } from '../../src/actions/cabin-patch.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { parseCabin } from '../../src/cabin/parse-cabin.ts';
import { serialiseCabin } from '../../src/cabin/serialise-cabin.ts';
import type { Outcome } from '../../src/issue.ts';
import type { ImportSource } from '../../src/workers/imported-again.ts';
import { replayed } from '../../src/workers/journal.ts';
import { answered, committed } from './database.ts';
import type { KeepingReply, KeepingRequest } from './keeping-protocol.ts';
import { journalRange, openStore } from './store-records.ts';
import type { Base, JournalRecord, Kept, OldBase } from './store-records.ts';

// A fault of the store must reach the page as one, not as silence.
const thrown = (fault: unknown): unknown => setTimeout(() => { throw fault; });

addEventListener('message', ({ data }: MessageEvent<KeepingRequest>) => {
  answer(data).then((reply) => postMessage(reply), thrown);
});

async function answer({ kind, database: name, key }: KeepingRequest): Promise<KeepingReply> {
  const database = await openStore(name);
  try {
    const reading = database.transaction(['bases', 'kept', 'journal'], 'readonly');
    const [base, kept, records] = await Promise.all([
      answered(reading.objectStore('bases').get(key) as IDBRequest<Base | OldBase | undefined>),
      answered(reading.objectStore('kept').get(key) as IDBRequest<Kept | undefined>),
      answered(reading.objectStore('journal').getAll(journalRange(key)) as IDBRequest<JournalRecord[]>),
    ]);
    if (base === undefined || kept === undefined) {
      return { issues: [{ code: 'not-kept', severity: 'error', found: JSON.stringify(key), expected: 'a document that was kept' }] };
    }
    if (records.length === 0 && 'text' in base) return { text: base.text, issues: [] };
    const { value: whole, issues } = await wholeOf(base);
    if (whole === undefined) return { issues };
    const before = kept.patch === undefined ? whole : patchCabin(whole, kept.patch);
    const entries = records.flatMap((record) => record.entries);
    const text = new Blob([serialiseCabin(await replayed(before, entries, again))], { type: 'application/json' });
    // An import is taken over again once: a later version may read files otherwise.
    if (kind === 'fold' || entries.some((entry) => entry.kind === 'import')) await fold(database, base, { key, text, stamp: Date.now() }, records.at(-1)?.at);
    return { text, issues: [] };
  } finally {
    database.close();
  }
}

/** Readers of files are loaded only where a page was killed while an import was written. */
async function again(cabin: Cabin, source: ImportSource): Promise<Cabin> {
  const [{ provideMathjs }, { importedAgain }] = await Promise.all([import('../../src/rules/mathjs-parser.ts'), import('../../src/workers/imported-again.ts')]);
  provideMathjs();
  return importedAgain(cabin, source);
}

const wholeOf = async (base: Base | OldBase): Promise<Outcome<Cabin>> => ('cabin' in base ? { value: base.cabin, issues: [] } : parseCabin(await base.text.text()));

/** Both at once or neither: the new copy is there and the entries it holds are gone. Left off where another copy has come meanwhile. */
async function fold(database: IDBDatabase, before: Base | OldBase, after: Base, upTo: number | undefined): Promise<void> {
  const writing = database.transaction(['bases', 'journal'], 'readwrite', { durability: 'relaxed' });
  const done = committed(writing);
  const present = await answered(writing.objectStore('bases').get(after.key) as IDBRequest<Base | OldBase | undefined>);
  // What was kept before there was a journal has changes that lie elsewhere, and is not folded.
  if (present !== undefined && 'text' in before && 'text' in present && present.stamp === before.stamp) {
    writing.objectStore('bases').put(after);
    if (upTo !== undefined) writing.objectStore('journal').delete(journalRange(after.key, upTo));
  }
  await done;
}
