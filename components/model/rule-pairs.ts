import type { Cabin } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import type { PairRule, RuleBook } from '../../src/rules/rule-book.ts';
import { standingSource } from './joint-filter.ts';

/** A pair of materials in either order as one key. */
export const pairKey = (a: string, b: string): string => [a, b].sort().join('+');

/** The joints of every pair of materials that meet in a cabin, by `pairKey`. */
export function jointsByPair(cabin: Cabin, joints: readonly JointResult[]): ReadonlyMap<string, readonly JointResult[]> {
  const materials = new Map(cabin.parts.map((part) => [part.id, standingSource(part)?.material ?? '']));
  const found = new Map<string, JointResult[]>();
  for (const joint of joints) {
    const key = pairKey(materials.get(joint.parts[0]) ?? '', materials.get(joint.parts[1]) ?? '');
    found.set(key, [...(found.get(key) ?? []), joint]);
  }
  return found;
}

/** The rule of a book that speaks of just this pair, whatever the intent, kind and zone. */
export const ownRule = (book: RuleBook, a: string, b: string): PairRule | undefined =>
  book.rules.find(({ pair, intent, kind, zone }) => pairKey(...pair) === pairKey(a, b) && intent === undefined && kind === undefined && zone === undefined);

/** The book as the cabin's own, with the colour limit of a pair set: its own rule changed, or a new one added at the end. */
export function withColourLimit(book: RuleBook, [a, b]: readonly [string, string], limit: number | string, basis: string): RuleBook {
  const present = ownRule(book, a, b);
  const rule: PairRule = present === undefined
    ? { id: `${[a, b].sort().join('-')}-own`, pair: [a, b], colour: { limit }, basis }
    : { ...present, colour: { ...present.colour, limit }, basis };
  const own = book.id.endsWith('-own') ? book : { ...book, id: `${book.id}-own`, name: `${book.name}, own limits` };
  return { ...own, rules: present === undefined ? [...book.rules, rule] : book.rules.map((each) => (each === present ? rule : each)) };
}
