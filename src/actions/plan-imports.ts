import type { Cabin } from '../cabin/cabin.ts';
import { answerQuestions } from '../formats/answer-questions.ts';
import type { ReadingSet } from '../formats/reading-set.ts';
import { specimenKey, summarySizes } from '../formats/reading-summary.ts';
import type { Issue, Outcome } from '../issue.ts';
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

/** Takes one file over into a cabin and tells what became of it: the parts it needs are made first; a file that is refused changes nothing. */
export function planImport(cabin: Cabin, set: ReadingSet, choices: ImportChoices = {}): ImportStep {
  const { newParts, ...mapping } = choices;
  const made = withNewParts(cabin, set, newParts ?? {}, mapping);
  if (made.value === undefined) return refused(cabin, cabin, set, mapping, made.issues);
  const { cabin: base, mapping: placed, parts } = made.value;
  const { value, issues } = importReadings(base, set, placed);
  if (value === undefined) return refused(cabin, base, set, placed, issues);
  return {
    cabin: value.cabin,
    planned: {
      taken: true, readings: value.readings, skipped: value.skipped, newParts: parts, newSpecimens: value.newSpecimens, newInstruments: value.newInstruments, newLights: value.newLights,
      places: placesOf(base, set, placed), mapping: placed, issues,
    },
  };
}

function refused(cabin: Cabin, base: Cabin, set: ReadingSet, mapping: ImportMapping, issues: readonly Issue[]): ImportStep {
  return { cabin, planned: { taken: false, readings: 0, skipped: 0, newParts: [], newSpecimens: [], newInstruments: [], newLights: [], places: placesOf(base, set, mapping), mapping, issues } };
}

function placesOf(cabin: Cabin, set: ReadingSet, mapping: ImportMapping): PlannedImport['places'] {
  const records = answerQuestions(set, mapping.answers ?? {}).value?.records ?? set.records;
  const known = new Map<string, PlannedPlace>();
  const tried = new Set<string>();
  const finder = placer(cabin, mapping);
  for (const record of records) {
    const key = specimenKey(record);
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
