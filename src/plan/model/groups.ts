import type { Cabin } from '../../cabin/cabin.ts';

/** Parts whose sources go together. */
export interface Share {
  readonly parts: readonly string[];
  /** `supplier`: all from one supplier; `source`: all from the source of one id. */
  readonly what: 'supplier' | 'source';
}

/** Parts that are picked as one, in the document's order. */
export interface PartGroup {
  readonly parts: readonly string[];
  /** What holds it together; empty for a part by itself. */
  readonly because: readonly string[];
  readonly shares: readonly Share[];
}

/** The modules of a cabin, each served by one supplier, together with the shares asked for, brought together where they overlap. */
export function partGroups(cabin: Cabin, shares: readonly Share[]): readonly PartGroup[] {
  const modules = new Map<string, string[]>();
  for (const part of cabin.parts) if (part.module !== undefined) modules.set(part.module, [...(modules.get(part.module) ?? []), part.id]);
  const ties = [
    ...[...modules].map(([module, parts]) => ({ share: { parts, what: 'supplier' as const }, because: `module ${module}` })),
    ...shares.map((share) => ({ share, because: `parts that share a ${share.what}` })),
  ].filter(({ share }) => share.parts.length > 1);
  const leader = new Map(cabin.parts.map((part) => [part.id, part.id]));
  const find = (id: string): string => {
    let at = id;
    while (leader.get(at) !== at) at = leader.get(at) ?? at;
    return at;
  };
  for (const { share } of ties) for (const part of share.parts.slice(1)) leader.set(find(part), find(share.parts[0]));
  const groups = new Map<string, string[]>();
  for (const part of cabin.parts) groups.set(find(part.id), [...(groups.get(find(part.id)) ?? []), part.id]);
  return [...groups.values()].map((parts) => {
    const own = ties.filter(({ share }) => parts.includes(share.parts[0]));
    return { parts, because: [...new Set(own.map(({ because }) => because))], shares: own.map(({ share }) => share) };
  });
}

export interface Candidate {
  readonly source: string;
  readonly supplier: string;
}

/** All ways to serve a group from the candidates of its parts, that keep to its shares; undefined above `most`. */
export function combinations<T extends Candidate>(group: PartGroup, candidates: ReadonlyMap<string, readonly T[]>, most: number): readonly (readonly T[])[] | undefined {
  const found: T[][] = [];
  const taken: T[] = [];
  const ties = group.shares.map(({ parts, what }) => ({ what, members: new Set(parts) }));
  const fits = (candidate: T, index: number): boolean => ties.every(({ what, members }) => {
    if (!members.has(group.parts[index])) return true;
    const before = taken.find((_, other) => members.has(group.parts[other]));
    return before === undefined || before[what] === candidate[what];
  });
  const visit = (): boolean => {
    if (taken.length === group.parts.length) return found.push([...taken]) <= most;
    for (const candidate of candidates.get(group.parts[taken.length]) ?? []) {
      if (!fits(candidate, taken.length)) continue;
      taken.push(candidate);
      const go = visit();
      taken.pop();
      if (!go) return false;
    }
    return true;
  };
  return visit() ? found : undefined;
}
