/**
 * The copy of the workbench that opens without a network. Where the browser keeps none (an unsafe origin, a private window, a page from a
 * file) the workbench works as before from its server.
 */
export class OfflineCopy extends EventTarget {
  private waiting: ServiceWorker | undefined;
  private asked = false;

  /** A newer version lies ready; pages go on with theirs until they are loaded anew. */
  get newer(): boolean {
    return this.waiting !== undefined;
  }

  /** Begins to keep a copy, and tells of a newer version by a `newer` event. */
  async begin(address: string): Promise<void> {
    const { serviceWorker } = navigator as Partial<Navigator>;
    if (serviceWorker === undefined) return;
    try {
      const registration = await serviceWorker.register(address);
      registration.addEventListener('updatefound', () => {
        const { installing } = registration;
        installing?.addEventListener('statechange', () => this.look(registration));
      });
      serviceWorker.addEventListener('controllerchange', () => {
        if (this.asked) location.reload();
      });
      this.look(registration);
    } catch {
      // Without the copy nothing is lost but the work without a network.
    }
  }

  /** Asks for cabins beside the page, by their addresses, to be kept with the copy: those that are offered and the one that is open. */
  async keep(addresses: readonly string[]): Promise<void> {
    const { serviceWorker } = navigator as Partial<Navigator>;
    const registration = await serviceWorker?.ready;
    registration?.active?.postMessage({ keep: addresses });
  }

  /** Goes over to the newer version: all pages of this origin load anew. Write what is unsaved before. */
  takeNewer(): void {
    this.asked = true;
    this.waiting?.postMessage('take over');
  }

  private look({ waiting, active }: ServiceWorkerRegistration): void {
    // The first copy of all waits for nobody.
    const newer = active === null ? undefined : waiting ?? undefined;
    if (newer === this.waiting) return;
    this.waiting = newer;
    this.dispatchEvent(new Event('newer'));
  }
}
