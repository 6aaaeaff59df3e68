import { labelPoint } from '../../cabin/index.ts';
import type { CabinMapInput, MapPart } from './cabin-map.ts';
import { coveredGrid } from './covered-grid.ts';
import type { CoveredGrid } from './covered-grid.ts';
import { extentOf } from './map-place.ts';
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

interface Face {
  readonly part: MapPart;
  readonly outline: readonly Point[];
  readonly box: Box;
}

interface Line {
  readonly line: readonly Point[];
  readonly box: Box;
}

const letter = 5.6;
const lineHeight = 13;
const cell = 4;
const farthestPx = 17;

/** Gives the names of the first zones of a map, as many as are asked for; those that have no place are left out. */
export type ZoneNames = (zones: number) => readonly PlacedName[];

/**
 * Places every zone's name where the table is bare, as near to the zone as can be; where it is nowhere bare, on the zone's
 * largest face if the name fits on it; else nowhere. One after the other as they are asked for, since of a large cabin it takes long. Px in and out; deterministic.
 */
export function zoneNames(input: CabinMapInput, place: (point: Point) => Point, width: number, height: number): ZoneNames {
  const names: (PlacedName | undefined)[] = [];
  let next: ((zone: number) => PlacedName | undefined) | undefined;
  return (zones) => {
    next ??= placing(input, place, width, height);
    while (names.length < Math.min(zones, input.zones?.length ?? 0)) names.push(next(names.length));
    return names.slice(0, zones).filter((name) => name !== undefined);
  };
}

function placing(input: CabinMapInput, place: (point: Point) => Point, width: number, height: number): (zone: number) => PlacedName | undefined {
  const faces = input.parts.map((part): Face => {
    const outline = part.outline.map(place);
    return { part, outline, box: boxOf(outline) };
  });
  const joints = input.joints.filter((joint) => joint.lead !== true).map((joint) => joint.path.map(place));
  const solid = faces.filter(({ part }) => !part.line);
  const ofZone = new Map<string, Face[]>();
  const byId = new Map(faces.map((face) => [face.part.id, face]));
  for (const { id, parts } of input.zones ?? []) ofZone.set(id, parts.flatMap((part) => byId.get(part) ?? []));
  const strings = faces.filter(({ part }) => part.line).map(({ outline }) => outline);
  const lines = [...strings, ...joints].map((line): Line => ({ line, box: boxOf(line) }));
  const table = coveredGrid(solid.map(({ outline }) => outline), [...strings, ...joints], width, height, cell);
  const taken: Box[] = [];
  return (at) => {
    const zone = input.zones?.[at];
    const own = ofZone.get(zone?.id ?? '') ?? [];
    if (zone === undefined || own.length === 0) return undefined;
    const size = { width: zone.name.length * letter + 4, height: lineHeight };
    const bare = onTable(size, own, table, taken, width, height);
    const found = bare ?? onFace(size, own, solid, lines, taken, width, height);
    if (found === undefined) return undefined;
    taken.push(found.box);
    return { text: zone.name, x: found.box.left + 2, y: found.box.bottom - 3, on: found.on };
  };
}

interface Found {
  readonly box: Box;
  readonly on?: MapPart;
}

type Size = { readonly width: number; readonly height: number };

function onTable(size: Size, own: readonly Face[], table: CoveredGrid, taken: readonly Box[], width: number, height: number): Found | undefined {
  const around = joined(own.map(({ box }) => box));
  const middle = (around.left + around.right) / 2;
  let best: { box: Box; score: number } | undefined;
  const lastTop = Math.min(height - size.height - 2, around.bottom + farthestPx);
  const lastLeft = Math.min(width - size.width - 4, around.right + farthestPx);
  for (let top = Math.max(2, around.top - farthestPx - size.height); top <= lastTop; top += cell) {
    for (let left = Math.max(4, around.left - farthestPx - size.width); left <= lastLeft; left += cell) {
      const box = { left, top, right: left + size.width, bottom: top + size.height };
      const aside = Math.abs((left + box.right) / 2 - middle) * 0.15 + Math.abs(top - around.top) * 0.2;
      if ((best !== undefined && aside >= best.score) || !table.bare(left - 2, top - 2, box.right + 2, box.bottom + 2)) continue;
      const away = nearest(box, own);
      const score = away * 3 + aside;
      if (away > farthestPx || (best !== undefined && score >= best.score) || taken.some((other) => overlaps(grown(box, 2), other))) continue;
      best = { box, score };
    }
  }
  return best;
}

/** The name in the roomiest place of the largest face that has room for it clear of other faces and of joints. */
function onFace(
  size: Size, own: readonly Face[], solid: readonly Face[], lines: readonly Line[], taken: readonly Box[],
  width: number, height: number,
): Found | undefined {
  const area = ({ box }: Face): number => (box.right - box.left) * (box.bottom - box.top);
  for (const face of own.filter(({ part }) => !part.line).sort((a, b) => area(b) - area(a)).slice(0, 4)) {
    const [x, y] = labelPoint(face.outline);
    const box = { left: x - size.width / 2, top: y - size.height / 2, right: x + size.width / 2, bottom: y + size.height / 2 };
    if (taken.some((other) => overlaps(other, box))) continue;
    const others = solid.filter((other) => other !== face && overlaps(other.box, box)).map(({ outline }) => outline);
    const edge = [...face.outline, face.outline[0] as Point];
    const near = lines.filter(({ box: around }) => overlaps(around, grown(box, 2 * cell))).map(({ line }) => line);
    if (coveredGrid(others, [...near, edge], width, height, cell, box).bare(box.left, box.top, box.right, box.bottom)) return { box, on: face.part };
  }
  return undefined;
}

function boxOf(points: readonly Point[]): Box {
  return extentOf([points]);
}

const joined = (boxes: readonly Box[]): Box => ({
  left: Math.min(...boxes.map((box) => box.left)), top: Math.min(...boxes.map((box) => box.top)),
  right: Math.max(...boxes.map((box) => box.right)), bottom: Math.max(...boxes.map((box) => box.bottom)),
});

function nearest(box: Box, faces: readonly Face[]): number {
  let least = Infinity;
  for (const face of faces) least = Math.min(least, apart(box, face.box));
  return least;
}

const grown = (box: Box, by: number): Box => ({ left: box.left - by, top: box.top - by, right: box.right + by, bottom: box.bottom + by });

const overlaps = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const apart = (a: Box, b: Box): number =>
  Math.max(0, a.left - b.right, b.left - a.right) + Math.max(0, a.top - b.bottom, b.top - a.bottom);
