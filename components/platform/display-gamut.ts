import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Gamut } from '../model/part-colours.ts';

const wide = matchMedia('(color-gamut: p3)');

/** Which gamut the screen says it covers; the host is redrawn when the window moves to another screen. */
export class DisplayGamut implements ReactiveController {
  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;

  get gamut(): Gamut {
    return wide.matches ? 'display-p3' : 'srgb';
  }

  hostConnected(): void {
    wide.addEventListener('change', this.changed);
  }

  hostDisconnected(): void {
    wide.removeEventListener('change', this.changed);
  }

  private readonly changed = (): void => this.host.requestUpdate();
}
