import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { offeredCabins } from '../model/offered-cabins.ts';
import { OfflineCopy } from '../platform/offline/offline-copy.ts';

/** What the copy for work without a network asks of the page. */
export interface KeptOffline {
  /** Address of the cabin that is open as the page is loaded, which is kept with the copy. */
  readonly openAddress: () => string | undefined;
  /** Writes what was changed last, before the page goes. */
  readonly flush: () => Promise<void>;
}

/** Keeps the copy of the workbench for work without a network, and tells when a newer version lies ready. */
export class NewerVersion implements ReactiveController {
  constructor(host: ReactiveControllerHost, { openAddress, flush }: KeptOffline) {
    this.host = host;
    this.openAddress = openAddress;
    this.flush = flush;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly openAddress: () => string | undefined;
  private readonly flush: () => Promise<void>;
  private readonly copy = new OfflineCopy();

  get isReady(): boolean {
    return this.copy.newer;
  }

  hostConnected(): void {
    this.copy.addEventListener('newer', this.told);
    // A page from source changes under the copy.
    if (!import.meta.env.PROD) return;
    void this.copy.begin('./service-worker.js');
    const open = this.openAddress();
    void this.copy.keep([...offeredCabins.map(({ address }) => address), ...(open === undefined ? [] : [open])]);
  }

  hostDisconnected(): void {
    this.copy.removeEventListener('newer', this.told);
  }

  /** Loads the page anew with the newer version. */
  async take(): Promise<void> {
    await this.flush();
    this.copy.takeNewer();
  }

  private readonly told = (): void => this.host.requestUpdate();
}
