import type { ImportMapping } from '../../src/actions/import-mapping.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';

const key = 'adjoin-import-mappings';
/** Shapes of files that are remembered; the one not used for longest goes first. */
const most = 60;

type Remembered = readonly (readonly [shape: string, mapping: ImportMapping])[];

function all(): Remembered {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? '[]');
    return Array.isArray(found) ? found.filter((one): one is readonly [string, ImportMapping] => Array.isArray(one) && typeof one[0] === 'string' && typeof one[1] === 'object' && one[1] !== null) : [];
  } catch {
    return [];
  }
}

/** Keeps what was decided on a file for the next one of the same shape. Where the browser keeps nothing, it is asked again. */
export function rememberMapping(shape: string, mapping: ImportMapping): void {
  try {
    localStorage.setItem(key, JSON.stringify([...all().filter(([known]) => known !== shape), [shape, mapping]].slice(-most)));
  } catch {
    // Nothing is lost but the comfort.
  }
}

/** What was decided on the last file of the shape, without what this cabin does not have. */
export function rememberedMapping(shape: string, cabin: Cabin): ImportMapping | undefined {
  const found = all().find(([known]) => known === shape)?.[1];
  if (found === undefined) return undefined;
  const parts = new Map(cabin.parts.map((part) => [part.id, new Set(part.sources.map(({ id }) => id))]));
  const sources = new Set([...parts.values()].flatMap((ids) => [...ids]));
  const instruments = new Set(cabin.instruments.map(({ id }) => id));
  const kept = <T>(entries: Readonly<Record<string, T>> | undefined, fits: (value: T) => boolean): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(entries ?? {}).filter(([, value]) => fits(value)));
  return {
    ...found,
    parts: kept(found.parts, (id) => parts.has(id)), sources: kept(found.sources, (id) => sources.has(id)), instruments: kept(found.instruments, (id) => instruments.has(id)),
    specimens: kept(found.specimens, ({ part, source }) => part === undefined || (parts.has(part) && (source === undefined || parts.get(part)?.has(source) === true))),
  };
}
