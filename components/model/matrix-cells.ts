import type { Cabin, Part } from '../../src/cabin/cabin.ts';
import type { JointResult, Verdict } from '../../src/harmony/judgement.ts';
import { leadingCheck } from './leading-check.ts';
import { remembered } from './remembered.ts';

/** Parts in the order of the matrix: zone by zone, and within one as in the document. */
export const matrixOrder = remembered((cabin: Cabin): readonly Part[] => {
  const zones = new Map(cabin.zones.map(({ id }, place) => [id, place]));
  return cabin.parts.toSorted((first, second) => (zones.get(first.zone) ?? 0) - (zones.get(second.zone) ?? 0));
});

const rank: Readonly<Record<Verdict, number>> = { clashes: 2, open: 1, holds: 0 };

/** The joints between every two parts that have any, the worst first, by the ids of the two in either order. */
export type JointPairs = ReadonlyMap<string, ReadonlyMap<string, readonly JointResult[]>>;

export const jointsByPair = remembered((joints: readonly JointResult[]): JointPairs => {
  const pairs = new Map<string, Map<string, readonly JointResult[]>>();
  const put = (from: string, to: string, among: readonly JointResult[]): void => {
    const row = pairs.get(from);
    if (row === undefined) pairs.set(from, new Map([[to, among]]));
    else row.set(to, among);
  };
  for (const joint of joints) {
    const [first, second] = joint.parts;
    const before = pairs.get(first)?.get(second);
    const among = before === undefined ? [joint] : [...before, joint].sort(worseFirst);
    put(first, second, among);
    put(second, first, among);
  }
  return pairs;
});

const worseFirst = (one: JointResult, other: JointResult): number =>
  rank[other.verdict] - rank[one.verdict] || (leadingCheck(other)?.limitUse ?? 0) - (leadingCheck(one)?.limitUse ?? 0);

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
