import type { Cabin } from '../cabin/cabin.ts';
import { answerQuestions } from '../formats/answer-questions.ts';
import type { ReadingRecord, ReadingSet } from '../formats/reading-set.ts';
import { answersRequests, specimenKey, summarySizes } from '../formats/reading-summary.ts';
import type { Issue, Outcome } from '../issue.ts';
import { mapReply } from '../report/requests/map-reply.ts';
import type { RequestSheet } from '../report/requests/request-sheet.ts';
import { placer } from './import-mapping.ts';
import type { ImportMapping } from './import-mapping.ts';
import { importReadings } from './import-readings.ts';
import { freeId, idOfName, idsOf } from './next-id.ts';
import { addPart } from './part-actions.ts';

/** A part that is made because a file has readings of it. */
export interface NewPart {
  readonly name: string;
  readonly zone: string;
  /** Id of a supplier of the cabin, or the name of a new one. */
  readonly supplier: string;
  readonly material: string;
}

/** Everything that the user decides on a file. Plain JSON, remembered for the next file of the same shape. */
export interface ImportChoices extends ImportMapping {
  /** Parts to be made, by the file's names of parts; of a file that names no parts by its names of specimens. */
  readonly newParts?: Readonly<Record<string, NewPart>>;
}

/** Where the readings of one specimen of a file go. */
export type PlannedPlace =
  | { readonly at: 'source'; readonly part: string; readonly source: string; readonly specimen: string; readonly stage: string; readonly isNew: boolean }
  | { readonly at: 'masters'; readonly specimen: string; readonly isNew: boolean }
  | { readonly at: 'nowhere' };

export interface PlannedImport {
  readonly taken: boolean;
  readonly readings: number;
  readonly skipped: number;
  readonly newParts: readonly string[];
  readonly newSpecimens: readonly string[];
  readonly newInstruments: readonly string[];
  readonly newLights: readonly string[];
  /** By `specimenKey`, for the specimens that a summary lists; absent where nothing says the place. */
  readonly places: Readonly<Record<string, PlannedPlace>>;
  /** What serves the next file of the shape: new parts are known parts then. */
  readonly mapping: ImportMapping;
  readonly issues: readonly Issue[];
}

export interface ImportStep {
  /** The cabin with the file; as it was where the file is refused. */
  readonly cabin: Cabin;
  readonly planned: PlannedImport;
}

/**
 * Takes one file over into a cabin and tells what became of it: the parts it needs are made first; a file that is refused changes nothing. Of a file that answers
 * request sheets, by their ids, every row goes where its line asks for it.
 */
export function planImport(cabin: Cabin, found: ReadingSet, choices: ImportChoices = {}, sheets: readonly RequestSheet[] = []): ImportStep {
  const { newParts, ...mapping } = choices;
  const { set, issues: told } = withRequestPlaces(found, sheets);
  const step = planPlaced(cabin, set, found, newParts ?? {}, mapping);
  return told.length === 0 ? step : { ...step, planned: { ...step.planned, issues: [...told, ...step.planned.issues] } };
}

function planPlaced(cabin: Cabin, set: ReadingSet, found: ReadingSet, newParts: Readonly<Record<string, NewPart>>, mapping: ImportMapping): ImportStep {
  const made = withNewParts(cabin, set, newParts, mapping);
  if (made.value === undefined) return refused(cabin, placesOf(cabin, set, found, mapping), mapping, made.issues);
  const { cabin: base, mapping: placed, parts } = made.value;
  const { value, issues } = importReadings(base, set, placed);
  if (value === undefined) return refused(cabin, placesOf(base, set, found, placed), placed, issues);
  return {
    cabin: value.cabin,
    planned: {
      taken: true, readings: value.readings, skipped: value.skipped, newParts: parts, newSpecimens: value.newSpecimens, newInstruments: value.newInstruments, newLights: value.newLights,
      places: placesOf(base, set, found, placed), mapping: placed, issues,
    },
  };
}

