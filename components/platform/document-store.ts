import type { CabinPatch } from '../../src/actions/cabin-patch.ts';
import { cabinPatch, patchCabin } from '../../src/actions/cabin-patch.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import type { Issue, Outcome } from '../../src/issue.ts';
import { weightOf } from '../../src/workers/cabin-pieces.ts';
import type { ReadingsPiece } from '../../src/workers/import-protocol.ts';
import { inPieces } from '../../src/workers/patch-pieces.ts';
import { answered, committed, openDatabase } from './database.ts';
import { writeHeavily, writeWhole } from './heavy-write.ts';

/** What is kept of an open document beside its content. */
export interface DocumentCard {
  /** Key of the document in the store: one for each file that is opened, or the id of a new cabin. */
  readonly key: string;
  /** Name of the cabin. */
  readonly name: string;
  readonly fileName?: string;
  readonly handle?: FileSystemFileHandle;
}

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

interface Base {
  readonly key: string;
  readonly cabin: Cabin;
}
interface Kept extends DocumentCard {
  readonly patch: CabinPatch;
  readonly keptAt: number;
  readonly unsaved: boolean;
}

/** The open document, with what of it lies in the store as a whole. */
interface OpenDocument {
  card: DocumentCard;
  base: Cabin;
}

const version = 1;
const stores = ['bases', 'kept', 'originals'] as const;
/** Changes are kept this long after the last edit, and never later than this after the first. Together under a second. */
const quietMs = 250;
const latestMs = 750;
/** Items in a patch beyond which the whole document is written anew. */
const largestPatch = 200;
/** Pieces of readings in a patch, of a thousand at most each, beyond which a worker writes it. */
const mostPieces = 8;
/** Readings, parts and joints together beyond which a worker writes the whole document. */
const heaviest = 4000;

/**
 * Keeps the open document in IndexedDB so that a crash loses at most the last second: the whole of it once, then at every pause what
 * changed since. Written on a short delay, and at once when the page is hidden. Faults fire `fault` with an Issue as detail and end nothing:
 * the next edit tries again. Fires `kept` when all is written.
 */
