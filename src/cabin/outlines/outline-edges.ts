import type { MapPoint } from '../cabin.ts';
import type { Bounds } from './polygon.ts';
import { bounds } from './polygon.ts';
import type { Segment } from './segment.ts';
import { distance, edgesOf } from './segment.ts';

/** An outline on the map: a closed polygon, or an open line of thread. */
export interface Outline {
  readonly points: readonly MapPoint[];
  readonly closed: boolean;
}

/** The edges of an outline with what every search among them asks for. */
export interface OutlineEdges {
  readonly segments: readonly Segment[];
  /** Left, right, top and bottom of each segment, mm. */
  readonly boxes: Float64Array;
  readonly bounds: Bounds;
  /** Length all round, mm. */
  readonly length: number;
}

const made = new WeakMap<readonly MapPoint[], Map<boolean, OutlineEdges>>();

/** Found once for an outline, since a part brings its own to all its joints. */
export function outlineEdges({ points, closed }: Outline): OutlineEdges {
  const known = made.get(points) ?? new Map<boolean, OutlineEdges>();
  made.set(points, known);
  const before = known.get(closed);
  if (before !== undefined) return before;
  const segments = edgesOf(points, closed);
  const boxes = new Float64Array(4 * segments.length);
  let length = 0;
  segments.forEach(({ from, to }, at) => {
    boxes[4 * at] = Math.min(from[0], to[0]);
    boxes[4 * at + 1] = Math.max(from[0], to[0]);
    boxes[4 * at + 2] = Math.min(from[1], to[1]);
    boxes[4 * at + 3] = Math.max(from[1], to[1]);
    length += distance(from, to);
  });
  const edges = { segments, boxes, bounds: bounds(points), length };
  known.set(closed, edges);
  return edges;
}
