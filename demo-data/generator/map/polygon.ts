import type { MapPoint } from '../../../src/cabin/cabin.ts';

const sameness = 0.5;

/** Joins runs of points to one closed ring: neighbours closer than half a millimetre become one point. */
export function ring(...runs: readonly (readonly MapPoint[])[]): MapPoint[] {
  const points: MapPoint[] = [];
  for (const point of runs.flat()) {
    const last = points.at(-1);
    if (!last || Math.hypot(point[0] - last[0], point[1] - last[1]) > sameness) points.push(point);
  }
  const first = points[0];
  const last = points.at(-1);
  if (first && last && points.length > 1 && Math.hypot(first[0] - last[0], first[1] - last[1]) <= sameness) points.pop();
  return points;
}

/** Twice the signed area: positive where the ring runs clockwise on a map whose y points down. */
export function signedArea(points: readonly MapPoint[]): number {
  let sum = 0;
  points.forEach(([x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length];
    sum += x * nextY - nextX * y;
  });
  return sum;
}

/**
 * Moves every edge of a ring inward by `distance` millimetres and joins the moved edges where they cross.
 * Meant for gentle rings: edges longer than the distance, corners not much sharper than 30 degrees.
 */
export function inset(points: readonly MapPoint[], distance: number): MapPoint[] {
  const inward = signedArea(points) > 0 ? 1 : -1;
  const count = points.length;
  const edges = points.map((from, index) => {
    const to = points[(index + 1) % count];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return { x: (to[0] - from[0]) / length, y: (to[1] - from[1]) / length };
  });
  return points.map(([x, y], index) => {
    const before = edges[(index + count - 1) % count];
    const after = edges[index];
    const cosine = before.x * after.x + before.y * after.y;
    const scale = (distance * inward) / Math.max(0.2, 1 + cosine);
    return [x + scale * (-before.y - after.y), y + scale * (before.x + after.x)] as const;
  });
}

/** Where two edges cross, ends left out. */
function crossing(a: MapPoint, b: MapPoint, c: MapPoint, d: MapPoint): MapPoint | undefined {
  const denominator = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
  if (Math.abs(denominator) < 1e-9) return undefined;
  const alongFirst = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / denominator;
  const alongSecond = ((c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])) / denominator;
  if (alongFirst <= 0 || alongFirst >= 1 || alongSecond <= 0 || alongSecond >= 1) return undefined;
  return [a[0] + alongFirst * (b[0] - a[0]), a[1] + alongFirst * (b[1] - a[1])];
}

/** Cuts off the small loops that moving short edges inward can leave: up to `reach` edges long. */
export function withoutLoops(points: readonly MapPoint[], reach = 9): MapPoint[] {
  let ringPoints = [...points];
  for (let index = 0; index < ringPoints.length; index += 1) {
    const count = ringPoints.length;
    const turned = [...ringPoints.slice(index), ...ringPoints.slice(0, index)];
    for (let ahead = Math.min(reach, count - 2); ahead >= 2; ahead -= 1) {
      const meeting = crossing(turned[0], turned[1], turned[ahead], turned[(ahead + 1) % count]);
      if (!meeting) continue;
      ringPoints = [turned[0], meeting, ...turned.slice(ahead + 1)];
      index = -1;
      break;
    }
  }
  return ringPoints;
}

/** Radius of hollow corners: the corner of a neighbour stands in them, so they stay tight. */
const hollowRadius = 9;

/**
 * Rounds the corners of a ring that turn by more than 25 degrees: the corner becomes an arc of a parabola
 * that starts and ends `radius` millimetres from it, or at 45 % of the shorter edge.
 */
export function rounded(points: readonly MapPoint[], radius: number, steps = 5): MapPoint[] {
  const count = points.length;
  const orientation = Math.sign(signedArea(points));
  return points.flatMap((corner, index): MapPoint[] => {
    const before = points[(index + count - 1) % count];
    const after = points[(index + 1) % count];
    const [inX, inY] = [corner[0] - before[0], corner[1] - before[1]];
    const [outX, outY] = [after[0] - corner[0], after[1] - corner[1]];
    const [toBefore, toAfter] = [Math.hypot(inX, inY), Math.hypot(outX, outY)];
    if ((inX * outX + inY * outY) / (toBefore * toAfter) > Math.cos((25 * Math.PI) / 180)) return [corner];
    const hollow = (inX * outY - inY * outX) * orientation < 0;
    const reach = hollow ? Math.min(radius, hollowRadius) : radius;
    const start = Math.min(reach, 0.45 * toBefore) / toBefore;
    const end = Math.min(reach, 0.45 * toAfter) / toAfter;
    return quadratic([corner[0] - start * inX, corner[1] - start * inY], corner, [corner[0] + end * outX, corner[1] + end * outY], steps);
  });
}

/** Points of a quadratic curve, both ends included. */
export function quadratic(from: MapPoint, control: MapPoint, to: MapPoint, steps = 16): MapPoint[] {
  return Array.from({ length: steps + 1 }, (_, index) => {
    const t = index / steps;
    const s = 1 - t;
    return [s * s * from[0] + 2 * s * t * control[0] + t * t * to[0], s * s * from[1] + 2 * s * t * control[1] + t * t * to[1]] as const;
  });
}

/** Points of a cubic curve, both ends included. */
export function cubic(from: MapPoint, first: MapPoint, second: MapPoint, to: MapPoint, steps = 20): MapPoint[] {
  return Array.from({ length: steps + 1 }, (_, index) => {
    const t = index / steps;
    const s = 1 - t;
    const weights = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    return [
      weights[0] * from[0] + weights[1] * first[0] + weights[2] * second[0] + weights[3] * to[0],
      weights[0] * from[1] + weights[1] * first[1] + weights[2] * second[1] + weights[3] * to[1],
    ] as const;
  });
}

/** Samples a line y = f(x) from one x to another, a point at least every `step` millimetres. */
export function along(line: (x: number) => number, from: number, to: number, step = 40): MapPoint[] {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / step));
  return Array.from({ length: count + 1 }, (_, index) => {
    const x = from + ((to - from) * index) / count;
    return [x, line(x)] as const;
  });
}

/** Samples a line x = g(y) from one y to another. */
export function down(line: (y: number) => number, from: number, to: number, step = 40): MapPoint[] {
  return along(line, from, to, step).map(([y, x]) => [x, y] as const);
}

/** The other hand of a ring or polyline on a map that is `width` millimetres wide. */
export function mirrored(points: readonly MapPoint[], width: number): MapPoint[] {
  return points.map(([x, y]) => [width - x, y] as const).toReversed();
}

/** Coordinates to a tenth of a millimetre; points that fall together are dropped. */
export function toTenths(points: readonly MapPoint[]): MapPoint[] {
  return ring(points.map(([x, y]) => [Math.round(x * 10) / 10, Math.round(y * 10) / 10] as const));
}
