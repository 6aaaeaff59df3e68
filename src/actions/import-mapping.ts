import type { Cabin, Part, Source, SpecimenKind } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { nameHint } from '../cabin/schema/index.ts';
import type { Answers } from '../formats/answer-questions.ts';
import type { ReadingRecord } from '../formats/reading-set.ts';
import type { Issue } from '../issue.ts';

/** Where the names of a file belong in the cabin. Keyed by the file's own names, so that it serves the next file of the supplier. */
export interface ImportMapping {
  readonly answers?: Answers;
  /** Ids of parts by the file's names of parts. */
  readonly parts?: Readonly<Record<string, string>>;
  /** Ids of sources by the file's names of sources or suppliers. */
  readonly sources?: Readonly<Record<string, string>>;
  readonly specimens?: Readonly<Record<string, SpecimenPlace>>;
  /** Ids of instruments by the file's names of them. */
  readonly instruments?: Readonly<Record<string, string>>;
  /** Names of stages by the file's words; `new` is no exposure. */
  readonly stages?: Readonly<Record<string, string>>;
  /** Kind of specimens that the cabin does not have yet and of which the file does not say it. */
  readonly newSpecimens?: SpecimenKind;
}

/** What a specimen of a file is: one of a source, a recorded master, or nothing that is taken over. */
export interface SpecimenPlace {
  readonly skip?: true;
  readonly part?: string;
  readonly source?: string;
  /** Id of the specimen or master; the file's name where absent. */
  readonly specimen?: string;
  readonly kind?: SpecimenKind;
  /** Goes before what the file says. */
  readonly stage?: string;
}

/** The place of one reading. */
export type Placement =
  | { readonly at: 'source'; readonly part: Part; readonly source: Source; readonly specimen: string; /** Undefined where the file says none: that of the specimen, `new` for one that is not there yet. */ readonly stage: string | undefined; readonly kind: SpecimenKind | undefined }
  | { readonly at: 'masters'; readonly specimen: string }
  | { readonly at: 'nowhere' };

export interface Placer {
  /** Undefined where the file and the mapping do not say it; each such name is told once. */
  place(record: ReadingRecord): Placement | undefined;
  readonly issues: readonly Issue[];
}

const own = <T>(entries: Readonly<Record<string, T>> | undefined, key: string | undefined): T | undefined =>
  (entries !== undefined && key !== undefined && Object.hasOwn(entries, key) ? entries[key] : undefined);

/** The one item that a test picks; undefined where none or several are picked. */
function only<T>(items: readonly T[], picks: (item: T) => boolean): T | undefined {
  const found = items.filter(picks);
  return found.length === 1 ? found[0] : undefined;
}

const sameName = (a: string | undefined, b: string | undefined): boolean => a !== undefined && b !== undefined && a.toLowerCase() === b.toLowerCase();

/**
 * Finds the places of readings: by the mapping first, then where the file's name is an id, a part number or the one name of the
 * cabin. A specimen that the cabin knows needs no part; a part with one source needs no source. Nothing else is concluded.
 */
export function placer(cabin: Cabin, mapping: ImportMapping): Placer {
  const issues: Issue[] = [];
  const told = new Set<string>();
  const index = cabinIndex(cabin);
  const tell = (record: ReadingRecord, code: string, name: string, issue: Partial<Issue>): undefined => {
    const key = `${code} ${name}`;
    if (told.has(key) || issues.length >= 1000) return undefined;
    told.add(key);
    issues.push({ code, severity: 'error', ...(record.line === undefined ? {} : { line: record.line }), found: JSON.stringify(name.slice(0, 60)), ...issue });
    return undefined;
  };

  const partOf = (record: ReadingRecord, place: SpecimenPlace | undefined): Part | undefined => {
    const wanted = place?.part ?? own(mapping.parts, record.part);
    const known = index.specimens.get(place?.specimen ?? record.specimen);
    const found = wanted !== undefined
      ? index.parts.get(wanted)
      : record.part === undefined
        ? index.parts.get(known?.part ?? '')
        : index.parts.get(record.part) ?? only(cabin.parts, (part) => part.partNumber === record.part) ?? only(cabin.parts, (part) => sameName(part.name, record.part));
    if (found !== undefined) return found;
    const name = wanted ?? record.part ?? record.specimen;
    const hint = nameHint(name, cabin.parts.flatMap((part) => [part.id, part.name]));
    return tell(record, record.part === undefined && wanted === undefined ? 'part-needed' : 'unknown-part', name, {
      expected: record.part === undefined ? 'a part for this specimen' : 'a part of the cabin', ...(hint === undefined ? {} : { hint }),
    });
  };

  const sourceOf = (record: ReadingRecord, place: SpecimenPlace | undefined, part: Part): Source | undefined => {
    const wanted = place?.source ?? own(mapping.sources, record.source) ?? own(mapping.sources, record.supplier);
    const known = index.specimens.get(place?.specimen ?? record.specimen);
    const supplier = cabin.suppliers.find(({ id, name }) => id === record.supplier || sameName(name, record.supplier))?.id;
    const found = wanted !== undefined
      ? part.sources.find(({ id }) => id === wanted)
      : record.source !== undefined
        ? part.sources.find(({ id }) => id === record.source)
        : record.supplier !== undefined
          ? only(part.sources, (source) => source.supplier === supplier)
          : known?.part === part.id ? part.sources.find(({ id }) => id === known.source) : only(part.sources, () => true);
    if (found !== undefined) return found;
    const name = wanted ?? record.source ?? record.supplier;
    return tell(record, name === undefined ? 'source-needed' : 'unknown-source', `${part.id}${name === undefined ? '' : `: ${name}`}`, {
      expected: `one source of ${part.id}: ${part.sources.slice(0, 12).map(({ id }) => id).join(', ')}`,
    });
  };

  return {
    issues,
    place(record) {
      const place = own(mapping.specimens, record.specimen);
      if (place?.skip === true) return { at: 'nowhere' };
      const specimen = place?.specimen ?? record.specimen;
      const kind = place?.kind ?? record.kind;
      if (kind === 'master' || (place?.part === undefined && record.part === undefined && index.masters.has(specimen))) return { at: 'masters', specimen };
      const part = partOf(record, place);
      const source = part && sourceOf(record, place, part);
      if (part === undefined || source === undefined) return undefined;
      const stage = place?.stage ?? own(mapping.stages, record.stage) ?? record.stage;
      return { at: 'source', part, source, specimen, stage, kind };
    },
  };
}
