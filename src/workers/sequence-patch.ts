/** A list told by another one: places of that one from the first to before the second, or items that it does not have there. */
export type SequencePatch<T> = readonly (readonly [from: number, to: number] | { readonly fresh: readonly T[] })[];

/** Places that may differ before items are looked for elsewhere in the list. */
const fewPlaces = 64;

/** The change between two lists that share what did not change, told by identity. */
export function sequencePatch<T extends object>(before: readonly T[], after: readonly T[]): SequencePatch<T> {
  if (before === after) return [[0, before.length]];
  return (before.length === after.length ? inPlaces(before, after, fewPlaces) : undefined) ?? byPlaces(before, after);
}

/** Items against those in the same places; undefined where more than some differ, which may only have moved. */
function inPlaces<T extends object>(before: readonly T[], after: readonly T[], most: number): SequencePatch<T> | undefined {
  const steps = new Steps<T>();
  let differing = 0;
  for (let place = 0; place < after.length; place++) {
    if (after[place] === before[place]) steps.keep(place);
    else {
      if (++differing > most) return undefined;
      steps.add(after[place]);
    }
  }
  return steps.list;
}

function byPlaces<T extends object>(before: readonly T[], after: readonly T[]): SequencePatch<T> {
  const places = new Map(before.map((item, place) => [item, place]));
  const steps = new Steps<T>();
  for (const item of after) {
    const place = places.get(item);
    if (place === undefined) steps.add(item);
    else steps.keep(place);
  }
  return steps.list;
}

/** Joins what follows on. */
class Steps<T> {
  readonly list: ([number, number] | { readonly fresh: T[] })[] = [];

  keep(place: number): void {
    const last = this.list.at(-1);
    if (Array.isArray(last) && last[1] === place) last[1] += 1;
    else this.list.push([place, place + 1]);
  }

  add(item: T): void {
    const last = this.list.at(-1);
    if (last !== undefined && !Array.isArray(last)) last.fresh.push(item);
    else this.list.push({ fresh: [item] });
  }
}

/** The later list from the earlier one; items that did not change are the same objects, and the same list where none did. */
export function patchSequence<T>(before: readonly T[], patch: SequencePatch<T>): readonly T[] {
  const [only] = patch;
  if (patch.length === 1 && only !== undefined && 'length' in only && only[0] === 0 && only[1] === before.length) return before;
  return patch.flatMap((step) => ('fresh' in step ? step.fresh : before.slice(step[0], step[1])));
}
