import type { Cabin, Part, Source, Specimen, SpecimenKind } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { checkChanges } from '../cabin/check-changes.ts';
import { answerQuestions } from '../formats/answer-questions.ts';
import type { FoundData, ReadingRecord, ReadingSet } from '../formats/reading-set.ts';
import type { Issue, Outcome } from '../issue.ts';
import { hasErrors } from '../issue.ts';
import type { Reading } from '../readings/reading.ts';
import type { ImportMapping, Placement } from './import-mapping.ts';
import { placer } from './import-mapping.ts';
import type { ImportRegisters } from './import-registers.ts';
import { importRegisters } from './import-registers.ts';
import { freeId } from './next-id.ts';

export interface ImportResult {
  readonly cabin: Cabin;
  /** Id of the file in the cabin, where its digest is known. */
  readonly file: string | undefined;
  readonly readings: number;
  /** Readings that the mapping leaves out. */
  readonly skipped: number;
  readonly newSpecimens: readonly string[];
  readonly newInstruments: readonly string[];
  readonly newLights: readonly string[];
}

/**
 * Takes the readings of one file over into a cabin: the whole file or nothing. Required questions must be answered by the mapping,
 * every reading must have a place, and the cabin must be valid with them; else there are issues and no value. A file that was read
 * before, by its digest, is refused. Readings are added behind those that are there; nothing is overwritten.
 */
export function importReadings(cabin: Cabin, found: ReadingSet, mapping: ImportMapping = {}): Outcome<ImportResult> {
  const refused = (issues: readonly Issue[]): Outcome<ImportResult> => ({ value: undefined, issues: issues.map((issue) => (found.file === undefined ? issue : { file: found.file, ...issue })) });
  const before = cabin.files?.find(({ sha256 }) => sha256 === found.sha256);
  if (before !== undefined) return refused([{ code: 'file-already-read', severity: 'error', found: JSON.stringify(before.name), expected: 'a file that is not in the cabin', hint: 'Its readings would count twice.' }]);
  const answered = answerQuestions(found, mapping.answers ?? {});
  const set = answered.value;
  if (set === undefined) return refused(answered.issues);
  const open = set.questions.filter(({ required }) => required).map(({ id, text, line, choices }): Issue => ({
    code: 'question-open', severity: 'error', path: id, ...(line === undefined ? {} : { line }), found: 'no answer', expected: choices === undefined ? 'an answer' : `one of ${choices.join(', ')}`, hint: text,
  }));
  const places = placer(cabin, mapping);
  const placed = set.records.map((record) => ({ record, place: places.place(record) }));
  const issues = [...open, ...places.issues];
  if (hasErrors(issues)) return refused(issues);

  const registers = importRegisters(cabin, set, mapping);
  const specimens = gatherSpecimens(cabin, placed, registers, mapping, issues);
  if (hasErrors(issues)) return refused(issues);
  const after = withSpecimens(cabin, registers, specimens, mapping.newSpecimens ?? 'plaque');
  const checked = checkChanges(cabin, after);
  if (checked.value === undefined) return refused([...issues, ...checked.issues]);
  const added = [...specimens.values()];
  return {
    value: {
      cabin: checked.value, file: registers.file?.id, readings: added.reduce((sum, { readings }) => sum + readings.length, 0), skipped: placed.filter(({ place }) => place?.at === 'nowhere').length,
      newSpecimens: added.filter(({ known }) => known === undefined).map(({ id }) => id),
      newInstruments: registers.instruments.slice(cabin.instruments.length).map(({ id }) => id),
      newLights: registers.lights.slice(cabin.lights?.length ?? 0).map(({ id }) => id),
    },
    issues: [...issues, ...checked.issues],
  };
}

/** Readings that one specimen gets. */
interface Gathered {
  readonly id: string;
  readonly known: Specimen | undefined;
  readonly place: Exclude<Placement, { at: 'nowhere' }>;
  readonly first: ReadingRecord;
  readonly readings: Reading[];
}

