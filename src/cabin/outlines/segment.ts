import type { MapPoint } from '../cabin.ts';

export interface Segment {
  readonly from: MapPoint;
  readonly to: MapPoint;
}

export const distance = (a: MapPoint, b: MapPoint): number => Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);

export const between = (a: MapPoint, b: MapPoint, share: number): MapPoint => [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];

/** The edges of an outline, those of no length left out; a closed outline has the one from its last point to its first. */
export function edgesOf(points: readonly MapPoint[], closed: boolean): Segment[] {
  const edges: Segment[] = [];
  points.forEach((from, index) => {
    const to = points[index + 1] ?? (closed ? points[0] : undefined);
    if (to !== undefined && distance(from, to) > 0) edges.push({ from, to });
  });
  return edges;
}

/** The point of a segment that is nearest to a point. */
export function nearestOnSegment(point: MapPoint, { from, to }: Segment): MapPoint {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const squared = dx * dx + dy * dy;
  if (squared === 0) return from;
  const share = ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / squared;
  return share <= 0 ? from : share >= 1 ? to : between(from, to, share);
}

/** Cosine of the angle between the lines of two segments, 0..1. */
export function parallelism(a: Segment, b: Segment): number {
  const [ax, ay, bx, by] = [a.to[0] - a.from[0], a.to[1] - a.from[1], b.to[0] - b.from[0], b.to[1] - b.from[1]];
  return Math.abs(ax * bx + ay * by) / Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by));
}

/** Distance of a point, by its coordinates, from a segment. */
export function distanceFromSegment(x: number, y: number, { from, to }: Segment): number {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((x - from[0]) * dx + (y - from[1]) * dy) / squared;
  const share = along <= 0 ? 0 : along >= 1 ? 1 : along;
  const footX = share === 1 ? to[0] : from[0] + dx * share;
  const footY = share === 1 ? to[1] : from[1] + dy * share;
  return Math.sqrt((footX - x) * (footX - x) + (footY - y) * (footY - y));
}

/** Distance between the boxes around two segments, which cannot be nearer. */
function boxDistance(a: Segment, b: Segment): number {
  const x = Math.max(0, Math.min(a.from[0], a.to[0]) - Math.max(b.from[0], b.to[0]), Math.min(b.from[0], b.to[0]) - Math.max(a.from[0], a.to[0]));
  const y = Math.max(0, Math.min(a.from[1], a.to[1]) - Math.max(b.from[1], b.to[1]), Math.min(b.from[1], b.to[1]) - Math.max(a.from[1], a.to[1]));
  return Math.sqrt(x * x + y * y);
}

/** The two nearest points of two sets of segments that do not cross: one of them is always an end. */
export function nearestPoints(a: readonly Segment[], b: readonly Segment[]): readonly [MapPoint, MapPoint] | undefined {
  let best: readonly [MapPoint, MapPoint] | undefined;
  let shortest = Infinity;
  for (const first of a) {
    for (const second of b) {
      if (boxDistance(first, second) >= shortest) continue;
      for (const end of [first.from, first.to]) {
        const length = distanceFromSegment(end[0], end[1], second);
        if (length < shortest) [shortest, best] = [length, [end, nearestOnSegment(end, second)]];
      }
      for (const end of [second.from, second.to]) {
        const length = distanceFromSegment(end[0], end[1], first);
        if (length < shortest) [shortest, best] = [length, [nearestOnSegment(end, first), end]];
      }
    }
  }
  return best;
}
