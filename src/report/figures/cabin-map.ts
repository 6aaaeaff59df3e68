import { drawing, element, pathThrough, round } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import { hatchPath } from './hatch.ts';
import { inkOn } from './ink-on.ts';
import { jointFields } from './joint-fields.ts';
import { extentOf, placeOfExtent } from './map-place.ts';
import { MapMemory } from './map-memory.ts';
import type { Extent, MapPlace, MapView } from './map-place.ts';
import { placeAlong, polylineLength } from './polyline.ts';
import type { Point } from './polyline.ts';
import type { FigureTheme } from './theme.ts';
import { strokeLine, verdictLine, verdictStroke } from './verdict-line.ts';
import type { VerdictMark, VerdictStroke } from './verdict-line.ts';
import { zoneNames } from './zone-names.ts';
import type { PlacedName } from './zone-names.ts';

export interface MapPart {
  readonly id: string;
  readonly name: string;
  /** Polygon in millimetres of the unfolded cabin; an open polyline where `line` is set. */
  readonly outline: readonly Point[];
  /** A thread or piping: drawn as a line, not a face. */
  readonly line?: boolean;
  /** Computed colour, or that of a tint; absent where there is no data for it. */
  readonly fill?: string;
  /** Hatching over the fill, px from line to line: what a tint says besides by its lightness. */
  readonly hatch?: number;
}

export interface MapJoint extends VerdictMark {
  readonly id: string;
  /** The parts do not meet along the line: it only leads from one to the other. */
  readonly lead?: boolean;
  readonly path: readonly Point[];
  /** Sentence for those who cannot see the map. */
  readonly label: string;
}

export interface CabinMapInput {
  readonly title: string;
  readonly parts: readonly MapPart[];
  readonly joints: readonly MapJoint[];
  readonly zones?: readonly { readonly id: string; readonly name: string; readonly parts: readonly string[] }[];
  /** Joint that is pointed at or chosen. */
  readonly highlight?: string;
  /** Joints outside the filter: drawn as a faint rest. */
  readonly rested?: ReadonlySet<string>;
  /** Part pointed at. */
  readonly part?: string;
  /** Parts that are set apart by a light edge. */
  readonly marked?: ReadonlySet<string>;
  readonly selected?: readonly string[];
}

export interface CabinMapSize {
  readonly width: number;
  readonly height: number;
  /** For a page that finds joints under the pointer itself: many joints in one path, and about the one pointed at what can be hit, with its name. */
  readonly interactive?: boolean;
  readonly view?: MapView;
  /** Drawn on top, for what is being drawn or watched. */
  readonly overlay?: (place: MapPlace) => readonly (SceneElement | undefined)[];
  /** What was drawn before; parts and joints that are the same objects at the same place are the same elements again. */
  readonly memory?: MapMemory;
}

const extents = new WeakMap<readonly MapPart[] | readonly MapJoint[], Extent>();

function extentOnce<Item extends object>(items: readonly Item[], points: (item: Item) => readonly Point[]): Extent {
  const list = items as readonly object[] as readonly MapPart[];
  const known = extents.get(list) ?? extentOf(items.map(points));
  extents.set(list, known);
  return known;
}

/** A joint is pointed at within so many px of its line. */
export const reachPx = 8;

/** The joint whose line runs nearest to a point of the box, px, within reach; of those as near the one that is drawn later. */
export function jointUnder({ joints }: CabinMapInput, { scale, toCabin }: MapPlace, at: Point): MapJoint | undefined {
  const [x, y] = toCabin(at);
  let best: MapJoint | undefined;
  let least = reachPx / scale;
  for (const joint of joints) {
    const { path } = joint;
    for (let i = 1; i < path.length; i += 1) {
      const [[x0, y0], [x1, y1]] = [path[i - 1] as Point, path[i] as Point];
      if (Math.min(x0, x1) > x + least || Math.max(x0, x1) < x - least || Math.min(y0, y1) > y + least || Math.max(y0, y1) < y - least) continue;
      const [dx, dy] = [x1 - x0, y1 - y0];
      const share = Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1)));
      const away = Math.sqrt((x0 + share * dx - x) ** 2 + (y0 + share * dy - y) ** 2);
      if (away <= least) [best, least] = [joint, away];
    }
  }
  return best;
}

/** The place that a map is drawn at; undefined where there is nothing to draw. */
export function placeOfMap({ parts, joints }: CabinMapInput, { width, height, view }: CabinMapSize): MapPlace | undefined {
  const [faces, lines] = [extentOnce(parts, ({ outline }) => outline), extentOnce(joints, ({ path }) => path)];
  const every: Extent = {
    left: Math.min(faces.left, lines.left), top: Math.min(faces.top, lines.top), right: Math.max(faces.right, lines.right), bottom: Math.max(faces.bottom, lines.bottom),
  };
  return every.left > every.right ? undefined : placeOfExtent(every, width, height, Math.max(14, width * 0.025), view);
}

