import { cabinPatch, patchCabin } from '../actions/cabin-patch.ts';
import type { CabinPatch } from '../actions/cabin-patch.ts';
import type { Cabin } from '../cabin/cabin.ts';
import type { ImportSource } from './imported-again.ts';
import { fromPieces, inPieces } from './patch-pieces.ts';
import type { ReadingsPiece } from './patch-pieces.ts';

/**
 * One entry of the journal of a document: a change, which counts from the document that all entries before it give. A change with very
 * many readings is preceded by these in pieces of the same batch; without the change, as when the page was killed in between, they say nothing.
 * An import stands for such a change while that is written, by the files it was made of.
 */
export type JournalEntry =
  | { readonly kind: 'readings'; readonly batch: number; readonly piece: ReadingsPiece }
  | { readonly kind: 'change'; readonly batch: number; readonly patch: CabinPatch }
  | { readonly kind: 'import'; readonly source: ImportSource };

/** The entries that lead from one document to another that shares what did not change; the last of them is the change. */
export function journalOf(before: Cabin, after: Cabin, batch: number): readonly JournalEntry[] {
  const entries: JournalEntry[] = [];
  const patch = inPieces(cabinPatch(before, after), (piece) => entries.push({ kind: 'readings', batch, piece }));
  return [...entries, { kind: 'change', batch, patch }];
}

/** The document that the entries lead to; `again` takes an import over once more. The lists of the entries are filled in place: they must be nobody else's. */
export async function replayed(cabin: Cabin, entries: readonly JournalEntry[], again: (cabin: Cabin, source: ImportSource) => Promise<Cabin>): Promise<Cabin> {
  const pieces = new Map<number, ReadingsPiece[]>();
  let present = cabin;
  for (const entry of entries) {
    if (entry.kind === 'readings') {
      const known = pieces.get(entry.batch);
      if (known === undefined) pieces.set(entry.batch, [entry.piece]);
      else known.push(entry.piece);
    } else if (entry.kind === 'import') present = await again(present, entry.source);
    else {
      present = patchCabin(present, fromPieces(entry.patch, pieces.get(entry.batch) ?? []));
      pieces.delete(entry.batch);
    }
  }
  return present;
}
