import type { Issue } from '../../src/issue.ts';
import type { ReportBridge } from '../../src/workers/report-bridge.ts';
import type { AgainstState } from '../../src/workers/report-protocol.ts';
import { keepFile, longestKept } from '../platform/file-memory.ts';
import { openFile } from '../platform/open-save.ts';

/** A view that sets the open cabin against another one. */
interface Comparing {
  against: AgainstState | undefined;
  issues: readonly Issue[];
}

/** Gives a view the cabin to compare with, from the file or one that the user picks: read in the worker, refused with all its faults. Nothing happens where the user turns away. */
export async function takeComparedCabin(view: Comparing, bridge: ReportBridge, dropped?: File): Promise<void> {
  const file = dropped ?? (await openFile())?.file;
  if (file === undefined) return;
  const reply = await bridge.ask({ kind: 'read', text: file, file: file.name });
  view.issues = reply.kind === 'refused' ? reply.issues : [];
  if (reply.kind !== 'read') return;
  // A long text is not even read for it.
  keepFile('compared', file.size > longestKept ? undefined : { name: file.name, text: await file.text() });
  view.against = { cabin: reply.cabin, file: { name: file.name, sha256: reply.sha256 } };
}
