import type { CabinPatch } from '../../src/actions/cabin-patch.ts';
import { cabinPatch } from '../../src/actions/cabin-patch.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { serialiseCabin } from '../../src/cabin/serialise-cabin.ts';
import type { Issue, Outcome } from '../../src/issue.ts';
import { journalOf } from '../../src/workers/journal.ts';
import type { ImportSource } from '../../src/workers/imported-again.ts';
import type { JournalEntry } from '../../src/workers/journal.ts';
import { answered, committed } from './database.ts';
import { askKeeping } from './keeping-protocol.ts';
import { journalRange, openStore, storeNames } from './store-records.ts';
import type { Base, DocumentCard, JournalRecord, Kept } from './store-records.ts';

export type { DocumentCard } from './store-records.ts';

/** The file as it was, where it was written in an older version of the format or could not be taken as it is. */
export interface OriginalFile {
  readonly fileName: string;
  readonly text: string;
}

/** A document with changes that never reached its file. */
export interface Recoverable extends DocumentCard {
  /** When it was last kept, in milliseconds since 1970. */
  readonly keptAt: number;
  /** How many parts, joints and other items differ from the file. */
  readonly changes: number;
  readonly hasOriginal: boolean;
}

/** The open document, and what of it lies in the store. */
interface OpenDocument {
  card: DocumentCard;
  /** As it was opened. */
  readonly first: Cabin;
  /** As base and journal give it. */
  written: Cabin;
  /** Place of the last record of the journal, and how many there are. */
  at: number;
  records: number;
  /** Items that differed from the file when it was opened. */
  changed: number;
  /** Place of the record of an import that stands for what is still to be written. */
  imported?: number;
}

/** How a document begins to be kept. */
export interface Beginning {
  /** It is recovered, or new and in no file. */
  readonly unsaved?: boolean;
  readonly original?: OriginalFile;
  /** The text that it was read from; written anew where absent. */
  readonly text?: Blob;
  /** It was recovered and goes on from what is kept of it. */
  readonly continued?: boolean;
}

/** Changes are kept this long after the last edit, and never later than this after the first. Together under a second. */
const quietMs = 250;
const latestMs = 750;
/** Records of a journal beyond which it is folded into a new copy when nothing is edited for a while, ms. */
const mostRecords = 500;
const idleMs = 5000;
/** Readings in one record, or lists of them, where these are short. */
const [readingsInRecord, listsInRecord] = [2000, 250];

/**
 * Keeps the open document in IndexedDB so that a crash loses at most the last second: the text it was read from once, then in a journal
 * at every pause what changed since, however large the document. Written on a short delay, and at once when the page is hidden; a worker folds a
 * long journal into a new copy. Faults fire `fault` with an Issue as detail and end nothing: the next edit tries again.
 * Fires `keeping` with the share that is written of a change with so many readings that this takes longer and of which nothing else is kept, and `kept` when all is written.
 */
export class DocumentStore extends EventTarget {
  /** Opens the store, or says why there is none, as in a private window that keeps nothing. */
  static async open(name = 'adjoin'): Promise<Outcome<DocumentStore>> {
    try {
      return { value: new DocumentStore(await openStore(name)), issues: [] };
    } catch (reason) {
      return { value: undefined, issues: [storeFault(reason)] };
    }
  }

  private constructor(database: IDBDatabase) {
    super();
    this.database = database;
    document.addEventListener('visibilitychange', this.hidden);
    addEventListener('pagehide', this.leaving);
  }

  private readonly database: IDBDatabase;
  private open: OpenDocument | undefined;
  private waiting: { readonly cabin: Cabin; readonly unsaved: boolean } | undefined;
  private since = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private folding: ReturnType<typeof setTimeout> | undefined;
  private writing: Promise<void> = Promise.resolve();

  /**
   * Begins to keep a document. What was kept under the key before is replaced, unless the document is that one; an original file is kept
   * beside it, untouched, and stays until `forget()`.
   */
  begin(card: DocumentCard, cabin: Cabin, { unsaved = false, original, text, continued = false }: Beginning = {}): Promise<boolean> {
    this.drop();
    const open: OpenDocument = { card, first: cabin, written: cabin, at: 0, records: 0, changed: 0 };
    this.open = open;
    return this.write(async () => {
      const transaction = this.transaction('readwrite');
      const done = committed(transaction);
      const [kept, places] = continued ? await Promise.all([
        answered(transaction.objectStore('kept').get(card.key) as IDBRequest<Kept | undefined>),
        answered(transaction.objectStore('journal').getAllKeys(journalRange(card.key))),
      ]) : [undefined, []];
      open.changed = kept === undefined ? 0 : changesOf(kept);
      // What was kept before there was a journal has its changes beside the base.
      if (kept !== undefined && kept.patch === undefined) {
        open.at = (places.at(-1) as readonly [string, number] | undefined)?.[1] ?? 0;
        open.records = places.length;
      } else {
        transaction.objectStore('bases').put({ key: card.key, text: text ?? new Blob([serialiseCabin(cabin)], { type: 'application/json' }), stamp: Date.now() } satisfies Base);
        transaction.objectStore('journal').delete(journalRange(card.key));
        transaction.objectStore('kept').put({ ...card, changes: open.changed, keptAt: Date.now(), unsaved } satisfies Kept);
      }
      if (original !== undefined) transaction.objectStore('originals').put({ key: card.key, ...original });
      await done;
    });
  }

