import type { Cabin } from '../../src/cabin/cabin.ts';
import { currentVersion } from '../../src/cabin/migrations.ts';
import type { Issue, Outcome } from '../../src/issue.ts';
import type { ImportSource } from '../../src/workers/imported-again.ts';
import { DocumentStore, askToPersist } from '../platform/document-store.ts';
import type { Beginning, DocumentCard, OriginalFile, Recoverable } from '../platform/document-store.ts';
import { SingleOwner } from '../platform/single-owner.ts';

const tabKey = 'adjoin-open';

/** What the keeper tells the desk. */
export interface KeeperEvents {
  /** Changes can not be kept, or can again (`undefined`). */
  readonly fault: (issue: Issue | undefined) => void;
  /** Share of a large change that is kept by now; `undefined` once it is. */
  readonly keeping: (share: number | undefined) => void;
  /** Another tab took the document. */
  readonly lost: () => void;
  /** Another tab let go of a document. */
  readonly released: (document: string) => void;
}

/** Keeps the open document against crashes and reloads, and sees to it that one tab owns it. */
export class Keeper {
  constructor(events: KeeperEvents) {
    this.events = events;
    this.opening = DocumentStore.open().then(({ value, issues: [issue] }) => {
      if (issue !== undefined) events.fault(issue);
      value?.addEventListener('fault', (event) => {
        events.keeping(undefined);
        events.fault((event as CustomEvent<Issue>).detail);
      });
      value?.addEventListener('keeping', (event) => events.keeping((event as CustomEvent<number>).detail));
      value?.addEventListener('kept', () => {
        events.keeping(undefined);
        events.fault(undefined);
      });
      return value;
    });
    this.owner.addEventListener('give-way', () => void this.giveWay());
    this.owner.addEventListener('lost', () => events.lost());
    this.owner.addEventListener('message', (event) => {
      const { kind, document } = (event as CustomEvent<{ kind: string; document: string }>).detail;
      if (kind === 'released') events.released(document);
    });
  }

  private readonly events: KeeperEvents;
  private readonly owner = new SingleOwner();
  private readonly opening: Promise<DocumentStore | undefined>;
  private store: DocumentStore | undefined;

  /** Begins to keep a document that was opened; resolves to whether this tab owns it now. */
  async begin(card: DocumentCard, cabin: Cabin, { unsaved, text, continued = false }: Omit<Beginning, 'original'>): Promise<boolean> {
    this.store = await this.opening;
    const owned = await this.owner.claim(card.key);
    remember(card.key);
    if (!owned) return false;
    const original = text === undefined || continued ? undefined : await olderOriginal(card.fileName ?? card.name, text);
    await this.store?.begin(card, cabin, { unsaved, continued, ...(text === undefined ? {} : { text }), ...(original === undefined ? {} : { original }) });
    void askToPersist();
    return true;
  }

  keep(cabin: Cabin, unsaved: boolean, card?: DocumentCard): void {
    this.store?.keep(cabin, unsaved, card);
  }

  /** Keeps an import, which is safe as soon as the files are that it was made of. */
  keepImport(before: Cabin, cabin: Cabin, unsaved: boolean, source: ImportSource): void {
    this.store?.keepImport(before, cabin, unsaved, source);
  }

  flush(): Promise<boolean> {
    return this.store?.flush() ?? Promise.resolve(false);
  }

  /** Makes this tab the owner; the other one writes what it has first. */
  takeOver(key: string): Promise<boolean> {
    return this.owner.takeOver(key);
  }

  /** Documents with unsaved changes that no tab has open, the latest first. */
  async recoverable(): Promise<readonly Recoverable[]> {
    const store = await this.opening;
    if (store === undefined) return [];
    const [kept, owned] = await Promise.all([store.recoverable(), this.owner.allOwned()]);
    return kept.filter(({ key }) => !owned.has(key));
  }

  /** The text of a kept document with all its changes. */
  async recover(key: string): Promise<Outcome<Blob>> {
    const store = await this.opening;
    return store?.recover(key) ?? { value: undefined, issues: [] };
  }

  async original(key: string): Promise<OriginalFile | undefined> {
    return (await this.opening)?.original(key);
  }

  async card(key: string): Promise<(DocumentCard & { readonly unsaved: boolean }) | undefined> {
    return (await this.opening)?.card(key);
  }

  async forget(key: string): Promise<void> {
    await (await this.opening)?.forget(key);
  }

  async close(): Promise<void> {
    forgetTab();
    await this.flush();
    await this.owner.release();
  }

  dispose(): void {
    void this.flush();
    this.owner.dispose();
  }

  private async giveWay(): Promise<void> {
    await this.flush();
    await this.owner.release();
    this.events.lost();
  }
}

/** Key of the document that this tab had open before it was loaded anew. */
export function tabDocument(): string | undefined {
  try {
    return sessionStorage.getItem(tabKey) ?? undefined;
  } catch {
    return undefined;
  }
}

function remember(key: string): void {
  try {
    sessionStorage.setItem(tabKey, key);
  } catch {
    // Where nothing is remembered a reload shows the start page, which offers the kept document.
  }
}

function forgetTab(): void {
  try {
    sessionStorage.removeItem(tabKey);
  } catch {
    // Nothing was remembered.
  }
}

/** The text of a file of an older version, which is kept untouched beside its migrated document. */
async function olderOriginal(fileName: string, file: Blob): Promise<OriginalFile | undefined> {
  const versionIn = (text: string): string | undefined => /"version"\s*:\s*(\d+)/.exec(text)?.[1];
  // As a rule it stands at the head, and a large file is not read for it.
  const version = versionIn(await file.slice(0, headBytes).text()) ?? (file.size > headBytes ? versionIn(await file.text()) : undefined);
  return version !== undefined && Number(version) < currentVersion ? { fileName, text: await file.text() } : undefined;
}

const headBytes = 4096;
