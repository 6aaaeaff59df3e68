import type { Cabin, Part, Source } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import type { JointFilter } from '../controllers/route.ts';

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

/** The source a part stands by: the one it names, else its first. */
export const standingSource = (part: Part | undefined): Source | undefined =>
  part?.sources.find((source) => source.id === part.source) ?? part?.sources[0];

export const partsById = (cabin: Cabin): Parts => new Map(cabin.parts.map((part) => [part.id, part]));

const verdictOf = (joint: JointResult): string => (joint.verdict === 'clashes' && joint.accepted ? 'accepted' : joint.verdict);

/** Checks that trouble a joint: those that clash or are open. */
const troubles = (joint: JointResult): Set<string> =>
  new Set(joint.checks.filter((check) => check.verdict === 'clashes' || check.verdict === 'open').map((check) => check.check));

const zonesOf = (joint: JointResult, parts: Parts): Set<string> =>
  new Set(joint.parts.map((id) => parts.get(id)?.zone).filter((zone) => zone !== undefined));

const suppliersOf = (joint: JointResult, parts: Parts): Set<string> =>
  new Set(joint.parts.map((id) => standingSource(parts.get(id))?.supplier).filter((supplier) => supplier !== undefined));

function searchText(joint: JointResult, parts: Parts): string {
  const sides = joint.parts.map((id) => {
    const part = parts.get(id);
    const source = standingSource(part);
    return [id, part?.name, part?.partNumber, part?.zone, source?.material, source?.supplier].join(' ');
  });
  return [joint.id, ...sides, joint.sentence, joint.kind].join(' ').toLowerCase();
}

/** Whether the joint passes every field of the filter; words of the search may stand anywhere, in any order. */
export function passes(joint: JointResult, filter: JointFilter, parts: Parts): boolean {
  if (filter.verdict !== undefined && verdictOf(joint) !== filter.verdict) return false;
  if (filter.zone !== undefined && !zonesOf(joint, parts).has(filter.zone)) return false;
  if (filter.supplier !== undefined && !suppliersOf(joint, parts).has(filter.supplier)) return false;
  if (filter.check !== undefined && !troubles(joint).has(filter.check)) return false;
  if (filter.search === undefined) return true;
  const text = searchText(joint, parts);
  return filter.search.toLowerCase().split(/\s+/).every((word) => text.includes(word));
}

/** What can be chosen for each field, with the number of joints that would be left by the other fields. */
export function filterChoices(joints: readonly JointResult[], cabin: Cabin, filter: JointFilter): FilterChoices {
  const parts = partsById(cabin);
  const counts = (field: keyof FilterChoices, keys: (joint: JointResult) => Iterable<string>): ((value: string) => number) => {
    const others = { ...filter, [field]: undefined };
    const tally = new Map<string, number>();
    for (const joint of joints) {
      if (!passes(joint, others, parts)) continue;
      for (const key of keys(joint)) tally.set(key, (tally.get(key) ?? 0) + 1);
    }
    return (value) => tally.get(value) ?? 0;
  };
  const choices = (names: readonly (readonly [string, string])[], count: (value: string) => number): FilterChoice[] =>
    names.map(([value, label]) => ({ value, label, count: count(value) }));
  const checks = [...new Set(joints.flatMap((joint) => [...troubles(joint)]))].sort();
  return {
    zone: choices(cabin.zones.map((zone) => [zone.id, zone.name]), counts('zone', (joint) => zonesOf(joint, parts))),
    verdict: choices(
      [['clashes', 'clashes'], ['accepted', 'accepted clash'], ['open', 'open'], ['holds', 'holds']],
      counts('verdict', (joint) => [verdictOf(joint)]),
    ),
    check: choices(checks.map((check) => [check, check]), counts('check', troubles)),
    supplier: choices(cabin.suppliers.map((supplier) => [supplier.id, supplier.name]), counts('supplier', (joint) => suppliersOf(joint, parts))),
  };
}
