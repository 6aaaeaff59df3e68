import type { MapPoint } from '../cabin.ts';
import { bounds, centroid, isInside } from './polygon.ts';
import { distance, edgesOf, nearestOnSegment } from './segment.ts';

/** Cells along the longer and the shorter side of each search. */
const cells = 16;
const rounds = 4;
/** The centroid is taken where it has at least this share of the room that the best point has. */
const centroidShare = 0.8;

/**
 * A point well inside an outline, for a label: the centroid where it lies well inside, else about the point farthest from
 * the border, by a grid that is narrowed round the best cell. Outlines without an area give their centroid.
 */
export function labelPoint(points: readonly MapPoint[]): MapPoint {
  const middle = centroid(points);
  const edges = edgesOf(points, true);
  const room = (point: MapPoint): number => {
    if (!isInside(point, points)) return -1;
    let least = Infinity;
    for (const edge of edges) least = Math.min(least, distance(point, nearestOnSegment(point, edge)));
    return least;
  };
  let box = bounds(points);
  let best = middle;
  let most = room(middle);
  for (let round = 0; round < rounds; round += 1) {
    const [width, height] = [(box.right - box.left) / cells, (box.bottom - box.top) / cells];
    for (let row = 0; row < cells; row += 1) {
      for (let column = 0; column < cells; column += 1) {
        const point: MapPoint = [box.left + (column + 0.5) * width, box.top + (row + 0.5) * height];
        const value = room(point);
        if (value > most) {
          most = value;
          best = point;
        }
      }
    }
    box = { left: best[0] - width, right: best[0] + width, top: best[1] - height, bottom: best[1] + height };
  }
  return room(middle) >= centroidShare * most ? middle : best;
}
