import { polygonArea as d3Area, polygonCentroid as d3Centroid, polygonContains as d3Contains } from 'd3';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MapPoint } from '../../src/cabin/cabin.ts';
import { labelPoint } from '../../src/cabin/outlines/label-point.ts';
import { bounds, centroid, isInside, polygonArea, selfCrossing } from '../../src/cabin/outlines/polygon.ts';
import { nearestPoints, edgesOf } from '../../src/cabin/outlines/segment.ts';
import { sharedBorder } from '../../src/cabin/outlines/shared-border.ts';
import { simplify } from '../../src/cabin/outlines/simplify.ts';

const coordinate = fc.integer({ min: -500, max: 500 });
const points = fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 12 });
const asD3 = (outline: readonly MapPoint[]): [number, number][] => outline.map(([x, y]) => [x, y]);
const box = (left: number, top: number, right: number, bottom: number): MapPoint[] => [[left, top], [right, top], [right, bottom], [left, bottom]];

describe('polygon', () => {
  it('has the area that d3-polygon gives, with the opposite sign', () => {
    fc.assert(fc.property(points, (outline) => {
      expect(polygonArea(outline)).toBeCloseTo(-d3Area(asD3(outline)), 6);
    }));
  });

  it('has the centroid that d3-polygon gives', () => {
    fc.assert(fc.property(points.filter((outline) => Math.abs(d3Area(asD3(outline))) > 1), (outline) => {
      const [x, y] = d3Centroid(asD3(outline));
      const [ownX, ownY] = centroid(outline);
      expect(Math.abs(ownX - x) + Math.abs(ownY - y)).toBeLessThan(1e-6 * (1 + Math.abs(x) + Math.abs(y)));
    }));
  });

  it('holds the points that d3-polygon says it holds', () => {
    // Half a millimetre off the grid, no point lies on a border through corners of whole numbers in one direction.
    fc.assert(fc.property(points, fc.tuple(coordinate, coordinate), (outline, [x, y]) => {
      const point: [number, number] = [x + 0.5, y + Math.SQRT1_2];
      expect(isInside(point, outline)).toBe(d3Contains(asD3(outline), point));
    }));
  });

  it('knows outlines that cross themselves', () => {
    expect(selfCrossing([[0, 0], [10, 10], [10, 0], [0, 10]])).toBe(true);
    expect(selfCrossing(box(0, 0, 10, 10))).toBe(false);
    expect(selfCrossing([[0, 0], [10, 0], [10, 10], [5, 0.5], [0, 10]])).toBe(false);
    expect(selfCrossing([[0, 0], [10, 0], [5, 0], [5, 5]])).toBe(false);
    expect(selfCrossing([[0, 0], [10, 0], [10, 5], [8, 5], [8, 0], [2, 0], [2, 5], [0, 5]])).toBe(true);
  });

  it('has bounds', () => {
    expect(bounds([[3, 4], [-1, 9]])).toEqual({ left: -1, top: 4, right: 3, bottom: 9 });
  });
});

describe('labelPoint', () => {
  it('lies inside even where the centroid does not', () => {
    const horseshoe: MapPoint[] = [[0, 0], [100, 0], [100, 20], [20, 20], [20, 80], [100, 80], [100, 100], [0, 100]];
    expect(d3Contains(asD3(horseshoe), asD3([centroid(horseshoe)])[0] ?? [0, 0])).toBe(false);
    expect(d3Contains(asD3(horseshoe), asD3([labelPoint(horseshoe)])[0] ?? [0, 0])).toBe(true);
    expect(labelPoint(box(0, 0, 40, 20))).toEqual([20, 10]);
  });
});

describe('nearestPoints', () => {
  it('is as near as the nearest of many points along both', () => {
    const a = box(0, 0, 10, 10);
    const b: MapPoint[] = [[25, 5], [40, -5], [40, 15]];
    expect(nearestPoints(edgesOf(a, true), edgesOf(b, true))).toEqual([[10, 5], [25, 5]]);
  });
});

describe('simplify', () => {
  it('leaves out what lies on the line and keeps the bend', () => {
    expect(simplify([[0, 0], [1, 0.01], [2, 0], [2, 1], [2, 2]], 0.1)).toEqual([[0, 0], [2, 0], [2, 2]]);
  });
});

const closed = (outline: readonly MapPoint[]) => ({ points: outline, closed: true });

describe('sharedBorder', () => {
  it('runs midway along the gap, over the shorter of two edges', () => {
    const line = sharedBorder(closed(box(0, 0, 100, 50)), closed(box(20, 54, 60, 90)), 8);
    expect(new Set(line?.map(([, y]) => y))).toEqual(new Set([52]));
    expect(line?.map(([x]) => x).sort((a, b) => a - b)).toEqual([20, 60]);
  });

  it('turns the corner that both parts turn', () => {
    const corner: MapPoint[] = [[0, 0], [100, 0], [100, 20], [20, 20], [20, 100], [0, 100]];
    const line = sharedBorder(closed(corner), closed(box(24, 24, 100, 100)), 8) ?? [];
    expect(Math.max(...line.map(([x]) => x))).toBeGreaterThan(95);
    expect(Math.max(...line.map(([, y]) => y))).toBeGreaterThan(95);
  });

  it('finds a touching edge and none across a wide gap or a corner', () => {
    expect(sharedBorder(closed(box(0, 0, 10, 10)), closed(box(10, 0, 20, 10)), 8)).toHaveLength(2);
    expect(sharedBorder(closed(box(0, 0, 10, 10)), closed(box(30, 0, 40, 10)), 8)).toBeUndefined();
    expect(sharedBorder(closed(box(0, 0, 100, 100)), closed(box(104, 104, 200, 200)), 8)).toBeUndefined();
  });

  it('goes all round an inlay and along a thread that lies on a part', () => {
    expect(sharedBorder(closed(box(0, 0, 100, 100)), closed(box(40, 40, 60, 60)), 8)).toHaveLength(5);
    const thread = { points: [[10, 50], [90, 50]] as const, closed: false };
    expect(sharedBorder(closed(box(0, 0, 100, 100)), thread, 8)).toEqual([[10, 50], [90, 50]]);
  });

  it('is the same line whichever part is called first', () => {
    const [a, b] = [closed(box(0, 0, 100, 50)), closed(box(20, 54, 60, 90))];
    expect(sharedBorder(a, b, 8)).toEqual(sharedBorder(b, a, 8));
  });
});
