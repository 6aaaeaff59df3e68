import { describe, expect, it } from 'vitest';
import type { MapPoint, Part } from '../../src/cabin/cabin.ts';
import { demoCabin } from './demo-cabins.ts';

/** Crossing-number test, written for this file. */
function contains(ring: readonly MapPoint[], x: number, y: number): boolean {
  let inside = false;
  for (let index = 0, last = ring.length - 1; index < ring.length; last = index, index += 1) {
    const [ax, ay] = ring[index];
    const [bx, by] = ring[last];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

const isThread = (part: Part): boolean => part.sources[0].material === 'thread';

interface Box {
  part: Part;
  ring: readonly MapPoint[];
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const boxOf = (part: Part): Box => {
  const ring = part.outline ?? [];
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  return { part, ring, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
};

/** Least distance of the corners and edge middles of one ring to the edges of another. */
function gapBetween(first: readonly MapPoint[], second: readonly MapPoint[]): number {
  let least = Infinity;
  first.forEach(([x, y], index) => {
    const [nextX, nextY] = first[(index + 1) % first.length];
    for (const [px, py] of [
      [x, y],
      [(x + nextX) / 2, (y + nextY) / 2],
    ]) {
      second.forEach(([ax, ay], at) => {
        const [bx, by] = second[(at + 1) % second.length];
        const length = (bx - ax) ** 2 + (by - ay) ** 2;
        const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / length));
        least = Math.min(least, Math.hypot(px - ax - share * (bx - ax), py - ay - share * (by - ay)));
      });
    }
  });
  return least;
}

// The light colourway has the map of the dark one: see demo-files.test.ts.
describe.each(['shuttle-slate', 'first-steps'] as const)('the map of %s', (name) => {
  const cabin = demoCabin(name);
  const faces = cabin.parts.filter((part) => !isThread(part)).map(boxOf);

  it('has an outline for every part', () => {
    expect(cabin.parts.filter((part) => (part.outline?.length ?? 0) < 2)).toEqual([]);
  });

  it('has no two faces over each other, looked at every 7 mm', () => {
    const overlaps = new Set<string>();
    for (let y = 2.3; y < 1960; y += 7) {
      const row = faces.filter((face) => face.top < y && face.bottom > y);
      for (let x = 2.7; x < 3600; x += 7) {
        const over = row.filter((face) => face.left < x && face.right > x && contains(face.ring, x, y));
        if (over.length > 1) overlaps.add(over.map((face) => face.part.id).join(' over '));
      }
    }
    expect([...overlaps]).toEqual([]);
  });

  it('has the faces of every joint that touches 4 to 8 mm apart', () => {
    for (const joint of cabin.joints) {
      const [first, second] = joint.parts.map((id) => faces.find((face) => face.part.id === id));
      if (joint.kind === 'sightline' || !first || !second) continue;
      const gap = Math.min(gapBetween(first.ring, second.ring), gapBetween(second.ring, first.ring));
      expect(gap, joint.id).toBeGreaterThan(4);
      expect(gap, joint.id).toBeLessThan(8);
      expect(joint.lengthMm, joint.id).toBeGreaterThanOrEqual(30);
    }
  });

  it('stays on the sheet', () => {
    for (const face of faces) {
      expect(face.left).toBeGreaterThan(0);
      expect(face.top).toBeGreaterThan(0);
      expect(face.right).toBeLessThan(3600);
      expect(face.bottom).toBeLessThan(1960);
    }
  });
});

describe('the hands of the shuttle', () => {
  const cabin = demoCabin('shuttle-slate');
  // The mid dash is cut out for the steering column on the driver's side only.
  const pairs = cabin.parts.filter((part) => part.mirrorOf !== undefined && part.id !== 'mid-dash-right');

  it('mirror each other about the middle of the map', () => {
    expect(pairs.length).toBeGreaterThanOrEqual(15);
    const keyed = (points: readonly MapPoint[]) => points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).sort();
    for (const part of pairs) {
      const left = cabin.parts.find((other) => other.id === part.mirrorOf)?.outline ?? [];
      expect(keyed(part.outline ?? []), part.id).toEqual(keyed(left.map(([x, y]) => [3600 - x, y])));
    }
  });
});
