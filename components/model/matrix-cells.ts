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

export type JointsOfPart = ReadonlyMap<string, readonly JointResult[]>;

/** The joints of every part that has any. */
export const jointsOfPart = remembered((joints: readonly JointResult[]): JointsOfPart => {
  const found = new Map<string, JointResult[]>();
  for (const joint of joints) {
    for (const part of joint.parts) {
      const known = found.get(part);
      if (known === undefined) found.set(part, [joint]);
      else known.push(joint);
    }
  }
  return found;
});

/** The joints between two parts, the worst first; between a part and itself, none. */
export function jointsBetween(joints: JointsOfPart, first: string, second: string): readonly JointResult[] {
  if (first === second) return [];
  return (joints.get(first) ?? []).filter(({ parts }) => parts[0] === second || parts[1] === second).sort(worseFirst);
}

const worseFirst = (one: JointResult, other: JointResult): number =>
  rank[other.verdict] - rank[one.verdict] || (leadingCheck(other)?.limitUse ?? 0) - (leadingCheck(one)?.limitUse ?? 0);

const placeOfPart = remembered((order: readonly Part[]): ReadonlyMap<string, number> => new Map(order.map(({ id }, place) => [id, place])));

/** The next cell with a joint, row by row, on from the end at the beginning; the cell itself where no other has one, undefined where none has. */
export function nextJoint(order: readonly Part[], joints: JointsOfPart, { row, column }: MatrixPlace, by: 1 | -1): MatrixPlace | undefined {
  const places = placeOfPart(order);
  const ofRow = (at: number): number[] => (joints.get(order[at]?.id ?? '') ?? [])
    .flatMap(({ parts }) => parts.map((part) => places.get(part) ?? at)).filter((place) => place !== at).sort((a, b) => by * (a - b));
  const onward = ofRow(row).find((place) => by * (place - column) > 0);
  if (onward !== undefined) return { row, column: onward };
  for (let step = 1; step <= order.length; step += 1) {
    const next = (row + by * step + order.length) % order.length;
    const [first] = ofRow(next);
    if (first !== undefined) return { row: next, column: first };
  }
  return undefined;
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
