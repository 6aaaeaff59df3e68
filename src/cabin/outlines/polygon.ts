import type { MapPoint } from '../cabin.ts';

/** Signed area of a polygon by the shoelace sum, mm²; positive where the corners run clockwise on a map with y down. */
export function polygonArea(points: readonly MapPoint[]): number {
  let sum = 0;
  points.forEach(([x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
    sum += x * nextY - nextX * y;
  });
  return sum / 2;
}

/** Centre of gravity of the area; of the corners where the area is nothing. */
export function centroid(points: readonly MapPoint[]): MapPoint {
  const [originX, originY] = points[0] ?? [0, 0];
  let doubled = 0;
  let sumX = 0;
  let sumY = 0;
  // Taken from the first corner, so that far-off outlines lose no digits.
  points.forEach(([x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
    const cross = (x - originX) * (nextY - originY) - (nextX - originX) * (y - originY);
    doubled += cross;
    sumX += (x + nextX - 2 * originX) * cross;
    sumY += (y + nextY - 2 * originY) * cross;
  });
  if (Math.abs(doubled) < 1e-9) {
    const count = Math.max(1, points.length);
    return [points.reduce((sum, [x]) => sum + x, 0) / count, points.reduce((sum, [, y]) => sum + y, 0) / count];
  }
  return [originX + sumX / (3 * doubled), originY + sumY / (3 * doubled)];
}

export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The smallest upright box around the points; without points, a box of no size at the origin. */
export function bounds(points: readonly MapPoint[]): Bounds {
  if (points.length === 0) return { left: 0, top: 0, right: 0, bottom: 0 };
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

/** Whether a point lies inside a polygon, by the even-odd rule; points on the border may count either way. */
export const isInside = (point: MapPoint, polygon: readonly MapPoint[]): boolean => isInsideAt(point[0], point[1], polygon);

/** The same for a point by its coordinates. */
export function isInsideAt(x: number, y: number, polygon: readonly MapPoint[]): boolean {
  let inside = false;
  let last = polygon.length - 1;
  for (let index = 0; index < polygon.length; last = index, index += 1) {
    const from = polygon[last];
    const to = polygon[index];
    if (from[1] > y !== to[1] > y && x < from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0])) inside = !inside;
  }
  return inside;
}

const turn = (a: MapPoint, b: MapPoint, c: MapPoint): number => Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));

/** Whether two edges cross, or lie on one another over a length; edges that only touch at a point do not count. */
function edgesCross(a: MapPoint, b: MapPoint, c: MapPoint, d: MapPoint): boolean {
  const [abc, abd, cda, cdb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (abc !== 0 || abd !== 0 || cda !== 0 || cdb !== 0) return abc * abd < 0 && cda * cdb < 0;
  const along = Math.abs(b[0] - a[0]) >= Math.abs(b[1] - a[1]) ? 0 : 1;
  const overlap = Math.min(Math.max(a[along], b[along]), Math.max(c[along], d[along])) - Math.max(Math.min(a[along], b[along]), Math.min(c[along], d[along]));
  return overlap > 0;
}

/** Whether a closed outline crosses itself. Outlines of more than 1000 points are not searched and answer false. */
export function selfCrossing(points: readonly MapPoint[]): boolean {
  const closed = points.filter((point, index) => {
    const next = points[(index + 1) % points.length] ?? point;
    return point[0] !== next[0] || point[1] !== next[1];
  });
  const count = closed.length;
  if (count < 4 || count > 1000) return false;
  const end = (edge: number): MapPoint => closed[(edge + 1) % count];
  const [left, right, top, bottom] = [new Float64Array(count), new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let edge = 0; edge < count; edge += 1) {
    const [from, to] = [closed[edge], end(edge)];
    left[edge] = Math.min(from[0], to[0]);
    right[edge] = Math.max(from[0], to[0]);
    top[edge] = Math.min(from[1], to[1]);
    bottom[edge] = Math.max(from[1], to[1]);
  }
  // From left to right, an edge can only meet those that begin before it ends.
  const order = Array.from(closed, (_, edge) => edge).sort((one, two) => left[one] - left[two]);
  for (let at = 0; at < count; at += 1) {
    const first = order[at];
    for (let next = at + 1; next < count && left[order[next]] <= right[first]; next += 1) {
      const second = order[next];
      const apart = Math.abs(first - second);
      if (top[second] > bottom[first] || bottom[second] < top[first] || apart === 1 || apart === count - 1) continue;
      if (edgesCross(closed[first], end(first), closed[second], end(second))) return true;
    }
  }
  return false;
}
