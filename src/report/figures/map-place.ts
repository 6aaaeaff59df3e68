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

/** The box about some points, mm; nothing lies in that of none. */
export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box about all the points of several lists. */
export function extentOf(lists: Iterable<readonly Point[]>): Extent {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const points of lists) {
    for (const [x, y] of points) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  return { left, top, right, bottom };
}

/** Places points in a box: the whole of them visible, centred, proportions kept; or from there by a view. */
export const mapPlace = (points: readonly Point[], width: number, height: number, margin: number, view?: MapView): MapPlace => placeOfExtent(extentOf([points]), width, height, margin, view);

/** The same for all that lies in a box. */
export function placeOfExtent({ left, top, right, bottom }: Extent, width: number, height: number, margin: number, view?: MapView): MapPlace {
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
