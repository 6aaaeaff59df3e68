import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Desk } from '../controllers/desk.ts';
import { tabDocument } from '../controllers/keeper.ts';
import type { Route } from '../controllers/route.ts';
import type { Whereabouts } from '../controllers/whereabouts.ts';
import { openFile } from '../platform/open-save.ts';
import type { OpenedFile } from '../platform/open-save.ts';

/** Before that, saying that one waits would only flicker. */
const slowAfterMs = 300;

/** How documents come to be open, by their address, from a file, as they were kept, or new, and where one is then. */
export class Opening implements ReactiveController {
  /** Opening takes long enough to say so. */
  isSlow = false;

  constructor(host: ReactiveControllerHost, desk: Desk, whereabouts: Whereabouts, say: (text: string) => void) {
    this.host = host;
    this.desk = desk;
    this.whereabouts = whereabouts;
    this.say = say;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly desk: Desk;
  private readonly whereabouts: Whereabouts;
  private readonly say: (text: string) => void;
  /** The address that was opened last: to move about in a place that names it does not open it anew. */
  private address: string | undefined;

  hostConnected(): void {
    if (this.whereabouts.route.open === undefined && tabDocument() !== undefined) void this.reopen();
    void this.desk.findRecoverable();
  }

  /** Opens what the address of a place names. */
  async follow({ open }: Route): Promise<void> {
    if (open === undefined || open === this.address) return;
    this.address = open;
    if (await this.awaited(this.desk.openAddress(open))) this.opened();
  }

  async pick(): Promise<void> {
    this.desk.refuse(undefined);
    const file = await openFile();
    if (file !== undefined) await this.take(file);
  }

  async take(file: OpenedFile): Promise<void> {
    if (await this.awaited(this.desk.openFile(file))) this.openedWithoutAddress('cabin');
  }

  /** A document as it was kept in this browser. */
  async takeUp(key: string): Promise<void> {
    if (await this.awaited(this.desk.openKept(key))) this.openedWithoutAddress('cabin');
  }

  async makeNew(): Promise<void> {
    if (await this.awaited(this.desk.openNew('New cabin', today()))) this.openedWithoutAddress('parts');
  }

  async close(): Promise<void> {
    await this.desk.close();
    this.address = undefined;
    this.whereabouts.goToNew('start');
  }

  /** What this tab had open before the page was loaded anew. */
  private async reopen(): Promise<void> {
    if (!(await this.awaited(this.desk.reopen()))) return;
    if (this.whereabouts.route.view === 'start') this.whereabouts.refine({ view: 'cabin' });
    this.opened();
  }

  private openedWithoutAddress(view: 'cabin' | 'parts'): void {
    this.address = undefined;
    this.whereabouts.goToNew(view);
    this.opened();
  }

  private opened(): void {
    const { open } = this.desk;
    if (open === undefined) return;
    this.whereabouts.choices.beginWith(this.whereabouts.route);
    const { holds, clashes, open: undecided } = open.judgement.summary;
    this.say(`${open.cabin.name} is open: ${holds} ${holds === 1 ? 'joint holds' : 'joints hold'}, ${clashes} ${clashes === 1 ? 'clashes' : 'clash'}, ${undecided} ${undecided === 1 ? 'is' : 'are'} open.`);
  }

  private async awaited(work: Promise<boolean>): Promise<boolean> {
    const timer = setTimeout(() => this.showSlow(true), slowAfterMs);
    const taken = await work;
    clearTimeout(timer);
    this.showSlow(false);
    return taken;
  }

  private showSlow(isSlow: boolean): void {
    if (this.isSlow === isSlow) return;
    this.isSlow = isSlow;
    this.host.requestUpdate();
  }
}

/** As a person at this clock would write it, not as it is at Greenwich. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), String(now.getMonth() + 1).padStart(2, '0'), String(now.getDate()).padStart(2, '0')].join('-');
}
