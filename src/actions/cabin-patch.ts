import type { Cabin } from '../cabin/cabin.ts';
import type { CabinList } from '../cabin/check-changes.ts';
import { changedPlaces } from '../cabin/cabin-step.ts';
import { cabinLists } from '../cabin/check-changes.ts';

/** One list of the document: items that are new or other with their places, or the order of all where it is another. */
interface ListPatch {
  readonly items: readonly { readonly id: string }[];
  /** Places of the items in a list whose order stands. */
  readonly places?: readonly number[];
  readonly order?: readonly string[];
}

/** What changed from one document to another, small enough to be stored at every edit or sent to a worker. Plain JSON. */
export interface CabinPatch {
  readonly fields: Readonly<Record<string, unknown>>;
  readonly gone: readonly string[];
  readonly lists: Readonly<Partial<Record<CabinList, ListPatch>>>;
}

const isList = (key: string): key is CabinList => (cabinLists as readonly string[]).includes(key);

/** The change between two documents that share what did not change; it is told by identity, not by looking into items. */
export function cabinPatch(before: Cabin, after: Cabin): CabinPatch {
  const [old, current] = [Object.entries(before), Object.entries(after)] as const;
  const lists = cabinLists.filter((name) => after[name] !== undefined && after[name] !== before[name]);
  return {
    fields: Object.fromEntries(current.filter(([key, value]) => !isList(key) && value !== (before as unknown as Record<string, unknown>)[key])),
    gone: old.filter(([key, value]) => value !== undefined && (after as unknown as Record<string, unknown>)[key] === undefined).map(([key]) => key),
    lists: Object.fromEntries(lists.map((name) => [name, listPatch(before[name] ?? [], after[name] ?? [])])),
  };
}

function listPatch(before: ListPatch['items'], after: ListPatch['items']): ListPatch {
  const places = changedPlaces(before, after);
  if (places !== undefined) return { items: places.map((place) => after[place]), places };
  const known = new Set(before);
  return { items: after.filter((item) => !known.has(item)), order: after.map(({ id }) => id) };
}

/** The later document from the earlier one; items that did not change are the same objects. */
export function patchCabin(before: Cabin, { fields, gone, lists }: CabinPatch): Cabin {
  const after: Record<string, unknown> = { ...before, ...fields };
  for (const key of gone) delete after[key];
  for (const name of cabinLists) {
    const patch = lists[name];
    if (patch !== undefined) after[name] = patchList(before[name] ?? [], patch);
  }
  return after as unknown as Cabin;
}

function patchList(before: ListPatch['items'], { items, places, order }: ListPatch): ListPatch['items'] {
  if (places?.every((place, index) => before[place]?.id === items[index]?.id) === true) {
    const after = before.slice();
    places.forEach((place, index) => { after[place] = items[index]; });
    return after;
  }
  const fresh = new Map(items.map((item) => [item.id, item]));
  if (order === undefined) return before.map((item) => fresh.get(item.id) ?? item);
  const kept = new Map(before.map((item) => [item.id, item]));
  return order.flatMap((id) => fresh.get(id) ?? kept.get(id) ?? []);
}
