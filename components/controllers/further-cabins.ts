import type { ReactiveControllerHost } from 'lit';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Issue } from '../../src/issue.ts';
import { ReportBridge } from '../../src/workers/report-bridge.ts';
import { openFile } from '../platform/open-save.ts';

/** Cabins that a view reads beside the open one, to plan with both: they are looked at and never changed. */
export class FurtherCabins {
  cabins: readonly Cabin[] = [];
  /** What was wrong with the last file. */
  issues: readonly Issue[] = [];

  constructor(host: ReactiveControllerHost) {
    this.host = host;
  }

  private readonly host: ReactiveControllerHost;
  private readonly bridge = new ReportBridge();

  /** Takes the cabin of a file, or of one that the user picks; refused with all its faults, and where it is one that is there already. */
  async add(open: Cabin, dropped?: File): Promise<boolean> {
    const file = dropped ?? (await openFile())?.file;
    if (file === undefined) return false;
    const reply = await this.bridge.ask({ kind: 'read', text: file, file: file.name });
    this.bridge.end();
    const known = reply.kind === 'read' && [open, ...this.cabins].some(({ id }) => id === reply.cabin.id);
    this.issues = reply.kind === 'refused' ? reply.issues
      : known ? [{ code: 'duplicate-id', severity: 'error', path: 'id', found: reply.cabin.id, expected: 'another colourway than those that are open', hint: 'Give each colourway an id of its own.' }] : [];
    if (reply.kind === 'read' && !known) this.cabins = [...this.cabins, reply.cabin];
    this.host.requestUpdate();
    return reply.kind === 'read' && !known;
  }

  remove(id: string): void {
    this.cabins = this.cabins.filter((cabin) => cabin.id !== id);
    this.host.requestUpdate();
  }
}
