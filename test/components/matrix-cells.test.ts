import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jointsBetween, jointsOfPart, nextJoint } from '../../components/model/matrix-cells.ts';
import { MatrixRows } from '../../components/figures/matrix-rows.ts';
import type { Part } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import { madeUpCabin, madeUpJudgement } from '../support/hand-made-judgement.ts';

const [pattern] = madeUpJudgement.joints;
const part = (place: number): Part => ({ ...madeUpCabin.parts[0] as Part, id: `p${place}`, name: `Part ${place}` });
const joint = (id: string, first: number, second: number, verdict: JointResult['verdict'] = 'holds'): JointResult =>
  ({ ...(pattern as JointResult), id, parts: [`p${first}`, `p${second}`], verdict });

const square = fc.integer({ min: 2, max: 7 }).chain((count) => fc.record({
  count: fc.constant(count),
  pairs: fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)).filter(([first, second]) => first !== second), { maxLength: 9 }),
  row: fc.nat(count - 1), column: fc.nat(count - 1), by: fc.constantFrom(1 as const, -1 as const),
}));

test('the next joint is the one that looking into every cell finds', () => {
  fc.assert(fc.property(square, ({ count, pairs, row, column, by }) => {
    const order = Array.from({ length: count }, (_, place) => part(place));
    const joints = pairs.map(([first, second], place) => joint(`j${place}`, first, second));
    const has = (place: number): boolean => pairs.some(([first, second]) => [first * count + second, second * count + first].includes(place));
    const start = row * count + column;
    const found = Array.from({ length: count * count }, (_, step) => (start + by * (step + 1) + count * count) % (count * count)).find(has);
    const expected = found === undefined ? undefined : { row: Math.floor(found / count), column: found % count };
    expect(nextJoint(order, jointsOfPart(joints), { row, column }, by)).toEqual(expected);
  }));
});

test('of several joints between two parts the worst comes first, whichever part is named first', () => {
  const joints = [joint('holding', 0, 1), joint('clashing', 1, 0, 'clashes'), joint('open', 0, 1, 'open'), joint('other', 0, 2, 'clashes')];
  const ids = (first: string, second: string): string[] => jointsBetween(jointsOfPart(joints), first, second).map(({ id }) => id);
  expect(ids('p0', 'p1')).toEqual(['clashing', 'open', 'holding']);
  expect(ids('p1', 'p0')).toEqual(['clashing', 'open', 'holding']);
  expect(ids('p1', 'p2')).toEqual([]);
  expect(ids('p0', 'p0')).toEqual([]);
});

test('rows of a matrix that show the same are the same drawings again; the one the keys leave and the one they come to are not', () => {
  const order = [0, 1, 2, 3].map(part);
  const content = { order, joints: jointsOfPart([joint('j', 0, 1)]), passing: new Set<JointResult>(), colours: new Map() };
  const rows = new MatrixRows();
  const before = rows.draw(content, [0, 1, 2], [0, 1, 2, 3], { row: 0, column: 0 });
  const after = rows.draw(content, [1, 2, 3], [0, 1, 2, 3], { row: 1, column: 2 });
  expect(after.map(({ row }) => row)).toEqual([1, 2, 3]);
  expect(after[1]?.drawn).toBe(before[2]?.drawn);
  expect(after[0]?.drawn).not.toBe(before[1]?.drawn);
  expect(after[0]?.drawn.children.filter((cell) => typeof cell === 'object' && cell.attributes['aria-selected'] === 'true')).toHaveLength(1);
  const changed = rows.draw({ ...content }, [1, 2, 3], [0, 1, 2, 3], { row: 1, column: 2 });
  expect(changed[1]?.drawn).not.toBe(after[1]?.drawn);
});
