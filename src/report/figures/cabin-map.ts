import { drawing, element, pathThrough } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import { hatchPath } from './hatch.ts';
import { inkOn } from './ink-on.ts';
import { placeAlong, polylineLength } from './polyline.ts';
import type { Point } from './polyline.ts';
import type { FigureTheme } from './theme.ts';
import { verdictLine } from './verdict-line.ts';
import type { VerdictMark } from './verdict-line.ts';
import { placeZoneNames } from './zone-names.ts';
import type { PlacedName } from './zone-names.ts';

export interface MapPart {
  readonly id: string;
  readonly name: string;
  /** Polygon in millimetres of the unfolded cabin; an open polyline where `line` is set. */
  readonly outline: readonly Point[];
  /** A thread or piping: drawn as a line, not a face. */
  readonly line?: boolean;
  /** Computed colour; absent where the part has no data under the light. */
  readonly fill?: string;
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
}

export interface CabinMapSize {
  readonly width: number;
  readonly height: number;
  /** Add wide invisible lines that a pointer can hit, and names for the parts and joints. */
  readonly interactive?: boolean;
}

/** Maps millimetres of the cabin into a box of px, the whole of it visible, centred, proportions kept. */
export function fitPoints(points: readonly Point[], width: number, height: number, margin: number): (point: Point) => Point {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const scale = Math.min((width - 2 * margin) / Math.max(1, right - left), (height - 2 * margin) / Math.max(1, bottom - top));
  const dx = (width - scale * (right - left)) / 2 - scale * left;
  const dy = (height - scale * (bottom - top)) / 2 - scale * top;
  return ([x, y]) => [dx + scale * x, dy + scale * y];
}

const order = { holds: 0, open: 1, clashes: 2 } as const;

/** The cabin unfolded: faces in their computed colours, and every joint where its parts meet in the language of verdicts, the worst on top. */
export function cabinMap(input: CabinMapInput, size: CabinMapSize, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const every = [...input.parts.flatMap((part) => part.outline), ...input.joints.flatMap((joint) => joint.path)];
  if (every.length === 0) return drawing(width, height, input.title);
  const place = fitPoints(every, width, height, Math.max(14, width * 0.025));
  const scale = Math.min(1.15, Math.max(0.7, width / 860));
  const faces = input.parts.filter((part) => !part.line);
  const lines = input.parts.filter((part) => part.line);
  const joints = [...input.joints].sort((a, b) => order[a.verdict] - order[b.verdict]);
  const lit = joints.find((joint) => joint.id === input.highlight);
  return drawing(
    width,
    height,
    input.title,
    element('g', { class: 'faces' }, faces.map((part) => face(part, part.outline.map(place), theme, part.id === input.part || input.marked?.has(part.id) === true))),
    element('g', { class: 'threads' }, lines.map((part) => thread(part, part.outline.map(place), theme, scale))),
    element('g', { class: 'zones', 'aria-hidden': 'true' }, zoneNames(input, place, width, height, theme)),
    element('g', { class: 'joints' }, joints.map((joint) =>
      drawnJoint(joint, joint.path.map(place), theme, scale, input.rested?.has(joint.id) ?? false))),
    lit === undefined ? undefined : halo(lit, lit.path.map(place), theme, scale),
    size.interactive
      ? element('g', { class: 'hits' }, joints.filter((joint) => joint.path.length > 1).map((joint) => hit(joint, joint.path.map(place))))
      : undefined,
  );
}

function face(part: MapPart, outline: readonly Point[], theme: FigureTheme, pointed: boolean): SceneElement {
  const d = pathThrough(outline, true);
  return element(
    'g',
    { class: 'face', 'data-part': part.id },
    element('path', {
      class: part.fill === undefined ? 'no-colour' : 'sample',
      d,
      fill: part.fill ?? theme.table,
      stroke: pointed ? theme.casing : theme.core,
      'stroke-width': pointed ? 2 : 0.75,
    }),
    part.fill === undefined
      ? element('path', {
          class: 'hatch', d: hatchPath(outline, 6), fill: 'none', stroke: theme.tableInk, 'stroke-width': 0.6, 'pointer-events': 'none',
        })
      : undefined,
  );
}

function thread(part: MapPart, outline: readonly Point[], theme: FigureTheme, scale: number): SceneElement {
  const d = pathThrough(outline);
  return element(
    'g',
    { class: 'thread', 'data-part': part.id },
    element('path', { d, fill: 'none', stroke: theme.tableInk, 'stroke-width': 5 * scale }),
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

function halo(joint: MapJoint, path: readonly Point[], theme: FigureTheme, scale: number): SceneElement {
  const d = pathThrough(path);
  return element(
    'g',
    { class: 'halo', 'pointer-events': 'none' },
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

const placed = new WeakMap<readonly MapPart[], Map<string, PlacedName[]>>();

/** Names of the zones; their places are kept for as long as the parts and the size stay, since a map is redrawn with every move of the pointer. */
function zoneNames(input: CabinMapInput, place: (point: Point) => Point, width: number, height: number, theme: FigureTheme): SceneElement[] {
  const sizes = placed.get(input.parts) ?? new Map<string, PlacedName[]>();
  placed.set(input.parts, sizes);
  const names = sizes.get(`${width} ${height}`) ?? placeZoneNames(input, place, width, height);
  sizes.set(`${width} ${height}`, names);
  return names.map(({ text, x, y, on }) => {
    const fill = (on?.fill === undefined ? undefined : inkOn(on.fill)) ?? theme.tableInk;
    return element('text', { x, y, 'font-size': 11, fill, 'pointer-events': 'none' }, text);
  });
}

/** Middle of a joint on the drawn map, px: where a call-out may point. */
export const jointMiddle = (path: readonly Point[]): Point => placeAlong(path, polylineLength(path) / 2).point;
