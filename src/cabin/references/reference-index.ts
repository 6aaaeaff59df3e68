import { lightNames } from '../../colour/lights.ts';
import type { Conditions, Instrument } from '../../readings/reading.ts';
import type { Cabin, Part, Specimen, Supplier, Zone } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { nameHint } from '../schema/index.ts';

export interface PlacedSpecimen {
  readonly specimen: Draft<Specimen>;
  readonly path: string;
}

/** Items by id. Where the list could not be read at all, that is the fault, and names into it are not faulted beside it. */
export type Register<T> = ReadonlyMap<string, T> & { readonly unreadable: boolean };

/** The names that other places of a document may refer to; of names that occur twice, the first. */
export interface ReferenceIndex {
  readonly zones: Register<Draft<Zone>>;
  readonly suppliers: Register<Draft<Supplier>>;
  readonly instruments: Register<Draft<Instrument>>;
  readonly conditions: Register<Draft<Conditions>>;
  readonly files: ReadonlySet<string>;
  readonly lights: ReadonlySet<string>;
  readonly parts: Register<Draft<Part>>;
  /** Every specimen of the document: recorded masters, then those of the sources. */
  readonly specimens: readonly PlacedSpecimen[];
  readonly specimenById: ReadonlyMap<string, Draft<Specimen>>;
  readonly masters: ReadonlyMap<string, Draft<Specimen>>;
}

type Named = { readonly id?: string };

/** The items of a list that may be missing or have gaps, with their indices. */
export function entriesOf<T>(list: readonly (T | undefined)[] | undefined): [number, T][] {
  const entries: [number, T][] = [];
  list?.forEach((item, index) => {
    if (item !== undefined) entries.push([index, item]);
  });
  return entries;
}

function byId<T extends Named>(list: readonly (T | undefined)[] | undefined): Map<string, T> {
  const map = new Map<string, T>();
  for (const [, item] of entriesOf(list)) if (item.id !== undefined && !map.has(item.id)) map.set(item.id, item);
  return map;
}

const register = <T extends Named>(list: readonly (T | undefined)[] | undefined): Register<T> => Object.assign(byId(list), { unreadable: list === undefined });

/** The tiles of the document, placed like specimens: their readings are checked as those of a specimen are. */
export const placedTiles = (cabin: Draft<Cabin>): PlacedSpecimen[] =>
  entriesOf(cabin.tileSets).flatMap(([set, { tiles }]) =>
    entriesOf(tiles).map(([index, { readings }]) => ({ specimen: { readings }, path: `tileSets[${set}].tiles[${index}]` })));

export function indexReferences(cabin: Draft<Cabin>): ReferenceIndex {
  const specimens: PlacedSpecimen[] = entriesOf(cabin.masters).map(([index, specimen]) => ({ specimen, path: `masters[${index}]` }));
  for (const [partIndex, part] of entriesOf(cabin.parts)) {
    for (const [sourceIndex, source] of entriesOf(part.sources)) {
      for (const [index, specimen] of entriesOf(source.specimens)) {
        specimens.push({ specimen, path: `parts[${partIndex}].sources[${sourceIndex}].specimens[${index}]` });
      }
    }
  }
  const specimenById = byId(specimens.map(({ specimen }) => specimen));
  return {
    zones: register(cabin.zones),
    suppliers: register(cabin.suppliers),
    instruments: register(cabin.instruments),
    conditions: register(cabin.conditions),
    files: new Set(byId(cabin.files).keys()),
    lights: new Set([...lightNames, ...byId(cabin.lights).keys()]),
    parts: register(cabin.parts),
    specimens,
    specimenById,
    masters: new Map([...specimenById].filter(([, specimen]) => specimen.kind === 'master')),
  };
}

interface KnownNames {
  has(name: string): boolean;
  keys(): Iterable<string>;
  readonly unreadable?: boolean;
}

/** Adds the fault of a name that is not among the known ones; a missing name is another check's fault. */
export function checkKnown(faults: Faults, code: string, name: string | undefined, known: KnownNames, expected: string, path: string): boolean {
  if (name === undefined || known.unreadable === true) return false;
  if (known.has(name)) return true;
  const hint = nameHint(name, known.keys());
  faults.add(code, { expected, found: JSON.stringify(name), ...(hint === undefined ? {} : { hint }) }, path);
  return false;
}
