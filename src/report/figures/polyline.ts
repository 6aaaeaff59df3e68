export type Point = readonly [x: number, y: number];

const distance = (a: Point, b: Point): number => Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);

/** Length of the polyline in the units of its points; 0 for fewer than two. */
export function polylineLength(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i += 1) length += distance(points[i - 1] as Point, points[i] as Point);
  return length;
}

/** The place `along` units from the start, with the unit normal (left of the way); clamped to the ends. */
export function placeAlong(points: readonly Point[], along: number): { point: Point; normal: Point } {
  let rest = Math.max(0, along);
  for (let i = 1; i < points.length; i += 1) {
    const from = points[i - 1] as Point;
    const to = points[i] as Point;
    const step = distance(from, to);
    if (step === 0) continue;
    if (rest <= step || i === points.length - 1) {
      const share = Math.min(1, rest / step);
      return {
        point: [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share],
        normal: [-(to[1] - from[1]) / step, (to[0] - from[0]) / step],
      };
    }
    rest -= step;
  }
  return { point: points[0] ?? [0, 0], normal: [0, 1] };
}

/**
 * A saw blade along a polyline: every tooth climbs from one side to the other and falls straight back.
 * Whole teeth only, at least two, so that the shortest joint still reads as a saw; px in, px out.
 */
export function sawtooth(points: readonly Point[], pitch: number, amplitude: number): Point[] {
  const length = polylineLength(points);
  if (length === 0) return [...points];
  const teeth = Math.max(2, Math.round(length / pitch));
  const at = (along: number, side: number): Point => {
    const { point, normal } = placeAlong(points, along);
    return [point[0] + normal[0] * side * amplitude, point[1] + normal[1] * side * amplitude];
  };
  const blade: Point[] = [];
  for (let tooth = 0; tooth < teeth; tooth += 1) {
    blade.push(at((tooth * length) / teeth, 1), at(((tooth + 1) * length) / teeth, -1));
  }
  blade.push(at(length, 1));
  return blade;
}

/** The polyline shortened by `inset` at both ends; as it is where nothing would be left. */
export function insetPolyline(points: readonly Point[], inset: number): Point[] {
  const length = polylineLength(points);
  if (length <= inset * 2.5) return [...points];
  const inner: Point[] = [placeAlong(points, inset).point];
  let along = 0;
  for (let i = 1; i < points.length - 1; i += 1) {
    along += distance(points[i - 1] as Point, points[i] as Point);
    if (along > inset && along < length - inset) inner.push(points[i] as Point);
  }
  inner.push(placeAlong(points, length - inset).point);
  return inner;
}