  /** Keeps the document as it is now; `unsaved` where it differs from the file. The file's card may be another after "save as". */
  keep(cabin: Cabin, unsaved: boolean, card: DocumentCard | undefined = this.open?.card): void {
    if (this.open === undefined || card === undefined) return;
    this.open.card = { ...card, key: this.open.card.key };
    const now = performance.now();
    if (this.waiting === undefined) this.since = now;
    this.waiting = { cabin, unsaved };
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.flush(), Math.max(0, Math.min(quietMs, this.since + latestMs - now)));
  }

  /** Keeps an import: the files it was made of at once, so that nothing is lost while its readings are written, and then the document as by `keep()`. */
  keepImport(before: Cabin, cabin: Cabin, unsaved: boolean, source: ImportSource): void {
    const { open } = this;
    if (open === undefined) return;
    void this.flush();
    this.writing = this.writing.then(() => this.writeImport(open, before, cabin, unsaved, source)).catch(() => {
      // Files that cannot be kept leave the import unsafe until it is written, which is then said.
    });
    this.keep(cabin, unsaved);
  }

  private async writeImport(open: OpenDocument, before: Cabin, cabin: Cabin, unsaved: boolean, source: ImportSource): Promise<void> {
    // It counts from the document that it was made on.
    if (open.written !== before) return;
    const transaction = this.transaction('readwrite');
    const done = committed(transaction);
    this.add(transaction, open, [{ kind: 'import', source }]);
    transaction.objectStore('kept').put(this.keptNow(open, cabin, unsaved));
    const { at } = open;
    await done;
    open.imported = at;
  }

  private keptNow(open: OpenDocument, cabin: Cabin, unsaved: boolean): Kept {
    return { ...open.card, changes: open.changed + sizeOf(cabinPatch(open.first, cabin)), keptAt: Date.now(), unsaved };
  }

  /** Writes what waits; resolves to whether all that was kept so far is in the store. */
  flush(): Promise<boolean> {
    clearTimeout(this.timer);
    const { waiting, open } = this;
    if (waiting === undefined || open === undefined) return this.writing.then(() => this.waiting === undefined);
    this.waiting = undefined;
    return this.write(async () => {
      await this.writeChanges(open, waiting);
      this.foldWhenIdle(open);
    }, () => {
      if (this.open === open) this.waiting ??= waiting;
    });
  }

  private async writeChanges(open: OpenDocument, { cabin, unsaved }: { readonly cabin: Cabin; readonly unsaved: boolean }): Promise<void> {
    const entries = journalOf(open.written, cabin, open.at + 1);
    // What leads up to a change says nothing without it: only the last record, which has it, makes the document another one.
    let written = 0;
    for (const slice of inRecords(entries)) {
      written += slice.length;
      const last = written === entries.length;
      const transaction = this.transaction('readwrite');
      this.add(transaction, open, slice);
      if (last) transaction.objectStore('kept').put(this.keptNow(open, cabin, unsaved));
      if (last && open.imported !== undefined) transaction.objectStore('journal').delete([open.card.key, open.imported]);
      await committed(transaction);
      if (!last && open.imported === undefined) this.dispatchEvent(new CustomEvent('keeping', { detail: written / entries.length }));
    }
    open.written = cabin;
    delete open.imported;
  }

  private add(transaction: IDBTransaction, open: OpenDocument, entries: readonly JournalEntry[]): void {
    open.at += 1;
    open.records += 1;
    transaction.objectStore('journal').put({ document: open.card.key, at: open.at, entries } satisfies JournalRecord);
  }

  /** A long journal takes long to replay. */
  private foldWhenIdle(open: OpenDocument): void {
    clearTimeout(this.folding);
    if (open.records < mostRecords) return;
    this.folding = setTimeout(() => {
      if (this.open !== open) return;
      open.records = 0;
      // Where it fails the journal is as it was.
      askKeeping({ kind: 'fold', database: this.database.name, key: open.card.key }).catch(() => undefined);
    }, idleMs);
  }

  /** Documents with unsaved changes, the latest first. */
  async recoverable(): Promise<readonly Recoverable[]> {
    const transaction = this.transaction('readonly');
    const [kept, originals] = await Promise.all([
      answered(transaction.objectStore('kept').getAll() as IDBRequest<Kept[]>), answered(transaction.objectStore('originals').getAllKeys()),
    ]);
    return kept.filter(({ unsaved, key }) => unsaved && key !== this.open?.card.key)
      .map((one): Recoverable => {
        const { patch: _patch, unsaved: _unsaved, ...card } = one;
        return { ...card, changes: changesOf(one), hasOriginal: originals.includes(card.key) };
      })
      .sort((first, second) => second.keptAt - first.keptAt);
  }

  /** The text of a kept document with all its changes, to be read like that of a file; nothing is lost where it cannot be read. */
  async recover(key: string): Promise<Outcome<Blob>> {
    await this.writing;
    const { text: value, issues } = await askKeeping({ kind: 'recover', database: this.database.name, key });
    return { value, issues };
  }

  /** What is kept of a document beside its content. */
  async card(key: string): Promise<(DocumentCard & { readonly unsaved: boolean }) | undefined> {
    const kept = await answered(this.transaction('readonly').objectStore('kept').get(key) as IDBRequest<Kept | undefined>);
    if (kept === undefined) return undefined;
    const { patch: _patch, keptAt: _keptAt, changes: _changes, ...card } = kept;
    return card;
  }

  async original(key: string): Promise<OriginalFile | undefined> {
    return answered(this.transaction('readonly').objectStore('originals').get(key) as IDBRequest<OriginalFile | undefined>);
  }

  /** Forgets a document and its original: when it is closed without changes, or the user does not want it back. */
  forget(key: string): Promise<boolean> {
    if (this.open?.card.key === key) this.drop();
    return this.write(() => {
      const transaction = this.transaction('readwrite');
      for (const store of ['bases', 'kept', 'originals'] as const) transaction.objectStore(store).delete(key);
      transaction.objectStore('journal').delete(journalRange(key));
      return committed(transaction);
    });
  }

  async close(): Promise<void> {
    await this.flush();
    document.removeEventListener('visibilitychange', this.hidden);
    removeEventListener('pagehide', this.leaving);
    this.database.close();
  }

  private drop(): void {
    clearTimeout(this.timer);
    clearTimeout(this.folding);
    this.waiting = undefined;
    this.open = undefined;
  }

  private transaction(mode: IDBTransactionMode): IDBTransaction {
    return this.database.transaction(storeNames, mode, { durability: 'relaxed' });
  }

  /** One write after the other, so that an older state never comes last. */
  private write(work: () => Promise<void>, failed: () => void = () => undefined): Promise<boolean> {
    const done = this.writing.then(work).then(() => {
      this.dispatchEvent(new CustomEvent('kept'));
      return true;
    }, (reason: unknown) => {
      failed();
      this.dispatchEvent(new CustomEvent('fault', { detail: storeFault(reason) }));
      return false;
    });
    this.writing = done.then(() => undefined);
    return done;
  }

  private readonly hidden = (): void => {
    if (document.visibilityState === 'hidden') void this.flush();
  };

  private readonly leaving = (): void => void this.flush();
}

