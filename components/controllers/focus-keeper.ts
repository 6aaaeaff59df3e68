import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { deepFocus, firstStop, rungsOf, takesFocus } from '../model/focus-path.ts';
import type { Rung } from '../model/focus-path.ts';

const before = ['keydown', 'pointerdown'] as const;
const after = ['keyup', 'pointerup', 'focusin'] as const;

/** Things whose change can take the focus from what has it. */
const watched: MutationObserverInit = { childList: true, subtree: true, attributes: true, attributeFilter: ['disabled', 'hidden', 'open', 'inert'] };

/**
 * Keeps the focus on the page: where what had it is gone, disabled or hidden, what stood beside it takes it, else what is nearest around it,
 * else the content. A focus that the user put away by a click stays away.
 */
export class FocusKeeper implements ReactiveController {
  constructor(host: ReactiveControllerHost & HTMLElement, content: () => HTMLElement | null) {
    this.host = host;
    this.content = content;
    host.addController(this);
  }

  private readonly host: HTMLElement;
  private readonly content: () => HTMLElement | null;
  private rungs: readonly Rung[] = [];
  /** Where the focus was before it went into a dialog. */
  private outside: readonly Rung[] = [];
  private readonly observer = new MutationObserver(() => this.checkSoon());
  private waiting = false;

  // Between elements of one shadow tree the events of the focus do not leave it, so what the user does is listened to instead.
  hostConnected(): void {
    for (const kind of before) addEventListener(kind, this.note, { capture: true });
    for (const kind of after) addEventListener(kind, this.noteSoon);
  }

  hostDisconnected(): void {
    for (const kind of before) removeEventListener(kind, this.note, { capture: true });
    for (const kind of after) removeEventListener(kind, this.noteSoon);
    this.observer.disconnect();
  }

  hostUpdated(): void {
    this.checkSoon();
  }

  /** What has the focus, or had it last. */
  get last(): Element | undefined {
    return (this.outside[0] ?? this.rungs[0])?.element;
  }

  private readonly note = (): void => {
    const now = deepFocus();
    if (now === undefined || now === this.rungs[0]?.element) return;
    const rungs = rungsOf(now);
    if (!rungs.some(({ element }) => isLayer(element))) this.outside = [];
    else if (this.outside.length === 0) this.outside = this.rungs;
    this.rungs = rungs;
    this.observer.disconnect();
    for (const root of new Set(rungs.map(({ element }) => element.getRootNode()))) this.observer.observe(root, watched);
  };

  private readonly noteSoon = (): void => {
    this.note();
    this.checkSoon();
  };

  /** After what is drawn now: a browser lets go of what was disabled or hidden only then. */
  private readonly checkSoon = (): void => {
    if (this.waiting || this.rungs.length === 0) return;
    this.waiting = true;
    requestAnimationFrame(() => setTimeout(() => {
      this.waiting = false;
      this.check();
    }));
  };

  private check(): void {
    const [had] = this.rungs;
    if (had === undefined || deepFocus() !== undefined) return;
    if (takesFocus(had.element)) {
      this.rungs = [];
      return;
    }
    const layer = this.rungs.find(({ element }) => isLayer(element))?.element;
    const rungs = layer !== undefined && !isShown(layer) ? this.outside : this.rungs;
    const beside = this.beside(rungs);
    // The content begins below the head, which a narrow page would scroll away for it.
    if (beside === undefined) this.content()?.focus({ preventScroll: true });
    else beside.focus();
  }

  private beside(rungs: readonly Rung[]): HTMLElement | undefined {
    const content = this.content();
    for (const [at, { element }] of rungs.entries()) {
      if (!element.isConnected || !element.checkVisibility()) continue;
      if (element === content || element.parentElement === content || element.contains(content) || element === this.host) return undefined;
      if (at === 0) {
        if (takesFocus(element)) return element as HTMLElement;
        continue;
      }
      const lost = rungs[at - 1];
      for (const near of [lost?.next, lost?.previous, element]) {
        const stop = near?.isConnected === true ? firstStop(near) : undefined;
        if (stop !== undefined) return stop;
      }
    }
    return undefined;
  }
}

const isLayer = (element: Element): boolean => element instanceof HTMLDialogElement || element.hasAttribute('popover');
const isShown = (layer: Element): boolean => layer.isConnected && (layer instanceof HTMLDialogElement ? layer.open : layer.matches(':popover-open'));