export class DocumentStore extends EventTarget {
  /** Opens the store, or says why there is none, as in a private window that keeps nothing. */
  static async open(name = 'adjoin'): Promise<Outcome<DocumentStore>> {
    try {
      const database = await openDatabase(name, version, (made) => stores.forEach((store) => made.createObjectStore(store, { keyPath: 'key' })));
      return { value: new DocumentStore(database), issues: [] };
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
  private writing: Promise<void> = Promise.resolve();

  /**
   * Begins to keep a document. What was kept under the key before is replaced; an original file is kept beside it, untouched,
   * and stays until `forget()`. `unsaved` where the document is recovered, or new and in no file.
   */
  begin(card: DocumentCard, cabin: Cabin, options: { readonly unsaved?: boolean; readonly original?: OriginalFile } = {}): Promise<boolean> {
    this.drop();
    this.open = { card, base: cabin };
    const { unsaved = false, original } = options;
    return this.write(async () => {
      const heavy = weightOf(cabin) > heaviest;
      if (heavy) await writeWhole(cabin, { database: this.database.name, version, kept: { ...card, keptAt: Date.now(), unsaved } as { readonly key: string } });
      const transaction = this.transaction('readwrite');
      if (!heavy) this.putWhole(transaction, card, cabin, unsaved);
      if (original !== undefined) transaction.objectStore('originals').put({ key: card.key, ...original });
      return committed(transaction);
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

  /** Writes what waits; resolves to whether all that was kept so far is in the store. */
  flush(): Promise<boolean> {
    clearTimeout(this.timer);
    const { waiting, open } = this;
    if (waiting === undefined || open === undefined) return this.writing.then(() => this.waiting === undefined);
    this.waiting = undefined;
    return this.write(() => this.writeChanges(open, waiting), () => {
      if (this.open === open) this.waiting ??= waiting;
    });
  }

  private async writeChanges(open: OpenDocument, { cabin, unsaved }: { readonly cabin: Cabin; readonly unsaved: boolean }): Promise<void> {
    const patch = cabinPatch(open.base, cabin);
    const pieces: ReadingsPiece[] = [];
    const short = inPieces(patch, (piece) => pieces.push(piece));
    if (pieces.length > mostPieces) {
      await writeHeavily({ database: this.database.name, version, patch: short, kept: { ...open.card, keptAt: Date.now(), unsaved } as { readonly key: string } }, pieces);
      open.base = cabin;
      return;
    }
    const whole = sizeOf(patch) > largestPatch;
    if (whole && weightOf(cabin) > heaviest) {
      await writeWhole(cabin, { database: this.database.name, version, kept: { ...open.card, keptAt: Date.now(), unsaved } as { readonly key: string } });
      open.base = cabin;
      return;
    }
    const transaction = this.transaction('readwrite');
    if (whole) this.putWhole(transaction, open.card, cabin, unsaved);
    else transaction.objectStore('kept').put({ ...open.card, patch, keptAt: Date.now(), unsaved } satisfies Kept);
    await committed(transaction);
    if (whole) open.base = cabin;
  }

  /** Documents with unsaved changes, the latest first. */
  async recoverable(): Promise<readonly Recoverable[]> {
    const transaction = this.transaction('readonly');
    const [kept, originals] = await Promise.all([
      answered(transaction.objectStore('kept').getAll() as IDBRequest<Kept[]>), answered(transaction.objectStore('originals').getAllKeys()),
    ]);
    return kept.filter(({ unsaved, key }) => unsaved && key !== this.open?.card.key)
      .map(({ patch, unsaved, ...card }) => ({ ...card, changes: sizeOf(patch), hasOriginal: originals.includes(card.key) }))
      .sort((first, second) => second.keptAt - first.keptAt);
  }

  /** A kept document, through the one door of all documents; nothing is lost where it cannot be read. */
  async recover(key: string): Promise<Outcome<Cabin>> {
    const transaction = this.transaction('readonly');
    const [base, kept] = await Promise.all([
      answered(transaction.objectStore('bases').get(key) as IDBRequest<Base | undefined>),
      answered(transaction.objectStore('kept').get(key) as IDBRequest<Kept | undefined>),
    ]);
    if (base === undefined || kept === undefined) {
      return { value: undefined, issues: [{ code: 'not-kept', severity: 'error', found: JSON.stringify(key), expected: 'a document that was kept' }] };
    }
    return restoreCabin(patchCabin(base.cabin, kept.patch));
  }

  /** What is kept of a document beside its content. */
  async card(key: string): Promise<(DocumentCard & { readonly unsaved: boolean }) | undefined> {
    const kept = await answered(this.transaction('readonly').objectStore('kept').get(key) as IDBRequest<Kept | undefined>);
    if (kept === undefined) return undefined;
    const { patch: _patch, keptAt: _keptAt, ...card } = kept;
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
      stores.forEach((store) => transaction.objectStore(store).delete(key));
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
    this.waiting = undefined;
    this.open = undefined;
  }

  private transaction(mode: IDBTransactionMode): IDBTransaction {
    return this.database.transaction(stores, mode, { durability: 'relaxed' });
  }

  private putWhole(transaction: IDBTransaction, card: DocumentCard, cabin: Cabin, unsaved: boolean): void {
    transaction.objectStore('bases').put({ key: card.key, cabin } satisfies Base);
    transaction.objectStore('kept').put({ ...card, patch: cabinPatch(cabin, cabin), keptAt: Date.now(), unsaved } satisfies Kept);
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

const sizeOf = ({ lists, fields, gone }: CabinPatch): number =>
  Object.keys(fields).length + gone.length + Object.values(lists).reduce((sum, { items, order }) => sum + Math.max(items.length, order === undefined ? 0 : 1), 0);

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
