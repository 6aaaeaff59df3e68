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
  const made = new LazyIndex(cabin);
  indices.set(cabin, made);
  return made;
}

const byId = <T extends { readonly id: string }>(items: readonly T[]): Map<string, T> => new Map(items.map((item) => [item.id, item]));

/** Each map is made when it is first asked for: after most edits few of them are. */
class LazyIndex implements CabinIndex {
  private readonly cabin: Cabin;
  private readonly made: { -readonly [K in keyof CabinIndex]?: CabinIndex[K] } = {};

  constructor(cabin: Cabin) {
    this.cabin = cabin;
  }

  get parts(): CabinIndex['parts'] {
    return (this.made.parts ??= byId(this.cabin.parts));
  }

  get joints(): CabinIndex['joints'] {
    return (this.made.joints ??= byId(this.cabin.joints));
  }

  get zones(): CabinIndex['zones'] {
    return (this.made.zones ??= byId(this.cabin.zones));
  }

  get suppliers(): CabinIndex['suppliers'] {
    return (this.made.suppliers ??= byId(this.cabin.suppliers));
  }

  get instruments(): CabinIndex['instruments'] {
    return (this.made.instruments ??= byId(this.cabin.instruments));
  }

  get conditions(): CabinIndex['conditions'] {
    return (this.made.conditions ??= byId(this.cabin.conditions));
  }

  get specimens(): CabinIndex['specimens'] {
    if (this.made.specimens !== undefined) return this.made.specimens;
    const specimens = new Map<string, OwnedSpecimen>((this.cabin.masters ?? []).map((specimen) => [specimen.id, { specimen }]));
    for (const part of this.cabin.parts) for (const entry of ownedBy(part)) specimens.set(entry.specimen.id, entry);
    return (this.made.specimens = specimens);
  }

  get masters(): CabinIndex['masters'] {
    if (this.made.masters !== undefined) return this.made.masters;
    const masters = new Map<string, Specimen>();
    for (const specimen of this.cabin.masters ?? []) if (specimen.kind === 'master') masters.set(specimen.id, specimen);
    for (const part of this.cabin.parts) for (const { specimen } of ownedBy(part)) if (specimen.kind === 'master') masters.set(specimen.id, specimen);
    return (this.made.masters = masters);
  }

  get mirrors(): CabinIndex['mirrors'] {
    if (this.made.mirrors !== undefined) return this.made.mirrors;
    const mirrors = new Map<string, Part>();
    for (const part of this.cabin.parts) {
      const partner = part.mirrorOf === undefined ? undefined : this.parts.get(part.mirrorOf);
      if (partner === undefined) continue;
      mirrors.set(part.id, partner);
      mirrors.set(partner.id, part);
    }
    return (this.made.mirrors = mirrors);
  }
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
