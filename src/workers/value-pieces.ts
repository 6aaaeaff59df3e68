/** A part of a plain value that goes in many messages, so that none of them holds the page for long. The first one begins the value; the others are put in lists, objects and maps of it that came empty. */
export interface ValuePiece {
  /** Keys that lead from the value to what is filled; none for the value itself. */
  readonly at: readonly unknown[];
  /** For a list what follows in it, otherwise keys with their values; absent in the first piece. */
  readonly items?: readonly unknown[];
  readonly value?: unknown;
  readonly last: boolean;
}

/** Values in one message, each number, text and object counted: to receive as many takes a few milliseconds. */
export const mostInPiece = 15_000;
/** Characters of a text that weigh as much as a number. */
const charactersOfOne = 64;

type Container = readonly unknown[] | Readonly<Record<string, unknown>> | ReadonlyMap<unknown, unknown>;

function isContainer(value: unknown): value is Container {
  if (typeof value !== 'object' || value === null) return false;
  if (Array.isArray(value) || value instanceof Map) return true;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

/** How much a value weighs, by the numbers, texts and objects in it; counted no further than just beyond `most`. */
export function weightUpTo(value: unknown, most: number): number {
  if (typeof value === 'string') return 1 + value.length / charactersOfOne;
  if (!isContainer(value)) return 1;
  let sum = 1;
  if (Array.isArray(value)) {
    for (let place = 0; place < value.length && sum <= most; place += 1) sum += weightUpTo(value[place], most - sum);
  } else if (value instanceof Map) {
    for (const [key, item] of value) {
      if (sum > most) break;
      sum += weightUpTo(key, most - sum) + weightUpTo(item, most - sum);
    }
  } else {
    for (const key in value) {
      if (sum > most) break;
      sum += weightUpTo((value as Readonly<Record<string, unknown>>)[key], most - sum);
    }
  }
  return sum;
}

const emptied = (value: Container): Container => (Array.isArray(value) ? [] : value instanceof Map ? new Map() : {});
const entriesOf = (value: Container): Iterable<readonly [unknown, unknown]> =>
  (Array.isArray(value) ? value.entries() : value instanceof Map ? value.entries() : Object.entries(value));

/**
 * A plain value of numbers, texts, lists, objects and maps in pieces of at most so much weight; `GatheredValue` makes it whole again. What
 * cannot be divided, as a text or a typed array, goes as one. Things that two places share become two.
 */
export function* valuePieces(value: unknown, most = mostInPiece): Generator<ValuePiece, void> {
  if (!isContainer(value) || weightUpTo(value, most) <= most) {
    yield { at: [], value, last: true };
    return;
  }
  let before: ValuePiece = { at: [], value: emptied(value), last: false };
  for (const piece of filling([], value, most)) {
    yield before;
    before = piece;
  }
  yield { ...before, last: true };
}

function* filling(at: readonly unknown[], container: Container, most: number): Generator<ValuePiece, void> {
  const isList = Array.isArray(container);
  let items: unknown[] = [];
  let weight = 0;
  let heavy: (readonly [unknown, Container])[] = [];
  for (const [key, item] of entriesOf(container)) {
    const own = weightUpTo(item, most);
    if (items.length > 0 && weight + own > most) {
      yield { at, items, last: false };
      for (const [place, filled] of heavy) yield* filling([...at, place], filled, most);
      [items, weight, heavy] = [[], 0, []];
    }
    const divided = own > most && isContainer(item);
    if (divided) heavy.push([key, item]);
    const short = divided ? emptied(item) : item;
    items.push(isList ? short : [key, short]);
    weight += divided ? 1 : own;
  }
  yield { at, items, last: false };
  for (const [place, filled] of heavy) yield* filling([...at, place], filled, most);
}

/** Puts the pieces of one value after the other together again, in the order they were made. */
export class GatheredValue<T> {
  private value: unknown;

  /** The whole value once its last piece was taken. The lists of the pieces are filled in place. */
  take({ at, items, value, last }: ValuePiece): { readonly whole: T } | undefined {
    if (items === undefined) this.value = value;
    else fill(at.reduce(within, this.value) as Container, items);
    if (!last) return undefined;
    const whole = this.value as T;
    this.value = undefined;
    return { whole };
  }
}

const within = (container: unknown, key: unknown): unknown => (container instanceof Map ? container.get(key) : (container as Readonly<Record<string, unknown>>)[key as string]);

function fill(container: Container, items: readonly unknown[]): void {
  if (Array.isArray(container)) for (const item of items) container.push(item);
  else if (container instanceof Map) for (const [key, item] of items as readonly [unknown, unknown][]) container.set(key, item);
  // No key is special, whatever its name.
  else for (const [key, item] of items as readonly [string, unknown][]) Object.defineProperty(container, key, { value: item, enumerable: true, writable: true, configurable: true });
}
