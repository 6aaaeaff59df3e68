import { labelPoint } from '../../cabin/index.ts';
import type { CabinMapInput, MapPart } from './cabin-map.ts';
import type { Point } from './polyline.ts';

export interface PlacedName {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** The name lies on this part; absent where it lies on the table. */
  readonly on?: MapPart;
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const letter = 5.6;
const lineHeight = 13;
const stepPx = 7;
const farthestPx = 34;

/**
 * Places every zone's name where the table is bare, as near to the zone as can be; where it is nowhere bare, on the zone's
 * largest face if the name fits on it; else nowhere. Px in and out; deterministic.
 */
export function placeZoneNames(input: CabinMapInput, place: (point: Point) => Point, width: number, height: number): PlacedName[] {
  const outlines = new Map(input.parts.map((part) => [part.id, part.outline.map(place)]));
  const boxes = [...outlines].map(([id, outline]) => ({ id, outline, box: boxOf(outline) }));
  const joints = input.joints.filter((joint) => joint.lead !== true).map((joint) => joint.path.map(place));
  const taken: Box[] = [];
  return (input.zones ?? []).flatMap((zone): PlacedName[] => {
    const own = boxes.filter(({ id }) => zone.parts.includes(id));
    if (own.length === 0) return [];
    const size = { width: zone.name.length * letter + 4, height: lineHeight };
    const around = joined(own.map(({ box }) => box));
    const near = boxes.filter(({ box }) => overlaps(box, grown(around, farthestPx + size.width)));
    let best: { box: Box; score: number } | undefined;
    for (let top = Math.max(2, around.top - farthestPx); top <= Math.min(height - size.height - 2, around.bottom + farthestPx); top += stepPx) {
      for (let left = Math.max(4, around.left - farthestPx); left <= Math.min(width - size.width - 4, around.right + farthestPx - size.width); left += stepPx) {
        const box = { left, top, right: left + size.width, bottom: top + size.height };
        const away = Math.min(...own.map((part) => apart(box, part.box)));
        if (away > farthestPx / 2) continue;
        const score = away * 3 + Math.abs((left + box.right) / 2 - (around.left + around.right) / 2) * 0.15 + Math.abs(top - around.top) * 0.2;
        if (best !== undefined && score >= best.score) continue;
        if (taken.some((other) => overlaps(grown(box, 2), other)) || near.some((part) => covers(part.outline, part.box, grown(box, 2)))) continue;
        best = { box, score };
      }
    }
    if (best !== undefined) {
      taken.push(best.box);
      return [{ text: zone.name, x: best.box.left + 2, y: best.box.bottom - 3 }];
    }
    const inside = onFace(size, own, boxes, joints, taken);
    if (inside === undefined) return [];
    taken.push(inside.box);
    return [{ text: zone.name, x: inside.box.left + 2, y: inside.box.bottom - 3, on: input.parts.find((part) => part.id === inside.id) }];
  });
}

type Outlined = { readonly id: string; readonly outline: readonly Point[]; readonly box: Box };

function onFace(
  size: { readonly width: number; readonly height: number }, own: readonly Outlined[], every: readonly Outlined[],
  joints: readonly (readonly Point[])[], taken: readonly Box[],
): { id: string; box: Box } | undefined {
  const area = ({ box }: Outlined): number => (box.right - box.left) * (box.bottom - box.top);
  for (const face of [...own].sort((a, b) => area(b) - area(a))) {
    if (face.outline.length < 3) continue;
    const [x, y] = labelPoint(face.outline);
    const box = { left: x - size.width / 2, top: y - size.height / 2, right: x + size.width / 2, bottom: y + size.height / 2 };
    const clear = cornersOf(box).every((corner) => contains(face.outline, corner))
      && !every.some((other) => other.id !== face.id && overlaps(other.box, box) && covers(other.outline, other.box, box))
      && !joints.some((path) => path.some(([px, py]) => px > box.left && px < box.right && py > box.top && py < box.bottom))
      && !taken.some((other) => overlaps(other, box));
    if (clear) return { id: face.id, box };
  }
  return undefined;
}

function boxOf(points: readonly Point[]): Box {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

const joined = (boxes: readonly Box[]): Box => ({
  left: Math.min(...boxes.map((box) => box.left)), top: Math.min(...boxes.map((box) => box.top)),
  right: Math.max(...boxes.map((box) => box.right)), bottom: Math.max(...boxes.map((box) => box.bottom)),
});

const grown = (box: Box, by: number): Box => ({ left: box.left - by, top: box.top - by, right: box.right + by, bottom: box.bottom + by });

const overlaps = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const apart = (a: Box, b: Box): number =>
  Math.max(0, a.left - b.right, b.left - a.right) + Math.max(0, a.top - b.bottom, b.top - a.bottom);

const cornersOf = (box: Box): Point[] => [
  [box.left, box.top], [box.right, box.top], [box.right, box.bottom], [box.left, box.bottom], [(box.left + box.right) / 2, box.top], [(box.left + box.right) / 2, box.bottom],
];

function contains(outline: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i, i += 1) {
    const [xi, yi] = outline[i] as Point;
    const [xj, yj] = outline[j] as Point;
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** Whether any of the outline's face lies in the box: a corner of the box in the face, or an edge of the face through the box. */
function covers(outline: readonly Point[], outlineBox: Box, box: Box): boolean {
  if (!overlaps(outlineBox, box)) return false;
  if (cornersOf(box).some((corner) => contains(outline, corner))) return true;
  return outline.some((from, i) => {
    const to = outline[(i + 1) % outline.length] as Point;
    return [0, 0.25, 0.5, 0.75].some((share) => {
      const x = from[0] + (to[0] - from[0]) * share;
      const y = from[1] + (to[1] - from[1]) * share;
      return x > box.left && x < box.right && y > box.top && y < box.bottom;
    });
  });
}
