import type { CabinPatch } from '../../src/actions/cabin-patch.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { JournalEntry } from '../../src/workers/journal.ts';
import { openDatabase } from './database.ts';

/** What is kept of an open document beside its content. */
export interface DocumentCard {
  /** Key of the document in the store: one for each file that is opened, or the id of a new cabin. */
  readonly key: string;
  /** Name of the cabin. */
  readonly name: string;
  readonly fileName?: string;
  readonly handle?: FileSystemFileHandle;
}

/** The last whole copy of a document: the text of its file, or what its journal was folded into. */
export interface Base {
  readonly key: string;
  readonly text: Blob;
  /** Another one for every copy, so that a copy is not replaced by what was made of an older one. */
  readonly stamp: number;
}

/** As it was before there was a journal. */
export interface OldBase {
  readonly key: string;
  readonly cabin: Cabin;
}

/** What is said of a kept document. */
export interface Kept extends DocumentCard {
  /** In milliseconds since 1970. */
  readonly keptAt: number;
  readonly unsaved: boolean;
  /** How many parts, joints and other items differ from the file; absent where `patch` says it. */
  readonly changes?: number;
  /** All changes since the base, as it was before there was a journal. */
  readonly patch?: CabinPatch;
}

/** Entries of the journal of a document, which count in the order of `at` from its base. */
export interface JournalRecord {
  readonly document: string;
  readonly at: number;
  readonly entries: readonly JournalEntry[];
}

const version = 2;
/** `journal` came with the second version. */
const byKey = ['bases', 'kept', 'originals'] as const;
export const storeNames = [...byKey, 'journal'] as const;

export const openStore = (name: string): Promise<IDBDatabase> => openDatabase(name, version, (database, from) => {
  if (from < 1) byKey.forEach((store) => database.createObjectStore(store, { keyPath: 'key' }));
  if (from < 2) database.createObjectStore('journal', { keyPath: ['document', 'at'] });
});

/** The keys of the records of a document's journal, up to a place. */
export const journalRange = (document: string, upTo = Infinity): IDBKeyRange => IDBKeyRange.bound([document, -Infinity], [document, upTo]);
