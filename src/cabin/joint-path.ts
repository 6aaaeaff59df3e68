import type { Cabin, Joint, MapPoint, Part } from './cabin.ts';
import { cabinIndex } from './cabin-index.ts';
import { labelPoint } from './outlines/label-point.ts';
import { centroid, isInside } from './outlines/polygon.ts';
import type { Outline } from './outlines/outline-edges.ts';
import { outlineEdges } from './outlines/outline-edges.ts';
import { between, distance, nearestPoints } from './outlines/segment.ts';
import { sharedBorder } from './outlines/shared-border.ts';

/** Where a joint runs on the cabin map. */
export interface JointPath {
  /** `border`: the parts meet along the line; `lead`: the line only leads from one part to the other. */
  readonly kind: 'border' | 'lead';
  readonly points: readonly MapPoint[];
  /** Borders: the part on the left hand of one who walks along the points on a map with y down. */
  readonly left?: string;
  readonly right?: string;
}

/** How much farther than its gap two outlines may lie apart and still meet, mm: outlines are drawn, not measured. */
export const borderTolerance = 8;

const paths = new WeakMap<Cabin, Map<Joint, JointPath | undefined>>();

/**
 * The path of a joint: its own where it has one, else the shared border of the two outlines, else a line between their nearest points.
 * Sight lines are always leads. Undefined where an outline is missing. Computed once for each joint of a document.
 */
export function jointPath(cabin: Cabin, joint: Joint): JointPath | undefined {
  const known = paths.get(cabin) ?? new Map<Joint, JointPath | undefined>();
  paths.set(cabin, known);
  if (!known.has(joint)) known.set(joint, computePath(cabin, joint));
  return known.get(joint);
}

const isThread = (part: Part): boolean => part.sources.length > 0 && part.sources.every((source) => source.material === 'thread');

const outlineOf = (part: Part | undefined): Outline | undefined =>
  (part?.outline === undefined || part.outline.length < 2 ? undefined : { points: part.outline, closed: !isThread(part) });

function computePath(cabin: Cabin, joint: Joint): JointPath | undefined {
  const { parts } = cabinIndex(cabin);
  const [a, b] = [outlineOf(parts.get(joint.parts[0])), outlineOf(parts.get(joint.parts[1]))];
  const kind = joint.kind === 'sightline' ? 'lead' : 'border';
  if (joint.path !== undefined && joint.path.length >= 2) {
    return kind === 'lead' || a === undefined || b === undefined ? { kind, points: joint.path } : withSides(joint, joint.path, a, b);
  }
  if (a === undefined || b === undefined) return undefined;
  const border = kind === 'border' ? sharedBorder(a, b, (joint.gapMm ?? 0) + borderTolerance) : undefined;
  return border === undefined ? lead(a, b) : withSides(joint, border, a, b);
}

function lead(a: Outline, b: Outline): JointPath {
  const nearest = nearestPoints(outlineEdges(a).segments, outlineEdges(b).segments);
  const apart = nearest !== undefined && distance(nearest[0], nearest[1]) > 1;
  return { kind: 'lead', points: apart ? nearest : [middleOf(a), middleOf(b)] };
}

const middles = new WeakMap<readonly MapPoint[], MapPoint>();

function middleOf(outline: Outline): MapPoint {
  const known = middles.get(outline.points) ?? (outline.closed ? labelPoint(outline.points) : centroid(outline.points));
  middles.set(outline.points, known);
  return known;
}

/** Stretches of a border that are asked which part lies where; the answers of a few settle it. */
const votesAsked = 12;

/** Which part lies on which side, by the points a little off the line that fall into the one or the other. */
function withSides(joint: Joint, points: readonly MapPoint[], a: Outline, b: Outline): JointPath {
  let votes = 0;
  const every = Math.max(1, Math.floor(points.length / votesAsked));
  points.forEach((from, index) => {
    const to = points[index + 1];
    if (to === undefined || index % every !== 0) return;
    const length = distance(from, to);
    if (length === 0) return;
    const [x, y] = between(from, to, 0.5);
    const away = ((joint.gapMm ?? 0) / 2 + borderTolerance) / length;
    const [offX, offY] = [(to[1] - from[1]) * away, (from[0] - to[0]) * away];
    const left: MapPoint = [x + offX, y + offY];
    const right: MapPoint = [x - offX, y - offY];
    votes += length * (side(left, a) - side(left, b) - side(right, a) + side(right, b));
  });
  if (votes === 0) votes = leftness(points, middleOf(a)) - leftness(points, middleOf(b));
  const [first, second] = joint.parts;
  return votes >= 0 ? { kind: 'border', points, left: first, right: second } : { kind: 'border', points, left: second, right: first };
}

const side = (point: MapPoint, outline: Outline): number => (outline.closed && isInside(point, outline.points) ? 1 : 0);

/** How far a point lies to the left of the line from the first to the last of the points. */
function leftness(points: readonly MapPoint[], point: MapPoint): number {
  const [from, to] = [points[0], points.at(-1)];
  if (from === undefined || to === undefined) return 0;
  return (to[1] - from[1]) * (point[0] - from[0]) - (to[0] - from[0]) * (point[1] - from[1]);
}
