import type { Cabin, Part } from '../../src/cabin/cabin.ts';
import type { JointResult, Judgement, Verdict } from '../../src/harmony/judgement.ts';
import { leadingCheck } from './leading-check.ts';

/** Parts in the order of the matrix: zone by zone, and within one as in the document. */
export function matrixOrder(cabin: Cabin): readonly Part[] {
  const zones = new Map(cabin.zones.map(({ id }, place) => [id, place]));
  return cabin.parts.toSorted((first, second) => (zones.get(first.zone) ?? 0) - (zones.get(second.zone) ?? 0));
}

const rank: Readonly<Record<Verdict, number>> = { clashes: 2, open: 1, holds: 0 };

/** The joints between every two parts that have any, the worst first, by the ids of the two in either order. */
export function jointsByPair(judgement: Judgement): ReadonlyMap<string, ReadonlyMap<string, readonly JointResult[]>> {
  const pairs = new Map<string, Map<string, JointResult[]>>();
  for (const joint of judgement.joints) {
    const [first, second] = joint.parts;
    for (const [from, to] of [[first, second], [second, first]] as const) {
      const row = pairs.get(from) ?? new Map<string, JointResult[]>();
      pairs.set(from, row);
      row.set(to, [...row.get(to) ?? [], joint].sort((one, other) =>
        rank[other.verdict] - rank[one.verdict] || (leadingCheck(other)?.limitUse ?? 0) - (leadingCheck(one)?.limitUse ?? 0)));
    }
  }
  return pairs;
}

export interface MatrixPlace { readonly row: number; readonly column: number }

/** Where a key leads in a square of `count` parts; undefined for a key that leads nowhere. */
export function matrixStep({ row, column }: MatrixPlace, key: string, whole: boolean, count: number): MatrixPlace | undefined {
  const held = (value: number): number => Math.max(0, Math.min(count - 1, value));
  switch (key) {
    case 'ArrowRight': return { row, column: held(column + 1) };
    case 'ArrowLeft': return { row, column: held(column - 1) };
    case 'ArrowDown': return { row: held(row + 1), column };
    case 'ArrowUp': return { row: held(row - 1), column };
    case 'PageDown': return { row: held(row + 10), column };
    case 'PageUp': return { row: held(row - 10), column };
    case 'Home': return { row: whole ? 0 : row, column: 0 };
    case 'End': return { row: whole ? count - 1 : row, column: count - 1 };
    default: return undefined;
  }
}
