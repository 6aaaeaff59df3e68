import type { MapPoint } from '../../../src/cabin/cabin.ts';

const distanceToEdge = ([x, y]: MapPoint, from: MapPoint, to: MapPoint): number => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const share = Math.min(1, Math.max(0, ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - from[0] - share * dx, y - from[1] - share * dy);
};

const edgesOf = (outline: readonly MapPoint[], open: boolean): (readonly [MapPoint, MapPoint])[] =>
  outline.slice(0, open ? -1 : undefined).map((point, index) => [point, outline[(index + 1) % outline.length]] as const);

/** Length of the first outline that runs within `reach` millimetres of the second, by steps of 2 mm. */
export function sharedLength(
  first: readonly MapPoint[],
  second: readonly MapPoint[],
  reach: number,
  open: readonly [boolean, boolean] = [false, false],
): number {
  const others = edgesOf(second, open[1]);
  let length = 0;
  for (const [from, to] of edgesOf(first, open[0])) {
    const edge = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const steps = Math.max(1, Math.ceil(edge / 2));
    for (let step = 0; step < steps; step += 1) {
      const share = (step + 0.5) / steps;
      const point: MapPoint = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
      if (others.some(([a, b]) => distanceToEdge(point, a, b) <= reach)) length += edge / steps;
    }
  }
  return length;
}
