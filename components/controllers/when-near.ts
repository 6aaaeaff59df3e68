import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** How far from what is seen something is near. */
const margin = '900px';

/** Tells a host when it first comes near to what is seen, or is to be printed, so that it need not be drawn before. */
export class WhenNear implements ReactiveController {
  near = false;

  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.host = host;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly come = (): void => {
    if (this.near) return;
    this.near = true;
    this.hostDisconnected();
    this.host.requestUpdate();
  };
  // What scrolls lies within the page, and a margin of the page alone would end at its edge.
  private readonly observer = new IntersectionObserver((entries) => { if (entries.some(({ isIntersecting }) => isIntersecting)) this.come(); }, { rootMargin: margin, scrollMargin: margin } as IntersectionObserverInit);

  hostConnected(): void {
    if (this.near) return;
    this.observer.observe(this.host);
    addEventListener('beforeprint', this.come);
  }

  hostDisconnected(): void {
    this.observer.disconnect();
    removeEventListener('beforeprint', this.come);
  }
}
