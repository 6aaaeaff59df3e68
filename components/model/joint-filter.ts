import type { Cabin, Part } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import type { JointFilter } from '../controllers/route.ts';
import { jointFacts, searchText } from './joint-facts.ts';
import type { JointFacts } from './joint-facts.ts';
import { remembered } from './remembered.ts';

export { standingSource } from './joint-facts.ts';

export interface FilterChoice {
  readonly value: string;
  readonly label: string;
  readonly count: number;
}

export interface FilterChoices {
  readonly zone: readonly FilterChoice[];
  readonly verdict: readonly FilterChoice[];
  readonly check: readonly FilterChoice[];
  readonly supplier: readonly FilterChoice[];
}

type Parts = ReadonlyMap<string, Part>;
type Field = keyof FilterChoices;

const byId = remembered((parts: readonly Part[]): Parts => new Map(parts.map((part) => [part.id, part])));

export const partsById = ({ parts }: Cabin): Parts => byId(parts);

const fields: readonly Field[] = ['zone', 'verdict', 'check', 'supplier'];

const valuesOf = (facts: JointFacts, field: Field): readonly string[] => {
  switch (field) {
    case 'zone': return facts.zones;
    case 'verdict': return [facts.verdict];
    case 'check': return facts.troubles;
    case 'supplier': return facts.suppliers;
  }
};

/** Whether a filter lets everything through. */
export const isOpenFilter = (filter: JointFilter): boolean => filter.search === undefined && fields.every((field) => filter[field] === undefined);

/** Whether two filters let the same through. */
const isSameFilter = (first: JointFilter, second: JointFilter): boolean => first.search === second.search && fields.every((field) => first[field] === second[field]);

/** Declares a property that is another one only where it lets something else through: with every address a filter is read anew. */
export const filterProperty = { attribute: false, hasChanged: (now: JointFilter, before: JointFilter | undefined): boolean => before === undefined || !isSameFilter(now, before) } as const;

const verdictTexts: Readonly<Record<string, string>> = { clashes: 'clashes', accepted: 'accepted clashes', open: 'open joints', holds: 'joints that hold' };

/** What a filter lets through, in words: `clashes, in the zone Doors, with gloss in trouble`; a name that the cabin does not have stands as it is. */
export function filterText({ search, zone, verdict, check, supplier }: JointFilter, { zones, suppliers }: Cabin): string {
  const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string): string => list.find((one) => one.id === id)?.name ?? id;
  return [
    verdict === undefined ? 'joints' : verdictTexts[verdict] ?? `joints that are “${verdict}”`,
    ...(zone === undefined ? [] : [`in the zone ${nameOf(zones, zone)}`]), ...(check === undefined ? [] : [`with ${check} in trouble`]),
    ...(supplier === undefined ? [] : [`with parts of ${nameOf(suppliers, supplier)}`]), ...(search === undefined ? [] : [`found by “${search}”`]),
  ].join(', ');
}

const wordsOf = ({ search }: JointFilter): readonly string[] => search?.toLowerCase().split(/\s+/) ?? [];

/** Whether the joint passes every field of the filter; words of the search may stand anywhere, in any order. */
export function passes(joint: JointResult, filter: JointFilter, parts: Parts): boolean {
  return fields.every((field) => filter[field] === undefined || valuesOf(jointFacts(joint, parts), field).includes(filter[field]))
    && (filter.search === undefined || holdsWords(joint, wordsOf(filter), parts));
}

function holdsWords(joint: JointResult, words: readonly string[], parts: Parts): boolean {
  const text = searchText(joint, parts);
  return words.every((word) => text.includes(word));
}

/** What can be chosen for each field, with the number of joints that would be left by the other fields. */
export function filterChoices(joints: readonly JointResult[], cabin: Cabin, filter: JointFilter): FilterChoices {
  const parts = partsById(cabin);
  const words = wordsOf(filter);
  const counts: Readonly<Record<Field, Map<string, number>>> = { zone: new Map(), verdict: new Map(), check: new Map(), supplier: new Map() };
  const troubles = new Set<string>();
  const set = fields.filter((field) => filter[field] !== undefined);
  for (const joint of joints) {
    const facts = jointFacts(joint, parts);
    for (const name of facts.troubles) troubles.add(name);
    if (words.length > 0 && !holdsWords(joint, words, parts)) continue;
    const failed = set.filter((field) => !valuesOf(facts, field).includes(filter[field] as string));
    if (failed.length > 1) continue;
    for (const field of failed.length === 1 ? failed : fields) {
      const tally = counts[field];
      for (const value of valuesOf(facts, field)) tally.set(value, (tally.get(value) ?? 0) + 1);
    }
  }
  const choices = (field: Field, names: readonly (readonly [string, string])[]): FilterChoice[] =>
    names.map(([value, label]) => ({ value, label, count: counts[field].get(value) ?? 0 }));
  return {
    zone: choices('zone', cabin.zones.map((zone) => [zone.id, zone.name])),
    verdict: choices('verdict', [['clashes', 'clashes'], ['accepted', 'accepted clash'], ['open', 'open'], ['holds', 'holds']]),
    check: choices('check', [...troubles].sort().map((check) => [check, check])),
    supplier: choices('supplier', cabin.suppliers.map((supplier) => [supplier.id, supplier.name])),
  };
}
