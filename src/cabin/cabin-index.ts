import type { Conditions, Instrument } from '../readings/reading.ts';
import type { Cabin, Joint, Part, Specimen, Supplier, Zone } from './cabin.ts';

/** A specimen with the place it has in the cabin; recorded masters have neither part nor source. */
export interface OwnedSpecimen {
  readonly specimen: Specimen;
  readonly part?: string;
  readonly source?: string;
}

/** The items of a cabin by their ids. */
export interface CabinIndex {
  readonly parts: ReadonlyMap<string, Part>;
  readonly joints: ReadonlyMap<string, Joint>;
  readonly zones: ReadonlyMap<string, Zone>;
  readonly suppliers: ReadonlyMap<string, Supplier>;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly conditions: ReadonlyMap<string, Conditions>;
  readonly specimens: ReadonlyMap<string, OwnedSpecimen>;
  /** Specimens of kind `master`, recorded in the cabin or under a source. */
  readonly masters: ReadonlyMap<string, Specimen>;
  /** The other hand of a part, whichever of the two says so. */
  readonly mirrors: ReadonlyMap<string, Part>;
}

const indices = new WeakMap<Cabin, CabinIndex>();

/** The index of a cabin, made once for each document; documents are immutable. */
export function cabinIndex(cabin: Cabin): CabinIndex {
  const known = indices.get(cabin);
  if (known !== undefined) return known;
  const made = makeIndex(cabin);
  indices.set(cabin, made);
  return made;
}

const byId = <T extends { readonly id: string }>(items: readonly T[]): Map<string, T> => new Map(items.map((item) => [item.id, item]));

function makeIndex(cabin: Cabin): CabinIndex {
  const parts = byId(cabin.parts);
  const specimens = new Map<string, OwnedSpecimen>();
  const masters = new Map<string, Specimen>();
  const add = (entry: OwnedSpecimen): void => {
    specimens.set(entry.specimen.id, entry);
    if (entry.specimen.kind === 'master') masters.set(entry.specimen.id, entry.specimen);
  };
  for (const specimen of cabin.masters ?? []) add({ specimen });
  for (const part of cabin.parts) ownedBy(part).forEach(add);
  const mirrors = new Map<string, Part>();
  for (const part of cabin.parts) {
    const partner = part.mirrorOf === undefined ? undefined : parts.get(part.mirrorOf);
    if (partner === undefined) continue;
    mirrors.set(part.id, partner);
    mirrors.set(partner.id, part);
  }
  return {
    parts,
    joints: byId(cabin.joints),
    zones: byId(cabin.zones),
    suppliers: byId(cabin.suppliers),
    instruments: byId(cabin.instruments),
    conditions: byId(cabin.conditions),
    specimens,
    masters,
    mirrors,
  };
}

const ownedSpecimens = new WeakMap<Part, readonly OwnedSpecimen[]>();

/** The specimens of a part, listed once for each part, since an edit leaves most parts as they are. */
function ownedBy(part: Part): readonly OwnedSpecimen[] {
  const known = ownedSpecimens.get(part);
  if (known !== undefined) return known;
  const made = part.sources.flatMap((source) => source.specimens.map((specimen) => ({ specimen, part: part.id, source: source.id })));
  ownedSpecimens.set(part, made);
  return made;
}
