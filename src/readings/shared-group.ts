import { aperturesMayBeAlike } from './aperture-class.ts';
import type { GeometryClass } from './reading.ts';
import type { ReadingGroup } from './reading-groups.ts';

/** The two groups that a joint is judged on, or why there are none. */
export type GroupChoice =
  | { readonly kind: 'shared'; readonly first: ReadingGroup; readonly second: ReadingGroup; readonly geometryClass: GeometryClass }
  /** Both sides are measured, but not alike: good for a greyed, indicative value that is never counted. */
  | { readonly kind: 'unlike'; readonly differs: 'geometry' | 'angle' | 'aperture'; readonly first: ReadingGroup; readonly second: ReadingGroup }
  | { readonly kind: 'missing'; readonly side: 'first' | 'second' | 'both' };

/**
 * Picks the groups that two sides are compared on: the first geometry class of `order` that both have, in aperture classes that are alike or
 * not stated. Several groups of that class: one instrument for both sides goes first, then the same stated aperture class and UV state,
 * then the most spots on the poorer side. Readings of unknown geometry are never shared; multi-angle ones at the same angle only.
 * Where nothing is shared, an indicative pair that differs in as little as possible. Swapping the sides picks the same groups.
 */
export function pickSharedGroup(
  first: readonly ReadingGroup[], second: readonly ReadingGroup[], order: readonly GeometryClass[],
): GroupChoice {
  if (first.length === 0 || second.length === 0) {
    return { kind: 'missing', side: first.length > 0 ? 'second' : second.length > 0 ? 'first' : 'both' };
  }
  const inOrder = order.filter((geometry) => geometry !== 'unknown');
  const among = (allowed: (p: ReadingGroup, q: ReadingGroup) => boolean): GroupChoice & { kind: 'shared' } | undefined => {
    for (const geometryClass of inOrder) {
      const pair = best(first.filter((group) => group.geometryClass === geometryClass), second.filter((group) => group.geometryClass === geometryClass), allowed);
      if (pair !== undefined) return { kind: 'shared', first: pair[0], second: pair[1], geometryClass };
    }
    return undefined;
  };
  const shared = among((p, q) => sameAngle(p, q) && likeAperture(p, q));
  if (shared !== undefined) return shared;
  const unlike = [['aperture', among(sameAngle)], ['angle', among(() => true)]] as const;
  for (const [differs, pair] of unlike) if (pair !== undefined) return { kind: 'unlike', differs, first: pair.first, second: pair.second };
  const rank = (group: ReadingGroup): number => (order.includes(group.geometryClass) ? order.indexOf(group.geometryClass) : order.length);
  const foremost = (groups: readonly ReadingGroup[]): ReadingGroup =>
    [...groups].sort((p, q) => rank(p) - rank(q) || q.spots - p.spots || compare(p.instrument, q.instrument))[0];
  return { kind: 'unlike', differs: 'geometry', first: foremost(first), second: foremost(second) };
}

const likeAperture = (p: ReadingGroup, q: ReadingGroup): boolean => aperturesMayBeAlike(p.apertureClass, q.apertureClass);

const sameAngle = (p: ReadingGroup, q: ReadingGroup): boolean => p.aspecularDeg === q.aspecularDeg;

const compare = (p: string, q: string): number => (p < q ? -1 : Number(p > q));

function best(
  first: readonly ReadingGroup[], second: readonly ReadingGroup[], allowed: (p: ReadingGroup, q: ReadingGroup) => boolean,
): readonly [ReadingGroup, ReadingGroup] | undefined {
  const pairs = first.flatMap((p) => second.filter((q) => allowed(p, q)).map((q) => [p, q] as const));
  const merits = ([p, q]: readonly [ReadingGroup, ReadingGroup]): number[] => [
    Number(p.instrument === q.instrument), Number(p.apertureClass === q.apertureClass && p.apertureClass !== 'unknown') + Number(p.uv === q.uv),
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

/** Why two groups may not be compared, to follow a colon: "one side was measured at 45:0, the other at di:8". */
export function unlikeText({ differs, first, second }: GroupChoice & { kind: 'unlike' }): string {
  if (differs === 'aperture') return `one side was measured through an aperture of ${first.apertureClass}, the other of ${second.apertureClass}`;
  if (differs === 'angle') return `one side was measured at an aspecular angle of ${first.aspecularDeg ?? 'no stated'}°, the other of ${second.aspecularDeg ?? 'no stated'}°`;
  if (first.geometryClass !== second.geometryClass) return `one side was measured at ${first.geometryClass}, the other at ${second.geometryClass}`;
  return first.geometryClass === 'unknown' ? 'the geometry of neither side is stated' : `both sides were measured at ${first.geometryClass}, by which the rule book does not compare them`;
}
