import { drawing, element, pathThrough } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import { hatchPath } from './hatch.ts';
import { inkOn } from './ink-on.ts';
import { extentOf, placeOfExtent } from './map-place.ts';
import { MapMemory } from './map-memory.ts';
import type { Extent, MapPlace, MapView } from './map-place.ts';
import { placeAlong, polylineLength } from './polyline.ts';
import type { Point } from './polyline.ts';
import type { FigureTheme } from './theme.ts';
import { verdictLine } from './verdict-line.ts';
import type { VerdictMark } from './verdict-line.ts';
import { placeZoneNames } from './zone-names.ts';

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
  /** Add wide invisible lines that a pointer can hit, and names for the parts and joints. */
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

/** Items drawn in one group, so that a page that shows one changed item redraws no more than that group. */
const blockSize = 1024;
const blocks = new WeakMap<readonly unknown[], readonly (readonly unknown[])[]>();

/** A list in blocks; one, if empty, where the list is. */
function inBlocks<Item>(items: readonly Item[]): readonly (readonly Item[])[] {
  const known = blocks.get(items) ?? Array.from({ length: Math.max(1, Math.ceil(items.length / blockSize)) }, (_, at) => items.slice(at * blockSize, (at + 1) * blockSize));
  blocks.set(items, known);
  return known as readonly (readonly Item[])[];
}

/** Makes a group of a class, or gives the one made before of the same items and all else. */
type Group = (name: string, at: number | string, items: readonly unknown[], of: readonly unknown[], make: () => readonly SceneElement[]) => SceneElement;

/** The cabin unfolded: faces in their computed colours, and every joint where its parts meet in the language of verdicts, the worst on top. */
export function cabinMap(input: CabinMapInput, size: CabinMapSize, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const spot = placeOfMap(input, size);
  if (spot === undefined) return drawing(width, height, input.title);
  const place = spot.toScreen;
  const scale = Math.min(1.15, Math.max(0.7, width / 860)) * Math.min(1.5, Math.sqrt(spot.view.zoom));
  const memory = size.memory ?? new MapMemory();
  memory.at(`${width} ${height} ${spot.scale} ${spot.view.centre.join(' ')}`);
  const { parts, joints, rested = noJoints } = input;
  const selected = new Set(input.selected);
  const lit = input.highlight === undefined ? undefined : joints.find((joint) => joint.id === input.highlight);
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
  const hitOf = (joint: MapJoint): SceneElement => memory.element(joint, 'hit', () => hit(joint, joint.path.map(place)));
  const chosen = [...selected].join(' ');
  const layer = (name: string): Readonly<Record<string, string>> => (size.interactive ? { 'data-layer': name } : {});
  const group: Group = (name, at, items, of, make) => memory.group(`${name} ${at}`, items, of, () => element('g', { class: name, 'aria-hidden': name === 'zones' ? 'true' : undefined, ...layer(`${name} ${at}`) }, make()));
  return drawing(
    width,
    height,
    input.title,
    inBlocks(parts).map((block, at) => group('faces', at, block, [chosen, input.part, input.marked], () => block.filter((part) => !part.line).map(faceOf))),
    inBlocks(parts).map((block, at) => group('threads', at, block, [chosen], () => block.filter((part) => part.line).map(threadOf))),
    zoneNames(input, memory, place, width, height, theme, group),
    order.flatMap((verdict) => inBlocks(joints).map((block, at) =>
      group('joints', `${verdict} ${at}`, block, [rested], () => block.filter((joint) => joint.verdict === verdict).map(drawn)))),
    lit === undefined ? (size.interactive ? element('g', layer('halo')) : undefined) : halo(lit, lit.path.map(place), theme, scale, layer('halo')),
    size.interactive ? inBlocks(joints).map((block, at) => group('hits', at, block, [], () => block.filter((joint) => joint.path.length > 1).map(hitOf))) : undefined,
    size.overlay === undefined ? undefined : element('g', { class: 'overlay', ...layer('overlay') }, size.overlay(spot).filter((one) => one !== undefined)),
  );
}

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
  const ends = joint.lead ? [path[0], path[path.length - 1]].filter((point) => point !== undefined) : [];
  const lines = joint.lead ? stubs(path, 26 * scale) : [path];
  return element(
    'g',
    group,
    lines.map((line) => verdictLine(line, joint, theme, { scale, cased: true })),
    ends.map(([x, y]) => element('circle', { cx: x, cy: y, r: 2.5 * scale, fill: theme.casing, stroke: theme.core, 'stroke-width': 1 })),
  );
}

/** Both ends of a line that only leads from part to part, so that it does not cross out what lies between. */
function stubs(path: readonly Point[], length: number): Point[][] {
  const whole = polylineLength(path);
  if (whole <= length * 2.5) return [[...path]];
  const end = (along: readonly Point[]): Point[] => [along[0] as Point, placeAlong(along, length).point];
  return [end(path), end([...path].reverse())];
}

function halo(joint: MapJoint, path: readonly Point[], theme: FigureTheme, scale: number, layer: Readonly<Record<string, string>>): SceneElement {
  const d = pathThrough(path);
  return element(
    'g',
    { class: 'halo', 'pointer-events': 'none', ...layer },
    element('path', { d, fill: 'none', stroke: theme.core, 'stroke-width': 15 * scale, 'stroke-linejoin': 'round', 'stroke-linecap': 'round' }),
    element('path', { d, fill: 'none', stroke: theme.casing, 'stroke-width': 11.5 * scale, 'stroke-linejoin': 'round', 'stroke-linecap': 'round' }),
    verdictLine(path, joint, theme, { scale: scale * 1.15 }),
  );
}

function hit(joint: MapJoint, path: readonly Point[]): SceneElement {
  return element(
    'path',
    {
      class: 'hit', 'data-joint': joint.id, d: pathThrough(path), fill: 'none', stroke: 'transparent', 'stroke-width': 16,
      'stroke-linecap': 'round', 'pointer-events': 'stroke',
    },
    element('title', {}, joint.label),
  );
}

/** Names of the zones; their places are kept, since a map is redrawn with every move of the pointer. */
function zoneNames(input: CabinMapInput, memory: MapMemory, place: (point: Point) => Point, width: number, height: number, theme: FigureTheme, group: Group): SceneElement {
  const names = memory.zoneNames(input.parts, () => placeZoneNames(input, place, width, height));
  const under = new Set(names.flatMap(({ on }) => (on === undefined ? [] : [on.id])));
  const fills = new Map(input.parts.filter(({ id }) => under.has(id)).map(({ id, fill }) => [id, fill]));
  const inks = names.map(({ on }) => {
    const below = on === undefined ? undefined : fills.get(on.id);
    return (below === undefined ? undefined : inkOn(below)) ?? theme.tableInk;
  });
  return group('zones', 0, names, inks, () => names.map((name, at) => {
    const fill = inks[at] ?? theme.tableInk;
    return memory.element(name, fill, () => element('text', { x: name.x, y: name.y, 'font-size': 11, fill, 'pointer-events': 'none' }, name.text));
  }));
}
