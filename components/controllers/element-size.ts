import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Size in px of the host's box or of one element in it, kept up to date. */
export class ElementSize implements ReactiveController {
  width = 0;
  height = 0;

  constructor(host: ReactiveControllerHost & HTMLElement, selector?: string) {
    this.host = host;
    this.selector = selector;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly selector: string | undefined;
  private watched: Element | undefined;
  private readonly observer = new ResizeObserver(([entry]) => {
    if (entry === undefined) return;
    const { width, height } = entry.contentRect;
    if (Math.round(width) === this.width && Math.round(height) === this.height) return;
    this.width = Math.round(width);
    this.height = Math.round(height);
    this.host.requestUpdate();
  });

  hostUpdated(): void {
    const target = this.selector === undefined ? this.host : (this.host.shadowRoot?.querySelector(this.selector) ?? undefined);
    if (target === this.watched) return;
    this.observer.disconnect();
    this.watched = target;
    if (target !== undefined) this.observer.observe(target);
  }

  hostDisconnected(): void {
    this.observer.disconnect();
    this.watched = undefined;
  }
}
