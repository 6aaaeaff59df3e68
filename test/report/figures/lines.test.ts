import { expect, test } from 'vitest';
import { hatchPath } from '../../../src/report/figures/hatch.ts';
import { insetPolyline, placeAlong, polylineLength, sawtooth } from '../../../src/report/figures/polyline.ts';
import type { Point } from '../../../src/report/figures/polyline.ts';

const corner: readonly Point[] = [[0, 0], [30, 0], [30, 40]];

test('a corner of 30 and 40 is 70 long, and 50 along it is 20 down the second leg', () => {
  expect(polylineLength(corner)).toBe(70);
  expect(placeAlong(corner, 50).point).toEqual([30, 20]);
});

test('places before the start and past the end are the ends', () => {
  expect(placeAlong(corner, -5).point).toEqual([0, 0]);
  expect(placeAlong(corner, 500).point).toEqual([30, 40]);
});

test('the saw has whole teeth, stays within its amplitude and ends where the line ends', () => {
  const blade = sawtooth([[0, 0], [100, 0]], 10, 3);
  expect(blade).toHaveLength(21);
  expect(Math.max(...blade.map(([, y]) => Math.abs(y)))).toBe(3);
  expect(blade[0]?.[0]).toBe(0);
  expect(blade.at(-1)?.[0]).toBe(100);
});

test('every tooth falls straight back: pairs of points share their place along the line', () => {
  const blade = sawtooth([[0, 0], [60, 0]], 10, 3);
  for (let i = 1; i + 1 < blade.length; i += 2) expect(blade[i]?.[0]).toBeCloseTo(blade[i + 1]?.[0] as number, 9);
});

test('the shortest line still has two teeth, and no line has none', () => {
  expect(sawtooth([[0, 0], [1, 0]], 10, 3)).toHaveLength(5);
  expect(sawtooth([[4, 4], [4, 4]], 10, 3)).toEqual([[4, 4], [4, 4]]);
});

test('an inset takes the same from both ends, unless nothing would be left', () => {
  expect(insetPolyline(corner, 10)).toEqual([[10, 0], [30, 0], [30, 30]]);
  expect(insetPolyline([[0, 0], [20, 0]], 10)).toEqual([[0, 0], [20, 0]]);
});

test('hatching of a square is cut at its sides: total length is area over spacing across the lines', () => {
  const side = 60;
  const spacing = 6;
  const numbers = [...hatchPath([[0, 0], [side, 0], [side, side], [0, side]], spacing).matchAll(/M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)/g)].map((match) => match.slice(1).map(Number));
  const length = numbers.reduce((sum, [x1, y1, x2, y2]) => sum + Math.hypot((x2 as number) - (x1 as number), (y2 as number) - (y1 as number)), 0);
  // Lines of constant x + y, spacing apart in that sum, lie spacing / sqrt(2) apart on the paper.
  expect(length).toBeCloseTo((side * side) / (spacing / Math.SQRT2), -1);
  for (const [x1, y1, x2, y2] of numbers) for (const value of [x1, y1, x2, y2]) expect(value).toBeGreaterThanOrEqual(0);
});