/** From below to on top. */
const order = ['holds', 'open', 'clashes'] as const;
const noJoints: ReadonlySet<string> = new Set();
const noZones: NonNullable<CabinMapInput['zones']> = [];

/** Items drawn in one layer, so that a page that shows one changed item draws no more than that layer anew. */
const [partsInLayer, zonesInLayer] = [128, 4];
const blocks = new WeakMap<readonly unknown[], readonly (readonly unknown[])[]>();

/** A list in blocks; one, if empty, where the list is. */
function inBlocks<Item>(items: readonly Item[], size: number): readonly (readonly Item[])[] {
  const known = blocks.get(items) ?? Array.from({ length: Math.max(1, Math.ceil(items.length / size)) }, (_, at) => items.slice(at * size, (at + 1) * size));
  blocks.set(items, known);
  return known as readonly (readonly Item[])[];
}

/** One of the groups that a map is drawn of, from below to on top. */
export interface MapLayer {
  readonly key: string;
  /** What it is made of: it is the same drawing again as long as all of these are the same objects. */
  readonly of: readonly unknown[];
  /** How much there is to draw, in faces; nothing for what follows the pointer. */
  readonly weight: number;
  readonly make: () => SceneElement;
}

/** The cabin unfolded: faces in their computed colours, and every joint where its parts meet in the language of verdicts, the worst on top. */
export function cabinMap(input: CabinMapInput, size: CabinMapSize, theme: FigureTheme): SceneElement {
  return drawing(size.width, size.height, input.title, mapLayers(input, size, theme).map(({ make }) => make()));
}

/** What the map is drawn of, not yet drawn. */
export function mapLayers(input: CabinMapInput, size: CabinMapSize, theme: FigureTheme): readonly MapLayer[] {
  const { width, height, interactive = false } = size;
  const spot = placeOfMap(input, size);
  if (spot === undefined) return [];
  const place = spot.toScreen;
  const scale = Math.min(1.15, Math.max(0.7, width / 860)) * Math.min(1.5, Math.sqrt(spot.view.zoom));
  const memory = size.memory ?? new MapMemory();
  memory.at(`${width} ${height} ${spot.scale} ${spot.view.centre.join(' ')}`);
  const { parts, joints, zones = noZones, rested = noJoints } = input;
  // In the report they are all in one group.
  const inLayer = interactive ? zonesInLayer : Math.max(1, zones.length);
  const selected = new Set(input.selected);
  const lit = input.highlight === undefined ? undefined : joints.find((joint) => joint.id === input.highlight);
  const chosenIn = (block: readonly MapPart[]): string => (selected.size === 0 ? '' : block.flatMap(({ id }) => (selected.has(id) ? [id] : [])).join(' '));
  const pointedIn = (block: readonly MapPart[]): string | undefined => (block.some(({ id }) => id === input.part) ? input.part : undefined);
  const faceOf = (part: MapPart): SceneElement => {
    const state = selected.has(part.id) ? 'selected' : part.id === input.part || input.marked?.has(part.id) === true ? 'pointed' : 'face';
    return memory.element(part, state, () => face(part, part.outline.map(place), theme, state));
  };
  const threadOf = (part: MapPart): SceneElement => {
    const state = selected.has(part.id) ? 'selected' : 'thread';
    return memory.element(part, state, () => thread(part, part.outline.map(place), theme, scale, state === 'selected'));
  };
  const drawn = (joint: MapJoint): SceneElement => {
    const rests = rested.has(joint.id);
    return memory.element(joint, rests ? 'rested' : 'joint', () => drawnJoint(joint, joint.path.map(place), theme, scale, rests));
  };
  const linesOf = (cell: readonly MapJoint[]): readonly SceneElement[] => {
    const [resting, shown] = [cell.filter(({ id }) => rested.has(id)), cell.filter(({ id }) => !rested.has(id))];
    return jointLines(shown, resting, memory, place, theme, scale);
  };
  const fields = interactive ? jointFields(joints, extentOnce(joints, ({ path }) => path)) : [{ key: '0', cells: [joints] }];
  const layer = (name: string, at: number | string, weight: number, of: readonly unknown[], make: () => readonly SceneElement[]): MapLayer => ({
    key: `${name} ${at}`, of, weight, make: () => element('g', { class: name, 'aria-hidden': name === 'zones' ? 'true' : undefined }, make()),
  });
  return [
    ...inBlocks(parts, partsInLayer).map((block, at) => layer('faces', at, block.length, [chosenIn(block), pointedIn(block), input.marked, ...block], () => block.filter((part) => !part.line).map(faceOf))),
    ...inBlocks(parts, partsInLayer).flatMap((block, at) => {
      const threads = block.filter((part) => part.line);
      return interactive && threads.length === 0 ? [] : [layer('threads', at, threads.length, [chosenIn(threads), ...threads], () => threads.map(threadOf))];
    }),
    // The names of a zone take as long to place as a layer of parts takes to draw.
    ...Array.from({ length: Math.max(1, Math.ceil(zones.length / inLayer)) }, (_, at) => layer('zones', at, Math.max(1, partsInLayer * Math.min(inLayer, zones.length)), [parts, zones], () => {
      const placed = memory.zoneNames(parts, () => zoneNames(input, place, width, height));
      return namesOn(placed((at + 1) * inLayer).slice(placed(at * inLayer).length), parts, memory, theme);
    })),
    ...order.flatMap((verdict) => fields.flatMap(({ key, cells }) => {
      const own = cells.map((cell) => cell.filter((joint) => joint.verdict === verdict)).filter((cell) => cell.length > 0);
      if (interactive && own.length === 0) return [];
      const all = own.flat();
      return [layer('joints', `${verdict} ${key}`, all.length / jointsOfFace, [...all.map(({ id }) => rested.has(id)), ...all], () => (interactive ? own.flatMap(linesOf) : all.map(drawn)))];
    })),
    ...(lit === undefined && !interactive ? [] : [{ key: 'halo', of: [], weight: 0, make: () => (lit === undefined ? element('g') : halo(lit, lit.path.map(place), theme, scale, interactive)) }]),
    ...(size.overlay === undefined ? [] : [layer('overlay', 0, 0, [], () => size.overlay?.(spot).filter((one) => one !== undefined) ?? [])]),
  ];
}

