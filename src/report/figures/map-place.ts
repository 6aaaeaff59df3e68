import type { Point } from './polyline.ts';

/** Where one looks: `zoom` 1 shows all of the cabin, and the box is centred on a point of it, mm. */
export interface MapView {
  readonly zoom: number;
  readonly centre: Point;
}

/** A map's way from millimetres of the cabin to px of the box, and back. */
export interface MapPlace {
  /** px per mm. */
  readonly scale: number;
  readonly view: MapView;
  readonly toScreen: (point: Point) => Point;
  readonly toCabin: (point: Point) => Point;
}

/** Places points in a box: the whole of them visible, centred, proportions kept; or from there by a view. */
export function mapPlace(points: readonly Point[], width: number, height: number, margin: number, view?: MapView): MapPlace {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  const whole = Math.min((width - 2 * margin) / Math.max(1, right - left), (height - 2 * margin) / Math.max(1, bottom - top));
  const { zoom, centre } = view ?? { zoom: 1, centre: [(left + right) / 2, (top + bottom) / 2] as Point };
  const scale = whole * zoom;
  return {
    scale,
    view: { zoom, centre },
    toScreen: ([x, y]) => [width / 2 + scale * (x - centre[0]), height / 2 + scale * (y - centre[1])],
    toCabin: ([x, y]) => [centre[0] + (x - width / 2) / scale, centre[1] + (y - height / 2) / scale],
  };
}
