import type { Cabin, Joint, Part, Source, Specimen } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import type { Issue } from '../issue.ts';

/** Why an edit is not made. */
export interface Refusal {
  readonly refused: Issue;
}
export type Edited<T> = T | Refusal;

export const isRefusal = (value: object): value is Refusal => Object.hasOwn(value, 'refused');

export const refuse = (code: string, found: string, expected: string, hint?: string): Refusal =>
  ({ refused: { code, severity: 'error', found, expected, ...(hint === undefined ? {} : { hint }) } });

/** The list with one item replaced; the same list where the item stays as it is. */
export function replaced<T>(items: readonly T[], index: number, item: T): readonly T[] {
  return items[index] === item ? items : items.with(index, item);
}

/** The list with every item of an id edited; the same list where none changed. */
export function editById<T extends { readonly id: string }>(items: readonly T[], id: string, edit: (item: T) => Edited<T>): Edited<readonly T[]> {
  const index = items.findIndex((item) => item.id === id);
  const item = items[index];
  if (item === undefined) return refuse('unknown-id', JSON.stringify(id), 'the id of an item of the cabin');
  const edited = edit(item);
  return isRefusal(edited) ? edited : replaced(items, index, edited);
}

/** The list without some items; the same list where all stay. */
export function without<T>(items: readonly T[], goes: (item: T) => boolean): readonly T[] {
  const kept = items.filter((item) => !goes(item));
  return kept.length === items.length ? items : kept;
}

/** Every item through an edit that may leave it as it is; the same list where none changed. */
export function editEach<T>(items: readonly T[], edit: (item: T) => T): readonly T[] {
  const edited = items.map(edit);
  return edited.every((item, index) => item === items[index]) ? items : edited;
}

/** Whether two values of JSON are the same; the order of keys does not count. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null || Array.isArray(a) !== Array.isArray(b)) return false;
  const [first, second] = [Object.entries(a), Object.entries(b)];
  return first.length === second.length
    && first.every(([key, value]) => Object.hasOwn(b, key) && sameValue(value, (b as Readonly<Record<string, unknown>>)[key]));
}

/** New values of fields: absent or `undefined` leaves a field as it is, `null` takes it out. */
export type Changes<T> = { readonly [K in keyof T]?: T[K] | null };

/** The item with fields set; the same object where nothing changes. A field that gets an equal value keeps the one it had. */
export function setFields<T extends object>(item: T, changes: Changes<T>): T {
  const edited = { ...item } as Record<string, unknown>;
  let changed = false;
  for (const [key, value] of Object.entries(changes)) {
    if (value === undefined) continue;
    const has = Object.hasOwn(edited, key);
    if (value === null ? !has : has && sameValue(edited[key], value)) continue;
    changed = true;
    if (value === null) delete edited[key];
    else edited[key] = value;
  }
  return changed ? edited as T : item;
}

type ListName = 'parts' | 'joints' | 'zones' | 'suppliers' | 'instruments' | 'conditions' | 'lights' | 'masters' | 'runs' | 'files';
type Item<K extends ListName> = NonNullable<Cabin[K]>[number];

/** The cabin with another list; the same cabin where the list is the same, or would be an empty one in place of none. */
export function withList<K extends ListName>(cabin: Cabin, name: K, items: readonly Item<K>[]): Cabin {
  if (cabin[name] === items || (cabin[name] === undefined && items.length === 0)) return cabin;
  return { ...cabin, [name]: items };
}

export const addItem = <K extends ListName>(cabin: Cabin, name: K, item: Item<K>): Cabin =>
  withList(cabin, name, [...(cabin[name] ?? []) as readonly Item<K>[], item]);

export const removeItem = <K extends ListName>(cabin: Cabin, name: K, id: string): Cabin =>
  withList(cabin, name, without((cabin[name] ?? []) as readonly Item<K>[], (item) => item.id === id));

export function editItem<K extends ListName>(cabin: Cabin, name: K, id: string, edit: (item: Item<K>) => Edited<Item<K>>): Edited<Cabin> {
  const items = editById<Item<K>>((cabin[name] ?? []) as readonly Item<K>[], id, edit);
  return isRefusal(items) ? items : withList(cabin, name, items);
}

export const editPart = (cabin: Cabin, id: string, edit: (part: Part) => Edited<Part>): Edited<Cabin> => editItem(cabin, 'parts', id, edit);
export const editJoint = (cabin: Cabin, id: string, edit: (joint: Joint) => Edited<Joint>): Edited<Cabin> => editItem(cabin, 'joints', id, edit);

export const editSource = (cabin: Cabin, part: string, id: string, edit: (source: Source) => Edited<Source>): Edited<Cabin> =>
  editPart(cabin, part, (of) => {
    const sources = editById(of.sources, id, edit);
    return isRefusal(sources) ? sources : setList(of, 'sources', sources);
  });

/** Edits a specimen of a source, or a recorded master. */
export function editSpecimen(cabin: Cabin, id: string, edit: (specimen: Specimen) => Edited<Specimen>): Edited<Cabin> {
  const owner = cabinIndex(cabin).specimens.get(id);
  if (owner?.part === undefined || owner.source === undefined) return editItem(cabin, 'masters', id, edit);
  return editSource(cabin, owner.part, owner.source, (source) => {
    const specimens = editById(source.specimens, id, edit);
    return isRefusal(specimens) ? specimens : tidyPicks(setList(source, 'specimens', specimens));
  });
}

/** An item with another list in one of its fields; the same item where the list is the same. */
export const setList = <T extends object, K extends keyof T>(item: T, key: K, items: T[K]): T => (item[key] === items ? item : { ...item, [key]: items });

/** The same for a list that may be left out: an empty one is. */
export function setOptionalList<T extends object, K extends keyof T>(item: T, key: K, items: T[K] & readonly unknown[]): T {
  if (items.length > 0) return setList(item, key, items);
  const { [key]: gone, ...rest } = item;
  return gone === undefined ? item : rest as T;
}

/** Explicit picks of specimens that are gone, are at another stage now or may no longer stand are taken out. */
export function tidyPicks(source: Source): Source {
  if (source.standsBy === undefined) return source;
  const stands = ([stage, id]: readonly [string, string]): boolean => {
    const specimen = source.specimens.find((one) => one.id === id);
    return specimen !== undefined && specimen.kind !== 'master' && specimen.kind !== 'boundary sample' && (specimen.exposure?.stage ?? 'new') === stage;
  };
  const picks = Object.entries(source.standsBy);
  const kept = picks.filter(stands);
  if (kept.length === picks.length) return source;
  return setFields(source, { standsBy: kept.length === 0 ? null : Object.fromEntries(kept) });
}
