import { lightNames } from '../../colour/lights.ts';
import type { Conditions, Instrument } from '../../readings/reading.ts';
import type { Cabin, Part, Specimen, Supplier, Zone } from '../cabin.ts';
import type { CabinIndex } from '../cabin-index.ts';
import { DerivedMap } from '../derived-map.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { nameHint } from '../schema/index.ts';

export interface PlacedSpecimen {
  readonly specimen: Draft<Specimen>;
  readonly path: string;
}

/** Items by id, as far as they are asked about. */
type Known<T> = Pick<ReadonlyMap<string, T>, 'get' | 'has' | 'keys'>;

/** Items by id. Where the list could not be read at all, that is the fault, and names into it are not faulted beside it. */
export type Register<T> = Known<T> & { readonly unreadable?: boolean };

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
  readonly specimenById: Known<Draft<Specimen>>;
  readonly masters: Known<Draft<Specimen>>;
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

function placedSpecimens(cabin: Draft<Cabin>): PlacedSpecimen[] {
  const specimens: PlacedSpecimen[] = [];
  for (const [partIndex, part] of entriesOf(cabin.parts)) {
    for (const [sourceIndex, source] of entriesOf(part.sources)) {
      for (const [index, specimen] of entriesOf(source.specimens)) {
        specimens.push({ specimen, path: `parts[${partIndex}].sources[${sourceIndex}].specimens[${index}]` });
      }
    }
  }
  return specimens;
}

const lightsOf = (cabin: Draft<Cabin>): ReadonlySet<string> => new Set([...lightNames, ...byId(cabin.lights).keys()]);
const filesOf = (cabin: Draft<Cabin>): ReadonlySet<string> => new Set(byId(cabin.files).keys());

/** For some parts and joints of a cabin whose index is known: all may be referred to, and the specimens are those of these parts. */
export const indexInside = (some: Draft<Cabin>, { zones, suppliers, instruments, conditions, parts, specimens, masters }: CabinIndex): ReferenceIndex => ({
  zones, suppliers, instruments, conditions, parts, masters, files: filesOf(some), lights: lightsOf(some), specimens: placedSpecimens(some),
  specimenById: new DerivedMap(specimens, ({ specimen }) => specimen),
});

export function indexReferences(cabin: Draft<Cabin>): ReferenceIndex {
  const specimens = [...entriesOf(cabin.masters).map(([index, specimen]): PlacedSpecimen => ({ specimen, path: `masters[${index}]` })), ...placedSpecimens(cabin)];
  const specimenById = byId(specimens.map(({ specimen }) => specimen));
  return {
    zones: register(cabin.zones),
    suppliers: register(cabin.suppliers),
    instruments: register(cabin.instruments),
    conditions: register(cabin.conditions),
    files: filesOf(cabin),
    lights: lightsOf(cabin),
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