/** Joints that are drawn in the time of one face where they lie in one path. */
const jointsOfFace = 3;

function face(part: MapPart, outline: readonly Point[], theme: FigureTheme, state: 'face' | 'pointed' | 'selected'): SceneElement {
  const d = pathThrough(outline, true);
  const hatch = part.fill === undefined ? 6 : part.hatch;
  return element(
    'g',
    { class: 'face', 'data-part': part.id },
    element('path', {
      class: part.fill === undefined ? 'no-colour' : 'sample',
      d,
      fill: part.fill ?? theme.table,
      stroke: state === 'face' ? theme.core : theme.casing,
      'stroke-width': state === 'face' ? 0.75 : state === 'pointed' ? 2 : 3.5,
    }),
    hatch === undefined
      ? undefined
      : element('path', {
          class: 'hatch', d: hatchPath(outline, hatch), fill: 'none', stroke: part.fill === undefined ? theme.tableInk : theme.core, 'stroke-width': 0.6, 'pointer-events': 'none',
        }),
    state === 'selected'
      ? element('path', { class: 'chosen', d, fill: 'none', stroke: theme.core, 'stroke-width': 1.5, 'stroke-dasharray': '6 4', 'pointer-events': 'none' })
      : undefined,
  );
}

function thread(part: MapPart, outline: readonly Point[], theme: FigureTheme, scale: number, selected: boolean): SceneElement {
  const d = pathThrough(outline);
  return element(
    'g',
    { class: 'thread', 'data-part': part.id },
    element('path', { d, fill: 'none', stroke: selected ? theme.casing : theme.tableInk, 'stroke-width': (selected ? 8 : 5) * scale }),
    element('path', {
      class: 'sample', d, fill: 'none', stroke: part.fill ?? theme.table, 'stroke-width': 3.5 * scale,
      'stroke-dasharray': part.fill === undefined ? '3 3' : undefined,
    }),
  );
}

function drawnJoint(joint: MapJoint, path: readonly Point[], theme: FigureTheme, scale: number, rested: boolean): SceneElement {
  const group = { class: `joint ${joint.verdict}${rested ? ' rested' : ''}`, 'data-joint': joint.id, 'pointer-events': 'none' };
  if (rested) {
    const rest = { d: pathThrough(path), fill: 'none', stroke: theme.quiet, 'stroke-width': 0.6 };
    return element('g', group, joint.lead ? undefined : element('path', rest));
  }
  const ends = endsOf(joint, path);
  const lines = waysOf(joint, path, scale);
  return element(
    'g',
    group,
    lines.map((line) => verdictLine(line, joint, theme, { scale, cased: true })),
    ends.map(([x, y]) => element('circle', { cx: x, cy: y, r: 2.5 * scale, fill: theme.casing, stroke: theme.core, 'stroke-width': 1 })),
  );
}