/** Entries of one record each. */
function* inRecords(entries: readonly JournalEntry[]): Generator<readonly JournalEntry[]> {
  let record: JournalEntry[] = [];
  let readings = 0;
  for (const entry of entries) {
    const own = entry.kind === 'readings' ? entry.piece.readings.length : 0;
    if (record.length > 0 && (readings + own > readingsInRecord || record.length >= listsInRecord)) {
      yield record;
      [record, readings] = [[], 0];
    }
    record.push(entry);
    readings += own;
  }
  yield record;
}

const sizeOf = ({ lists, fields, gone }: CabinPatch): number =>
  Object.keys(fields).length + gone.length + Object.values(lists).reduce((sum, { items, order }) => sum + Math.max(items.length, order === undefined ? 0 : 1), 0);

const changesOf = ({ changes, patch }: Kept): number => changes ?? (patch === undefined ? 0 : sizeOf(patch));

function storeFault(reason: unknown): Issue {
  const name = reason instanceof DOMException ? reason.name : '';
  const found = reason instanceof Error ? reason.message : String(reason);
  if (name === 'QuotaExceededError') {
    return { code: 'storage-full', severity: 'error', found, expected: 'room in the store of the browser', hint: 'Changes are no longer kept against a crash. Save the cabin to a file now, then make room.' };
  }
  return { code: 'not-kept', severity: 'error', found, expected: 'a browser that keeps changes', hint: 'Changes are not kept against a crash. Save the cabin to a file often.' };
}

/** Absent on pages without a secure connection. */
interface Storing {
  readonly storage?: Partial<StorageManager>;
}

/** Asks the browser not to throw the store away when room is short; it may refuse. */
export const askToPersist = async (): Promise<boolean> => (await (navigator as Storing).storage?.persist?.()) ?? false;
