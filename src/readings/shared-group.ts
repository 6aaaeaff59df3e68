import type { GeometryClass } from './reading.ts';
import type { ReadingGroup } from './reading-groups.ts';

/** The two groups that a joint is judged on, or why there are none. */
export type GroupChoice =
  | { readonly kind: 'shared'; readonly first: ReadingGroup; readonly second: ReadingGroup; readonly geometryClass: GeometryClass }
  /** Both sides are measured, but not alike: good for a greyed, indicative value that is never counted. */
  | { readonly kind: 'unlike'; readonly first: ReadingGroup; readonly second: ReadingGroup }
  | { readonly kind: 'missing'; readonly side: 'first' | 'second' | 'both' };

/**
 * Picks the groups that two sides are compared on: the first geometry class of `order` that both have.
 * Several groups of that class: one instrument for both sides goes first, then the same aperture class and UV state, then the
 * most spots on the poorer side. Readings of unknown geometry are never shared; multi-angle ones at the same angle only.
 * Swapping the sides picks the same groups.
 */
export function pickSharedGroup(
  first: readonly ReadingGroup[], second: readonly ReadingGroup[], order: readonly GeometryClass[],
): GroupChoice {
  if (first.length === 0 || second.length === 0) {
    return { kind: 'missing', side: first.length > 0 ? 'second' : second.length > 0 ? 'first' : 'both' };
  }
  for (const geometry of order) {
    if (geometry === 'unknown') continue;
    const pair = best(first.filter((group) => group.geometryClass === geometry), second.filter((group) => group.geometryClass === geometry), sameAngle);
    if (pair !== undefined) return { kind: 'shared', first: pair[0], second: pair[1], geometryClass: geometry };
  }
  const rank = (group: ReadingGroup): number => (order.includes(group.geometryClass) ? order.indexOf(group.geometryClass) : order.length);
  const foremost = (groups: readonly ReadingGroup[]): ReadingGroup =>
    [...groups].sort((p, q) => rank(p) - rank(q) || q.spots - p.spots || compare(p.instrument, q.instrument))[0];
  return { kind: 'unlike', first: foremost(first), second: foremost(second) };
}

const sameAngle = (p: ReadingGroup, q: ReadingGroup): boolean => p.aspecularDeg === q.aspecularDeg;

const compare = (p: string, q: string): number => (p < q ? -1 : Number(p > q));

function best(
  first: readonly ReadingGroup[], second: readonly ReadingGroup[], allowed: (p: ReadingGroup, q: ReadingGroup) => boolean,
): readonly [ReadingGroup, ReadingGroup] | undefined {
  const pairs = first.flatMap((p) => second.filter((q) => allowed(p, q)).map((q) => [p, q] as const));
  const merits = ([p, q]: readonly [ReadingGroup, ReadingGroup]): number[] => [
    Number(p.instrument === q.instrument), Number(p.apertureClass === q.apertureClass) + Number(p.uv === q.uv),
    Math.min(p.spots, q.spots), p.spots + q.spots,
  ];
  const key = (group: ReadingGroup): string => [group.instrument, group.apertureClass, group.uv].join(' ');
  const name = ([p, q]: readonly [ReadingGroup, ReadingGroup]): string => [key(p), key(q)].sort().join('|');
  return pairs.sort((m, n) => {
    const merit = merits(m);
    const other = merits(n);
    const differs = merit.findIndex((value, i) => value !== other[i]);
    return differs < 0 ? compare(name(m), name(n)) : other[differs] - merit[differs];
  })[0];
}
