import { expect, test } from 'vitest';
import type { MapJoint } from '../../../src/report/figures/cabin-map.ts';
import { jointFields } from '../../../src/report/figures/joint-fields.ts';

const joint = (id: number, x: number, y: number): MapJoint => ({ id: String(id), path: [[x, y], [x + 1, y], [x + 1, y + 1]], verdict: 'holds', label: '' });
const extent = { left: 0, top: 0, right: 101, bottom: 51 };

test('every joint is in one cell, in the order of the list, and the cells of a large map are small', () => {
  const joints = Array.from({ length: 5000 }, (_, at) => joint(at, (at * 37) % 100, Math.floor(at / 100)));
  const fields = jointFields(joints, extent);
  const cells = fields.flatMap(({ cells: own }) => own);
  expect(cells.flat().map(({ id }) => Number(id)).sort((a, b) => a - b)).toEqual(joints.map((_, at) => at));
  expect(new Set(fields.map(({ key }) => key)).size).toBe(fields.length);
  for (const cell of cells) {
    const ids = cell.map(({ id }) => Number(id));
    expect(ids).toEqual([...ids].sort((a, b) => a - b));
    const [xs, ys] = [cell.map(({ path }) => path[0]?.[0] ?? 0), cell.map(({ path }) => path[0]?.[1] ?? 0)];
    // A tenth of the extent is more than one of the fourteen columns and rows that 5,000 joints are put in.
    expect(Math.max(...xs) - Math.min(...xs)).toBeLessThan(10.1);
    expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan(5.1);
  }
});

test('a few joints, all joints in one place, and none at all', () => {
  expect(jointFields([joint(0, 3, 3), joint(1, 90, 40)], extent).flatMap(({ cells }) => cells).flat()).toHaveLength(2);
  const heap = Array.from({ length: 1000 }, (_, at) => joint(at, 7, 7));
  expect(jointFields(heap, { left: 7, top: 7, right: 7, bottom: 7 }).flatMap(({ cells }) => cells).flat()).toHaveLength(1000);
  expect(jointFields([], extent)).toEqual([]);
});
