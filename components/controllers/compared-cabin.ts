import type { Issue } from '../../src/issue.ts';
import type { ReportBridge } from '../../src/workers/report-bridge.ts';
import type { AgainstState } from '../../src/workers/report-protocol.ts';
import { keepFile, keptFile, longestKept } from '../platform/file-memory.ts';
import { openFile } from '../platform/open-save.ts';

/** A view that sets the open cabin against another one. */
interface Comparing {
  against: AgainstState | undefined;
  issues: readonly Issue[];
  requestUpdate(): void;
}

/** In the address: what a cabin is set against is the cabin of a file. */
export const ofFile = 'file';

/**
 * The cabin of a file that a view sets the open one against. Its name cannot open it again, so the address says only that it is of a file; a
 * page that is loaded anew takes up again what this tab kept of it.
 */
export class ComparedCabin {
  /** `place` is the name that this tab keeps the file by. */
  constructor(view: Comparing, bridge: ReportBridge, place: string) {
    this.view = view;
    this.bridge = bridge;
    this.place = place;
  }

  private readonly view: Comparing;
  private readonly bridge: ReportBridge;
  private readonly place: string;
  /** The file of the address was looked for. */
  private searched = false;
  /** The address asks for the cabin of a file that this tab does not have. */
  absent = false;

  /** Gives the view the cabin of the file or of one that the user picks: read in the worker, refused with all its faults. Nothing happens where the user turns away. */
  async take(dropped?: File): Promise<void> {
    const file = dropped ?? (await openFile())?.file;
    if (file === undefined) return;
    const reply = await this.bridge.ask({ kind: 'read', text: file, file: file.name });
    this.view.issues = reply.kind === 'refused' ? reply.issues : [];
    this.absent = reply.kind !== 'read' && this.view.against === undefined;
    if (reply.kind !== 'read') return;
    // A long text is not even read for it.
    keepFile(this.place, file.size > longestKept ? undefined : { name: file.name, text: await file.text() });
    this.view.against = { cabin: reply.cabin, file: { name: file.name, sha256: reply.sha256 } };
  }

  /** Looks once for the file of the address, as long as that asks for one. */
  follow(asked: boolean): void {
    if (!asked) this.searched = false;
    if (!asked || this.searched || this.view.against !== undefined) return;
    this.searched = true;
    const file = keptFile(this.place);
    this.absent = file === undefined;
    if (file === undefined) this.view.requestUpdate();
    else void this.take(file);
  }
}
