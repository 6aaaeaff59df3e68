import type { MapPoint } from '../cabin.ts';
import { bounds, centroid, isInsideAt } from './polygon.ts';
import { distanceFromSegment, edgesOf } from './segment.ts';

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
  /** Distance from the border, -1 outside; of a point that has no more than `enough`, some number that is no more either. */
  const room = (x: number, y: number, enough: number): number => {
    let least = Infinity;
    for (let index = 0; index < edges.length && least > enough; index += 1) least = Math.min(least, distanceFromSegment(x, y, edges[index]));
    return least <= enough ? least : isInsideAt(x, y, points) ? least : -1;
  };
  let box = bounds(points);
  let best = middle;
  const roomOfMiddle = room(middle[0], middle[1], -1);
  let most = roomOfMiddle;
  for (let round = 0; round < rounds; round += 1) {
    const [width, height] = [(box.right - box.left) / cells, (box.bottom - box.top) / cells];
    for (let row = 0; row < cells; row += 1) {
      for (let column = 0; column < cells; column += 1) {
        const x = box.left + (column + 0.5) * width;
        const y = box.top + (row + 0.5) * height;
        const value = room(x, y, most);
        if (value > most) {
          most = value;
          best = [x, y];
        }
      }
    }
    box = { left: best[0] - width, right: best[0] + width, top: best[1] - height, bottom: best[1] + height };
  }
  return roomOfMiddle >= centroidShare * most ? middle : best;
}
