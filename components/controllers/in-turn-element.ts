import { LitElement, notEqual } from 'lit';

const waiting: (() => void)[] = [];
let channel: MessageChannel | undefined;

const callNext = (): void => channel?.port2.postMessage(undefined);

/** Resolves in a task of its own, in the order of the calls: one call for each task, so that the page answers and draws between them. */
export function turn(): Promise<void> {
  if (channel === undefined) {
    channel = new MessageChannel();
    channel.port1.addEventListener('message', () => {
      waiting.shift()?.();
      if (waiting.length > 0) callNext();
    });
    channel.port1.start();
  }
  return new Promise((resolve) => {
    waiting.push(resolve);
    if (waiting.length === 1) callNext();
  });
}

/**
 * An element whose first drawing waits for its turn, and so does what its properties `inTurn` change: those of a whole view in one task would keep
 * the page from answering. What else changes is drawn at once.
 */
export abstract class InTurnElement extends LitElement {
  /** Names of the properties whose change takes long to draw. */
  protected static readonly inTurn: ReadonlySet<PropertyKey> = new Set();
  private waits = true;

  override requestUpdate(...[name, before, ...rest]: Parameters<LitElement['requestUpdate']>): void {
    if (name !== undefined && this.isInTurn(name, before)) this.waits = true;
    super.requestUpdate(name, before, ...rest);
  }

  private isInTurn(name: PropertyKey, before: unknown): boolean {
    const own = this.constructor as typeof InTurnElement;
    if (!own.inTurn.has(name)) return false;
    return (own.getPropertyOptions(name).hasChanged ?? notEqual)(this[name as keyof this], before);
  }

  protected override async scheduleUpdate(): Promise<void> {
    if (this.waits) await turn();
    this.waits = false;
    await super.scheduleUpdate();
  }
}
