import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Size that was measured last of many alike, px: what the next one of them is taken to have until it is measured itself. */
export interface LastSize {
  width: number;
  height: number;
}

/** Size in px of the host's box or of one element in it, kept up to date; nought, or that of the last one alike, before it is measured. */
export class ElementSize implements ReactiveController {
  width = 0;
  height = 0;

  constructor(host: ReactiveControllerHost & HTMLElement, selector?: string, last?: LastSize) {
    this.host = host;
    this.last = last;
    if (last !== undefined) [this.width, this.height] = [last.width, last.height];
    this.selector = selector;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly selector: string | undefined;
  private readonly last: LastSize | undefined;
  private watched: Element | undefined;
  private readonly observer = new ResizeObserver(([entry]) => {
    if (entry === undefined) return;
    // A drawing that changes the very box it is sized by would make the observer loop within one frame.
    requestAnimationFrame(() => this.measured(Math.round(entry.contentRect.width), Math.round(entry.contentRect.height)));
  });

  private measured(width: number, height: number): void {
    if (width === this.width && height === this.height) return;
    this.width = width;
    this.height = height;
    if (this.last !== undefined) Object.assign(this.last, { width, height });
    this.host.requestUpdate();
  }

  hostUpdated(): void {
    const target = this.selector === undefined ? this.host : (this.host.shadowRoot?.querySelector(this.selector) ?? undefined);
    if (target === this.watched) return;
    this.observer.disconnect();
    this.watched = target;
    if (target !== undefined) this.observer.observe(target);
  }

  /** What was taken off the page and is put back may be of another size. */
  hostConnected(): void {
    if (this.width > 0) this.host.requestUpdate();
  }

  hostDisconnected(): void {
    this.observer.disconnect();
    this.watched = undefined;
  }
}