function gatherSpecimens(cabin: Cabin, placed: readonly { record: ReadingRecord; place: Placement | undefined }[], registers: ImportRegisters, mapping: ImportMapping, issues: Issue[]): Map<string, Gathered> {
  const taken = new Set(cabinIndex(cabin).specimens.keys());
  const gathered = new Map<string, Gathered>();
  const masters = new Map<string, string>();
  // Masters first, since differences of the same file may refer to them.
  const ordered = [...placed.filter(({ place }) => place?.at === 'masters'), ...placed.filter(({ place }) => place?.at === 'source')];
  for (const { record, place } of ordered) {
    if (place === undefined || place.at === 'nowhere') continue;
    const key = place.at === 'masters' ? JSON.stringify([place.specimen]) : JSON.stringify([place.part.id, place.source.id, place.specimen, place.stage ?? null]);
    let entry = gathered.get(key);
    if (entry === undefined) {
      const known = knownSpecimen(cabin, place);
      const id = known?.id ?? newId(place, taken);
      taken.add(id);
      entry = { id, known, place, first: record, readings: [] };
      gathered.set(key, entry);
      if (place.at === 'masters') masters.set(record.specimen, id);
      else if (known === undefined && (place.kind ?? mapping.newSpecimens) === undefined) {
        issues.push({
          code: 'specimen-kind-needed', severity: 'error', ...(record.line === undefined ? {} : { line: record.line }), found: JSON.stringify(record.specimen.slice(0, 60)),
          expected: 'plaque, tool part, series part or boundary sample', hint: 'The cabin does not have this specimen, and the file does not say what it is.',
        });
      }
    }
    const reading = readingOf(record, registers, masterOf(cabin, record, masters, mapping, issues), entry);
    entry.readings.push(reading);
  }
  return gathered;
}

function knownSpecimen(cabin: Cabin, place: Exclude<Placement, { at: 'nowhere' }>): Specimen | undefined {
  if (place.at === 'masters') return cabinIndex(cabin).masters.get(place.specimen);
  return place.source.specimens.find(({ id, exposure }) => id === place.specimen && (place.stage === undefined || (exposure?.stage ?? 'new') === place.stage));
}

/** The file's own name where it is free; else with the part, and the stage, before a number. */
function newId(place: Exclude<Placement, { at: 'nowhere' }>, taken: ReadonlySet<string>): string {
  if (!taken.has(place.specimen)) return place.specimen;
  const longer = place.at === 'masters' ? `${place.specimen} master` : `${place.part.id} ${place.specimen}${place.stage === undefined || place.stage === 'new' ? '' : ` ${place.stage}`}`;
  return freeId(longer.slice(0, 180), taken);
}

/** Id of the master that a difference refers to. */
function masterOf(cabin: Cabin, { data, line }: ReadingRecord, added: ReadonlyMap<string, string>, mapping: ImportMapping, issues: Issue[]): string {
  if (data.quantity !== 'difference') return '';
  const name = data.master ?? '';
  const mapped = mapping.specimens !== undefined && Object.hasOwn(mapping.specimens, name) ? mapping.specimens[name]?.specimen : undefined;
  const id = mapped ?? added.get(name) ?? name;
  if (!cabinIndex(cabin).masters.has(id) && added.get(name) !== id && !issues.some((issue) => issue.code === 'unknown-master' && issue.found === JSON.stringify(name))) {
    issues.push({ code: 'unknown-master', severity: 'error', ...(line === undefined ? {} : { line }), found: JSON.stringify(name), expected: 'a master of the cabin or of the file', hint: 'Without absolute values of the master a difference to it gives no colour.' });
  }
  return id;
}

/** Whether two readings would be averaged if they were on one spot. */
const sameKind = (reading: Reading, data: FoundData): boolean => reading.quantity === data.quantity
  && (reading.quantity !== 'gloss' || data.quantity !== 'gloss' || reading.angle === data.angle) && (!('light' in reading) || !('light' in data) || reading.light === data.light);

