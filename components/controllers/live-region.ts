import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { announceEvent } from './announcer.ts';

/** What the page's one polite live region says: what elements under the host announce, and what the shell says itself. */
export class LiveRegion implements ReactiveController {
  said = '';

  constructor(host: ReactiveControllerHost & EventTarget) {
    this.host = host;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost & EventTarget;

  hostConnected(): void {
    this.host.addEventListener(announceEvent, this.announced);
  }

  hostDisconnected(): void {
    this.host.removeEventListener(announceEvent, this.announced);
  }

  /** A sentence said twice is heard twice: the region is emptied in between. */
  readonly say = (text: string): void => {
    this.show('');
    void this.host.updateComplete.then(() => this.show(text));
  };

  private show(text: string): void {
    if (this.said === text) return;
    this.said = text;
    this.host.requestUpdate();
  }

  private readonly announced = (event: Event): void => this.say((event as CustomEvent<string>).detail);
}
