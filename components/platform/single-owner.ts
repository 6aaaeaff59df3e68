/** What one tab tells the others of a document. */
export type OwnerMessage =
  | { readonly kind: 'claimed' | 'released' | 'give way'; readonly document: string }
  | { readonly kind: 'saved'; readonly document: string; readonly at: number };

/** How long a tab that is asked to give way has for it before the document is taken from it, for example because it hangs. */
const givingWayMs = 3000;

/**
 * One tab owns a document and may write it; others see it and say whose it is. Held by a Web Lock, which the browser lets go when the
 * tab closes or crashes. Fires `message` events with an `OwnerMessage` as detail, of other tabs; `give-way` when another tab
 * wants the document that this one owns: write what is left, then `release()`; and `lost` when it was taken.
 * Where the browser has no Web Locks, as on pages without a secure connection, every tab is an owner.
 */
export class SingleOwner extends EventTarget {
  constructor(scope = 'adjoin') {
    super();
    this.scope = scope;
    this.channel = new BroadcastChannel(`${scope}-documents`);
    this.channel.addEventListener('message', this.heard);
  }

  private readonly scope: string;
  private closed = false;
  private readonly channel: BroadcastChannel;
  private owned: { readonly document: string; readonly letGo: () => Promise<void> } | undefined;

  /** Id of the document that this tab owns. */
  get document(): string | undefined {
    return this.owned?.document;
  }

  /** Owns a document from now on, and lets go of another; false where a tab owns it already. */
  async claim(document: string): Promise<boolean> {
    if (this.owned?.document === document) return true;
    await this.release();
    return this.hold(document, { ifAvailable: true });
  }

  /** Asks the owner to give way, waits for it, and takes the document where it does not in time. */
  async takeOver(document: string): Promise<boolean> {
    if (await this.claim(document)) return true;
    this.tell({ kind: 'give way', document });
    const waiting = new AbortController();
    const timer = setTimeout(() => waiting.abort(), givingWayMs);
    try {
      if (await this.hold(document, { signal: waiting.signal })) return true;
    } finally {
      clearTimeout(timer);
    }
    return this.hold(document, { steal: true });
  }

  /** Lets go of the document; resolves when another tab can have it. */
  async release(): Promise<void> {
    const owned = this.owned;
    if (owned === undefined) return;
    this.owned = undefined;
    await owned.letGo();
    if (!this.closed) this.tell({ kind: 'released', document: owned.document });
  }

  /** Ids of the documents that any tab owns now. */
  async allOwned(): Promise<ReadonlySet<string>> {
    const { held = [] } = await (locks()?.query() ?? Promise.resolve<LockManagerSnapshot>({}));
    return new Set(held.flatMap(({ name = '' }) => (name.startsWith(this.lockName('')) ? [name.slice(this.lockName('').length)] : [])));
  }

  tell(message: OwnerMessage): void {
    this.channel.postMessage(message);
  }

  dispose(): void {
    void this.release();
    this.closed = true;
    this.channel.removeEventListener('message', this.heard);
    this.channel.close();
  }

  private lockName(document: string): string {
    return `${this.scope}-document:${document}`;
  }

  private hold(document: string, options: LockOptions): Promise<boolean> {
    const manager = locks();
    if (manager === undefined) {
      this.owned = { document, letGo: () => Promise.resolve() };
      return Promise.resolve(true);
    }
    return new Promise((resolve) => {
      const held: Promise<void> = manager.request(this.lockName(document), options, (lock) => {
        if (lock === null) {
          resolve(false);
          return undefined;
        }
        return new Promise<void>((free) => {
          this.owned = {
            document,
            letGo: () => {
              free();
              return held.catch(() => undefined);
            },
          };
          this.tell({ kind: 'claimed', document });
          resolve(true);
        });
      });
      held.catch(() => {
        if (this.owned?.document === document) {
          this.owned = undefined;
          this.dispatchEvent(new CustomEvent('lost', { detail: document }));
        }
        resolve(false);
      });
    });
  }

  private readonly heard = ({ data }: MessageEvent<OwnerMessage>): void => {
    if (data.kind === 'give way' && data.document === this.owned?.document) this.dispatchEvent(new CustomEvent('give-way', { detail: data.document }));
    this.dispatchEvent(new CustomEvent('message', { detail: data }));
  };
}

const locks = (): LockManager | undefined => (navigator as { readonly locks?: LockManager }).locks;
