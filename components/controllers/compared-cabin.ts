import type { Issue } from '../../src/issue.ts';
import type { ReportBridge } from '../../src/workers/report-bridge.ts';
import type { AgainstState } from '../../src/workers/report-protocol.ts';
import { openFile } from '../platform/open-save.ts';

/** Another cabin that the user picks to compare with: read in the worker, refused with all its faults. `undefined` where the user turns away. */
export async function pickComparedCabin(bridge: ReportBridge): Promise<{ readonly against: AgainstState } | { readonly issues: readonly Issue[] } | undefined> {
  const picked = await openFile();
  return picked === undefined ? undefined : readComparedCabin(bridge, picked.file);
}

export async function readComparedCabin(bridge: ReportBridge, file: File): Promise<{ readonly against: AgainstState } | { readonly issues: readonly Issue[] }> {
  const reply = await bridge.ask({ kind: 'read', text: await file.text(), file: file.name });
  if (reply.kind === 'refused') return { issues: reply.issues };
  return reply.kind === 'read' ? { against: { cabin: reply.cabin, file: { name: file.name, sha256: reply.sha256 } } } : { issues: [] };
}
