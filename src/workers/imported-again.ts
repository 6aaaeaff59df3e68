import { patchCabin } from '../actions/cabin-patch.ts';
import type { ImportChoices } from '../actions/plan-imports.ts';
import type { Cabin } from '../cabin/cabin.ts';
import type { RequestSheet } from '../report/requests/request-sheet.ts';
import { digestOf } from './digest-of.ts';
import { ImportSession } from './import-session.ts';

/** What an import was made of: its files in their order, what was chosen for each, and the sheets that they answer. */
export interface ImportSource {
  readonly files: readonly { readonly name: string; readonly blob: Pick<Blob, 'arrayBuffer'>; readonly choices: ImportChoices }[];
  readonly sheets: readonly RequestSheet[];
}

/** The cabin with the same files taken over as before; the cabin itself where they cannot be read any more. */
export async function importedAgain(cabin: Cabin, { files, sheets }: ImportSource): Promise<Cabin> {
  const session = new ImportSession();
  const quiet = (): void => undefined;
  const keyOf = (place: number): string => `file-${place}`;
  await session.answer({ kind: 'cabin', cabin }, quiet, digestOf);
  for (const [place, { name, blob }] of files.entries()) await session.answer({ kind: 'read', file: { key: keyOf(place), name, blob } }, quiet, digestOf);
  const taken = await session.answer({ kind: 'take', files: files.map(({ choices }, place) => ({ key: keyOf(place), choices })), sheets }, quiet, digestOf);
  return taken.kind === 'taken' ? patchCabin(cabin, taken.patch) : cabin;
}