function readingOf(record: ReadingRecord, registers: ImportRegisters, master: string, { known, readings }: Gathered): Reading {
  const { data, colour, rotationDeg, averagedFrom, measuredAt, row } = record;
  const common = {
    // One reading without a spot; several would have been asked about.
    spot: record.spot ?? { name: freeId('1', (known?.readings ?? []).concat(readings).filter((other) => sameKind(other, data)).map(({ spot }) => spot.name)) },
    conditions: registers.conditionsOf(record),
    ...(colour === undefined ? {} : { colour }), ...(rotationDeg === undefined ? {} : { rotationDeg }), ...(averagedFrom === undefined ? {} : { averagedFrom }), ...(measuredAt === undefined ? {} : { measuredAt }),
    ...(registers.file === undefined ? {} : { file: registers.file.id, row }),
  };
  switch (data.quantity) {
    case 'spectrum': return {
      quantity: 'spectrum', ...common, startNm: data.startNm, stepNm: data.stepNm, values: data.values, ...(data.bandpassCorrected === undefined ? {} : { bandpassCorrected: data.bandpassCorrected }),
    };
    // The required questions leave neither light nor observer open.
    case 'cielab': return { quantity: 'cielab', ...common, lab: data.lab, light: data.light ?? '', observer: data.observer ?? 10 };
    case 'difference': return { quantity: 'difference', ...common, difference: data.difference, light: data.light ?? '', observer: data.observer ?? 10, master };
    case 'gloss': return {
      quantity: 'gloss', ...common, angle: data.angle, gloss: data.gloss, ...(data.haze === undefined ? {} : { haze: data.haze }), ...(data.direction === undefined ? {} : { direction: data.direction }),
    };
    case 'texture': return { quantity: 'texture', ...common, parameters: data.parameters, ...(data.visible === undefined ? {} : { visible: data.visible }) };
  }
}

/** The cabin with the registers and readings of the file; parts without new readings stay the same objects. */
function withSpecimens(cabin: Cabin, registers: ImportRegisters, specimens: ReadonlyMap<string, Gathered>, newKind: SpecimenKind): Cabin {
  const bySource = new Map<string, Gathered[]>();
  const masters: Gathered[] = [];
  for (const entry of specimens.values()) {
    if (entry.place.at === 'masters') masters.push(entry);
    else {
      const key = JSON.stringify([entry.place.part.id, entry.place.source.id]);
      bySource.set(key, [...(bySource.get(key) ?? []), entry]);
    }
  }
  // A master may stand under a source as well as in the register of masters.
  const known = new Map(masters.filter((entry) => entry.known !== undefined).map((entry) => [entry.id, entry]));
  const extended = (specimen: Specimen, more: Gathered | undefined): Specimen => (more === undefined ? specimen : { ...specimen, readings: [...specimen.readings, ...more.readings] });
  const withReadings = (part: Part, source: Source): Source => {
    const entries = bySource.get(JSON.stringify([part.id, source.id])) ?? [];
    if (entries.length === 0 && !source.specimens.some(({ id }) => known.has(id))) return source;
    const more = new Map(entries.map((entry) => [entry.id, entry]));
    return {
      ...source,
      specimens: [...source.specimens.map((specimen) => extended(specimen, more.get(specimen.id) ?? known.get(specimen.id))), ...entries.filter((entry) => entry.known === undefined).map((entry) => freshSpecimen(entry, newKind))],
    };
  };
  const parts = cabin.parts.map((part) => {
    const sources = part.sources.map((source) => withReadings(part, source));
    return sources.every((source, index) => source === part.sources[index]) ? part : { ...part, sources };
  });
  const list = [...(cabin.masters ?? []).map((master) => extended(master, known.get(master.id))), ...masters.filter((entry) => entry.known === undefined).map((entry) => freshSpecimen(entry, newKind))];
  return {
    ...cabin, parts, instruments: registers.instruments, conditions: registers.conditions,
    ...(registers.lights.length === 0 ? {} : { lights: registers.lights }), ...(registers.files.length === 0 ? {} : { files: registers.files }), ...(list.length === 0 ? {} : { masters: list }),
  };
}

function freshSpecimen({ id, place, first, readings }: Gathered, newKind: SpecimenKind): Specimen {
  const kind = place.at === 'masters' ? 'master' : place.kind ?? newKind;
  const stage = place.at === 'masters' ? 'new' : place.stage ?? 'new';
  return { id, kind, ...(first.lot === undefined ? {} : { lot: { id: first.lot } }), ...(stage === 'new' ? {} : { exposure: { stage } }), readings };
}
