import type { Conditions, Instrument } from '../readings/reading.ts';
import type { CabinStep } from './cabin-step.ts';
import type { Cabin, Joint, Part, Specimen, Supplier, Zone } from './cabin.ts';
import { DerivedMap } from './derived-map.ts';

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
  /** Places in the document's list. */
  readonly partPlaces: ReadonlyMap<string, number>;
  readonly jointPlaces: ReadonlyMap<string, number>;
  /** Places of the joints that a part has, in the order of the document; none for a part that has no joint. */
  readonly jointsOfParts: ReadonlyMap<string, readonly number[]>;
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

const indices = new WeakMap<Cabin, LazyIndex>();

/** The index of a cabin, made once for each document; documents are immutable. */
export function cabinIndex(cabin: Cabin): CabinIndex {
  const known = indices.get(cabin);
  if (known !== undefined) return known;
  const made = new LazyIndex(cabin);
  indices.set(cabin, made);
  return made;
}

/** Lets the index of a document begin with what that of the one before it knows and the edit between them did not touch. */
export function carryIndex(before: Cabin, after: Cabin, step: CabinStep): void {
  const known = indices.get(before);
  if (known !== undefined && !indices.has(after)) indices.set(after, new LazyIndex(after, known.standingAfter(after, step)));
}

const byId = <T extends { readonly id: string }>(items: readonly T[]): Map<string, T> => new Map(items.map((item) => [item.id, item]));
const placesOf = (items: readonly { readonly id: string }[]): Map<string, number> => new Map(items.map(({ id }, place) => [id, place]));

/** What an index is made of; a document shares it with those after it for as long as it stands. */
interface Made {
  zones?: CabinIndex['zones'];
  suppliers?: CabinIndex['suppliers'];
  instruments?: CabinIndex['instruments'];
  conditions?: CabinIndex['conditions'];
  masters?: CabinIndex['masters'];
  partPlaces?: ReadonlyMap<string, number>;
  jointPlaces?: ReadonlyMap<string, number>;
  /** Place of the part that has the specimen; for recorded masters the complement of their own place. */
  specimenOwners?: ReadonlyMap<string, number>;
  otherHands?: ReadonlyMap<string, string>;
  jointsOfParts?: ReadonlyMap<string, readonly number[]>;
}

/** Each map is made when it is first asked for: after most edits few of them are. */
class LazyIndex implements CabinIndex {
  private readonly cabin: Cabin;
  private readonly made: Made;

  constructor(cabin: Cabin, made: Made = {}) {
    this.cabin = cabin;
    this.made = made;
  }

  /** As much of this as holds for the document after an edit. */
  standingAfter(after: Cabin, { parts, joints, fields }: CabinStep): Made {
    const { cabin: before, made } = this;
    const registers = (['zones', 'suppliers', 'instruments', 'conditions'] as const).filter((name) => !fields.includes(name));
    const changed = parts.map((place) => [before.parts[place], after.parts[place]] as const);
    const sameSpecimens = !fields.includes('masters') && changed.every(([old, part]) => sameIds(ownedBy(old), ownedBy(part)));
    const noMasters = !fields.includes('masters') && !changed.flat().some((part) => ownedBy(part).some(({ specimen }) => specimen.kind === 'master'));
    const sameHands = changed.every(([old, part]) => old.mirrorOf === part.mirrorOf);
    const sameEnds = joints.every((place) => before.joints[place].parts.every((part, side) => part === after.joints[place].parts[side]));
    return {
      ...Object.fromEntries(registers.map((name) => [name, made[name]])),
      partPlaces: made.partPlaces, jointPlaces: made.jointPlaces,
      ...(sameSpecimens ? { specimenOwners: made.specimenOwners } : {}),
      ...(noMasters ? { masters: made.masters } : {}),
      ...(sameHands ? { otherHands: made.otherHands } : {}),
      ...(sameEnds ? { jointsOfParts: made.jointsOfParts } : {}),
    };
  }

  get partPlaces(): CabinIndex['partPlaces'] {
    return (this.made.partPlaces ??= placesOf(this.cabin.parts));
  }

  get jointPlaces(): CabinIndex['jointPlaces'] {
    return (this.made.jointPlaces ??= placesOf(this.cabin.joints));
  }

  get parts(): CabinIndex['parts'] {
    return new DerivedMap(this.partPlaces, (place) => this.cabin.parts[place]);
  }

  get joints(): CabinIndex['joints'] {
    return new DerivedMap(this.jointPlaces, (place) => this.cabin.joints[place]);
  }

  get jointsOfParts(): CabinIndex['jointsOfParts'] {
    if (this.made.jointsOfParts !== undefined) return this.made.jointsOfParts;
    const places = new Map<string, number[]>(this.cabin.parts.map(({ id }) => [id, []]));
    this.cabin.joints.forEach((joint, place) => {
      for (const part of new Set(joint.parts)) places.get(part)?.push(place);
    });
    return (this.made.jointsOfParts = places);
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
    const { parts, masters = [] } = this.cabin;
    return new DerivedMap(this.specimenOwners, (place, id) =>
      (place < 0 ? { specimen: masters[~place] } : ownedBy(parts[place]).find(({ specimen }) => specimen.id === id)!));
  }

  private get specimenOwners(): ReadonlyMap<string, number> {
    if (this.made.specimenOwners !== undefined) return this.made.specimenOwners;
    const owners = new Map<string, number>((this.cabin.masters ?? []).map(({ id }, place) => [id, ~place]));
    this.cabin.parts.forEach((part, place) => {
      for (const { specimen } of ownedBy(part)) owners.set(specimen.id, place);
    });
    return (this.made.specimenOwners = owners);
  }

  get masters(): CabinIndex['masters'] {
    if (this.made.masters !== undefined) return this.made.masters;
    const masters = new Map<string, Specimen>();
    for (const specimen of this.cabin.masters ?? []) if (specimen.kind === 'master') masters.set(specimen.id, specimen);
    for (const part of this.cabin.parts) for (const { specimen } of ownedBy(part)) if (specimen.kind === 'master') masters.set(specimen.id, specimen);
    return (this.made.masters = masters);
  }

  get mirrors(): CabinIndex['mirrors'] {
    const { parts } = this;
    return new DerivedMap(this.otherHands, (other) => parts.get(other)!);
  }

  private get otherHands(): ReadonlyMap<string, string> {
    if (this.made.otherHands !== undefined) return this.made.otherHands;
    const hands = new Map<string, string>();
    for (const { id, mirrorOf } of this.cabin.parts) {
      if (mirrorOf === undefined || !this.partPlaces.has(mirrorOf)) continue;
      hands.set(id, mirrorOf);
      hands.set(mirrorOf, id);
    }
    return (this.made.otherHands = hands);
  }
}

const sameIds = (some: readonly OwnedSpecimen[], others: readonly OwnedSpecimen[]): boolean =>
  some.length === others.length && some.every(({ specimen }, index) => specimen.id === others[index].specimen.id);

const ownedSpecimens = new WeakMap<Part, readonly OwnedSpecimen[]>();

/** The specimens of a part, listed once for each part, since an edit leaves most parts as they are. */
function ownedBy(part: Part): readonly OwnedSpecimen[] {
  const known = ownedSpecimens.get(part);
  if (known !== undefined) return known;
  const made = part.sources.flatMap((source) => source.specimens.map((specimen) => ({ specimen, part: part.id, source: source.id })));
  ownedSpecimens.set(part, made);
  return made;
}
