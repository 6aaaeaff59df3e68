import type { Cabin, SourceFile, UserLight } from '../cabin/cabin.ts';
import { lightNames } from '../colour/lights.ts';
import type { FoundConditions, ReadingRecord, ReadingSet } from '../formats/reading-set.ts';
import { isPartialGeometry } from '../formats/reading-questions.ts';
import type { Conditions, Instrument, InstrumentKind } from '../readings/reading.ts';
import { sameValue } from './edit.ts';
import type { ImportMapping } from './import-mapping.ts';
import { freeId, idOfName, idsOf } from './next-id.ts';

/** The registers of a cabin with what a file adds to them. */
export interface ImportRegisters {
  readonly instruments: readonly Instrument[];
  readonly conditions: readonly Conditions[];
  readonly lights: readonly UserLight[];
  readonly files: readonly SourceFile[];
  readonly file: SourceFile | undefined;
  /** Id of the conditions of a record; they were made for every record of the set. */
  conditionsOf(record: ReadingRecord): string;
}

const isColour = ({ data }: ReadingRecord): boolean => data.quantity !== 'gloss' && data.quantity !== 'texture';

/** Finds or makes the instruments, conditions, lights and the file of a set; what the cabin has already is used again. */
export function importRegisters(cabin: Cabin, set: ReadingSet, mapping: ImportMapping): ImportRegisters {
  const instruments = [...cabin.instruments];
  const conditions = [...cabin.conditions];
  const made = new Map<string, string>();
  for (const record of set.records) {
    const key = keyOf(record);
    if (made.has(key)) continue;
    const found = set.conditions[record.conditions] ?? {};
    const instrument = instrumentFor(found, record, set, mapping, instruments);
    made.set(key, conditionsFor(found, instrument, isColour(record), conditions));
  }
  const file = fileFor(cabin, set);
  return {
    instruments, conditions, file,
    lights: [...(cabin.lights ?? []), ...newLights(cabin.lights ?? [], set.lights)],
    files: [...(cabin.files ?? []), ...(file === undefined ? [] : [file])],
    conditionsOf: (record) => made.get(keyOf(record)) ?? '',
  };
}

/** Gloss and texture have no geometry of colour, so they do not share the conditions of a spectrum of their row. */
const keyOf = (record: ReadingRecord): string => `${record.conditions} ${isColour(record) ? 'colour' : 'surface'}`;

const kinds: Readonly<Record<ReadingRecord['data']['quantity'], InstrumentKind>> = {
  spectrum: 'spectrophotometer', cielab: 'spectrophotometer', difference: 'spectrophotometer', gloss: 'glossmeter', texture: 'areal profiler',
};

function instrumentFor(found: FoundConditions, record: ReadingRecord, set: ReadingSet, mapping: ImportMapping, instruments: Instrument[]): string {
  const name = found.instrument ?? '';
  const mapped = mapping.instruments !== undefined && Object.hasOwn(mapping.instruments, name) ? mapping.instruments[name] : undefined;
  if (mapped !== undefined) return mapped;
  const known = instruments.find((one) => (one.id === name || one.name === name) && (one.serial === undefined || found.serial === undefined || one.serial === found.serial));
  if (known !== undefined) return known.id;
  // An instrument that took colours as well is named for that.
  const colour = set.records.find((other) => isColour(other) && set.conditions[other.conditions]?.instrument === name);
  const id = freeId(idOfName(name, 'instrument'), idsOf(instruments));
  instruments.push({
    id, name, kind: kinds[(colour ?? record).data.quantity], ...(found.serial === undefined ? {} : { serial: found.serial }), ...(found.calibratedOn === undefined ? {} : { calibratedOn: found.calibratedOn }),
  });
  return id;
}

function conditionsFor(found: FoundConditions, instrument: string, colour: boolean, conditions: Conditions[]): string {
  const { geometry, apertureMm, uv, aspecularDeg, backing, temperatureC } = found;
  const fields = Object.fromEntries(Object.entries({
    instrument, ...(colour ? { geometry: geometry === undefined || isPartialGeometry(geometry) ? 'unknown' as const : geometry, apertureMm, uv, aspecularDeg, backing } : {}), temperatureC,
  }).filter(([, value]) => value !== undefined)) as Omit<Conditions, 'id'>;
  const known = conditions.find((one) => sameButId(one, { id: '', ...fields }));
  if (known !== undefined) return known.id;
  const id = freeId(idOfName([instrument, fields.geometry].filter((word) => word !== undefined).join(' '), 'conditions'), idsOf(conditions));
  conditions.push({ id, ...fields });
  return id;
}

const sameButId = (a: { readonly id: string }, b: { readonly id: string }): boolean => sameValue({ ...a, id: '' }, { ...b, id: '' });

/** Lights that the cabin does not have yet, by free ids. */
function newLights(known: readonly UserLight[], found: readonly UserLight[]): UserLight[] {
  const added: UserLight[] = [];
  for (const light of found) {
    const all = [...known, ...added];
    if (all.some((one) => sameButId(one, light))) continue;
    added.push({ ...light, id: freeId(light.id, [...lightNames, ...idsOf(all)]) });
  }
  return added;
}

function fileFor(cabin: Cabin, set: ReadingSet): SourceFile | undefined {
  if (set.sha256 === undefined) return undefined;
  const name = set.file ?? 'readings';
  return { id: freeId(idOfName(name.replace(/\.[a-z0-9]{1,5}$/iu, ''), 'file'), idsOf(cabin.files)), name, sha256: set.sha256 };
}