const endsOf = (joint: MapJoint, path: readonly Point[]): readonly Point[] => (joint.lead ? [path[0], path[path.length - 1]].filter((point) => point !== undefined) : []);
const waysOf = (joint: MapJoint, path: readonly Point[], scale: number): readonly (readonly Point[])[] => (joint.lead ? stubs(path, 26 * scale) : [path]);

/**
 * Joints of one verdict as few paths: a page that shows thousands of them has a node for each otherwise, several times over. The joints
 * themselves are found by `jointUnder()`.
 */
function jointLines(shown: readonly MapJoint[], resting: readonly MapJoint[], memory: MapMemory, place: (point: Point) => Point, theme: FigureTheme, scale: number): readonly SceneElement[] {
  const rest = resting.filter(({ lead }) => lead !== true);
  const lines = rest.length === 0 ? [] : [element('path', { class: 'rested', d: rest.map((joint) => pathThrough(joint.path.map(place))).join(''), fill: 'none', stroke: theme.quiet, 'stroke-width': 0.6, 'pointer-events': 'none' })];
  for (const accepted of [true, false]) {
    const alike = shown.filter((joint) => (joint.accepted === true) === accepted);
    const strokes = alike.map((joint) => memory.stroke(joint, () => together(waysOf(joint, joint.path.map(place), scale).map((way) => verdictStroke(way, joint, scale)))));
    if (strokes.length === 0) continue;
    const ends = alike.flatMap((joint) => endsOf(joint, joint.path).map(place)).map((point) => circlePath(point, 2.5 * scale)).join('');
    lines.push(element('g', { class: 'joint-lines', 'pointer-events': 'none' },
      strokeLine(together(strokes), alike[0] as MapJoint, theme, true),
      ends === '' ? undefined : element('path', { d: ends, fill: theme.casing, stroke: theme.core, 'stroke-width': 1 })));
  }
  return lines;
}

/** Strokes that differ only in their ways as one. */
const together = (strokes: readonly VerdictStroke[]): VerdictStroke => ({ ...(strokes[0] as VerdictStroke), d: strokes.map(({ d }) => d).join('') });

const circlePath = ([x, y]: Point, radius: number): string =>
  `M${round(x - radius)} ${round(y)}a${round(radius)} ${round(radius)} 0 1 0 ${round(2 * radius)} 0a${round(radius)} ${round(radius)} 0 1 0 ${round(-2 * radius)} 0Z`;

/** Both ends of a line that only leads from part to part, so that it does not cross out what lies between. */
function stubs(path: readonly Point[], length: number): Point[][] {
  const whole = polylineLength(path);
  if (whole <= length * 2.5) return [[...path]];
  const end = (along: readonly Point[]): Point[] => [along[0] as Point, placeAlong(along, length).point];
  return [end(path), end([...path].reverse())];
}

function halo(joint: MapJoint, path: readonly Point[], theme: FigureTheme, scale: number, interactive: boolean): SceneElement {
  const d = pathThrough(path);
  return element(
    'g',
    { class: 'halo', 'pointer-events': 'none' },
    element('path', { d, fill: 'none', stroke: theme.core, 'stroke-width': 15 * scale, 'stroke-linejoin': 'round', 'stroke-linecap': 'round' }),
    element('path', { d, fill: 'none', stroke: theme.casing, 'stroke-width': 11.5 * scale, 'stroke-linejoin': 'round', 'stroke-linecap': 'round' }),
    verdictLine(path, joint, theme, { scale: scale * 1.15 }),
    interactive && path.length > 1 ? hit(joint, d) : undefined,
  );
}

/** What shows that the joint can be opened, and its name. */
function hit(joint: MapJoint, d: string): SceneElement {
  return element(
    'path',
    { class: 'hit', 'data-joint': joint.id, d, fill: 'none', stroke: 'transparent', 'stroke-width': 2 * reachPx, 'stroke-linecap': 'round', 'pointer-events': 'stroke' },
    element('title', {}, joint.label),
  );
}

/** Names of zones in an ink that stands out from what they lie on. */
function namesOn(names: readonly PlacedName[], parts: readonly MapPart[], memory: MapMemory, theme: FigureTheme): readonly SceneElement[] {
  const under = new Set(names.flatMap(({ on }) => (on === undefined ? [] : [on.id])));
  const fills = new Map(parts.filter(({ id }) => under.has(id)).map(({ id, fill }) => [id, fill]));
  return names.map((name) => {
    const below = name.on === undefined ? undefined : fills.get(name.on.id);
    const fill = (below === undefined ? undefined : inkOn(below)) ?? theme.tableInk;
    return memory.element(name, fill, () => element('text', { x: name.x, y: name.y, 'font-size': 11, fill, 'pointer-events': 'none' }, name.text));
  });
}
