import type { CabinPatch } from '../actions/cabin-patch.ts';
import type { Part, Specimen } from '../cabin/cabin.ts';
import type { Reading } from '../readings/reading.ts';

/** Further readings of a specimen of a patch, by its places in the patch. */
export interface ReadingsPiece {
  readonly kind: 'piece';
  readonly list: 'parts' | 'masters';
  readonly item: number;
  readonly source: number;
  readonly specimen: number;
  readonly readings: readonly Reading[];
}

/** Readings of one record: small enough that writing it takes a few milliseconds. */
const most = 1000;

/** The patch with empty lists of readings once it holds enough of them; the others are told in pieces, for the other side to put back. */
export function inPieces(patch: CabinPatch, tell: (piece: ReadingsPiece) => void): CabinPatch {
  const { parts, masters } = patch.lists;
  let left = most;
  const spend = (specimen: Specimen, place: Omit<ReadingsPiece, 'kind' | 'readings'>): Specimen => {
    const { readings } = specimen;
    if (readings.length <= left) {
      left -= readings.length;
      return specimen;
    }
    for (let at = 0; at < readings.length; at += most) tell({ kind: 'piece', ...place, readings: readings.slice(at, at + most) });
    return { ...specimen, readings: [] };
  };
  return {
    ...patch,
    lists: {
      ...patch.lists,
      ...(parts === undefined ? {} : {
        parts: { ...parts, items: (parts.items as readonly Part[]).map((part, item) => ({
          ...part, sources: part.sources.map((source, at) => ({ ...source, specimens: source.specimens.map((specimen, place) => spend(specimen, { list: 'parts', item, source: at, specimen: place })) })),
        })) },
      }),
      ...(masters === undefined ? {} : {
        masters: { ...masters, items: (masters.items as readonly Specimen[]).map((specimen, item) => spend(specimen, { list: 'masters', item, source: 0, specimen: 0 })) },
      }),
    },
  };
}

/** The patch with its readings put back, which `inPieces` had taken out. The lists of the patch are filled in place. */
export function fromPieces(patch: CabinPatch, pieces: readonly ReadingsPiece[]): CabinPatch {
  for (const { list, item, source, specimen, readings } of pieces) {
    const items = patch.lists[list]?.items ?? [];
    const target = list === 'masters' ? (items[item] as Specimen | undefined) : (items[item] as Part | undefined)?.sources[source]?.specimens[specimen];
    (target?.readings as Reading[] | undefined)?.push(...readings);
  }
  return patch;
}