/** The set with the places that its request ids say; the set itself where no row bears an id of the sheets. */
function withRequestPlaces(set: ReadingSet, sheets: readonly RequestSheet[]): { readonly set: ReadingSet; readonly issues: readonly Issue[] } {
  if (sheets.length === 0 || !answersRequests(set)) return { set, issues: [] };
  const { mapped, issues } = mapReply(sheets, set);
  if (mapped.length === 0) return { set, issues: [] };
  const places = new Map(mapped.map((place) => [place.record, place]));
  const records = set.records.map((record, index): ReadingRecord => {
    const place = places.get(index);
    if (place === undefined) return record;
    const { supplier: _supplier, ...rest } = record;
    return { ...rest, part: place.part, source: place.source, ...(place.specimen === '' ? {} : { specimen: place.specimen }) };
  });
  // Rows beside the request keep the places that the file gives them, so that what the reply lacks is told and refuses nothing.
  return { set: { ...set, records }, issues: issues.map((issue) => ({ ...issue, severity: issue.severity === 'error' ? 'warning' as const : issue.severity })) };
}

function refused(cabin: Cabin, places: PlannedImport['places'], mapping: ImportMapping, issues: readonly Issue[]): ImportStep {
  return { cabin, planned: { taken: false, readings: 0, skipped: 0, newParts: [], newSpecimens: [], newInstruments: [], newLights: [], places, mapping, issues } };
}

/** Places by the names that the file has, which are those of a summary. */
function placesOf(cabin: Cabin, set: ReadingSet, found: ReadingSet, mapping: ImportMapping): PlannedImport['places'] {
  const records = answerQuestions(set, mapping.answers ?? {}).value?.records ?? set.records;
  const known = new Map<string, PlannedPlace>();
  const tried = new Set<string>();
  const finder = placer(cabin, mapping);
  for (const [index, record] of records.entries()) {
    const key = specimenKey(found.records[index] ?? record);
    if (tried.has(key)) continue;
    if (tried.size >= summarySizes.specimens) break;
    tried.add(key);
    const place = finder.place(record);
    if (place === undefined) continue;
    if (place.at === 'nowhere') known.set(key, place);
    else if (place.at === 'masters') known.set(key, { at: 'masters', specimen: place.specimen, isNew: cabin.masters?.some(({ id }) => id === place.specimen) !== true });
    else {
      const specimen = place.source.specimens.find(({ id }) => id === place.specimen);
      const stage = place.stage ?? specimen?.exposure?.stage ?? 'new';
      known.set(key, {
        at: 'source', part: place.part.id, source: place.source.id, specimen: place.specimen, stage, isNew: specimen === undefined || (specimen.exposure?.stage ?? 'new') !== stage,
      });
    }
  }
  return Object.fromEntries(known);
}

interface MadeParts {
  readonly cabin: Cabin;
  readonly mapping: ImportMapping;
  readonly parts: readonly string[];
}

/** The cabin with the parts and suppliers that the file needs, and the mapping that leads to them. Parts that the file does not name are not made. */
function withNewParts(cabin: Cabin, set: ReadingSet, wanted: Readonly<Record<string, NewPart>>, mapping: ImportMapping): Outcome<MadeParts> {
  const entries = Object.entries(wanted);
  if (entries.length === 0) return { value: { cabin, mapping, parts: [] }, issues: [] };
  const named = new Set(set.records.map(({ part, specimen }) => part ?? specimen));
  const bySpecimen = new Set(set.records.flatMap(({ part, specimen }) => (part === undefined ? [specimen] : [])));
  let base = cabin;
  const parts: Record<string, string> = { ...mapping.parts };
  const specimens = { ...mapping.specimens };
  const ids: string[] = [];
  const issues: Issue[] = [];
  for (const [name, { supplier, ...part }] of entries) {
    if (!named.has(name)) continue;
    const known = base.suppliers.find((one) => one.id === supplier || one.name === supplier);
    const id = known?.id ?? freeId(idOfName(supplier, 'supplier'), idsOf(base.suppliers));
    const withSupplier = known === undefined ? { ...base, suppliers: [...base.suppliers, { id, name: supplier }] } : base;
    const { value, issues: found } = addPart.run(withSupplier, { ...part, supplier: id });
    if (value === undefined) {
      issues.push(...found.map((issue) => ({ ...issue, path: `new part ${name}${issue.path === undefined ? '' : `: ${issue.path}`}` })));
      continue;
    }
    const made = value.parts.at(-1)?.id ?? '';
    ids.push(made);
    base = value;
    if (bySpecimen.has(name)) specimens[name] = { ...specimens[name], part: made };
    else parts[name] = made;
  }
  return issues.length > 0 ? { value: undefined, issues } : { value: { cabin: base, mapping: { ...mapping, parts, specimens }, parts: ids }, issues };
}
