import type { MapPoint } from '../cabin.ts';
import { distanceFromSegment } from './segment.ts';

/** A line with the points left out that lie within a tolerance of it (Ramer 1972; Douglas and Peucker 1973). */
export function simplify(points: readonly MapPoint[], tolerance: number): MapPoint[] {
  const keep = new Set([0, points.length - 1]);
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [first, last] = span;
    const [from, to] = [points[first], points[last]];
    if (from === undefined || to === undefined) continue;
    const chord = { from, to };
    let farthest = -1;
    let most = tolerance;
    for (let index = first + 1; index < last; index += 1) {
      const point = points[index] ?? from;
      const away = distanceFromSegment(point[0], point[1], chord);
      if (away > most) {
        most = away;
        farthest = index;
      }
    }
    if (farthest < 0) continue;
    keep.add(farthest);
    spans.push([first, farthest], [farthest, last]);
  }
  return points.filter((_, index) => keep.has(index));
}
