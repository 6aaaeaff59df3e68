import type { MapPoint, Part } from '../../src/cabin/cabin.ts';
import type { MapPlace } from '../../src/report/figures/map-place.ts';
import type { Point } from '../../src/report/figures/polyline.ts';
import { element, pathThrough } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';
import { tableInk } from '../figures/inks.ts';

/** Points of an outline lie on whole millimetres: it is drawn, not measured. */
export const rounded = ([x, y]: Point): MapPoint => [Math.round(x), Math.round(y)];

/** What the keys do to the point that is chosen, mm; with Shift ten times as far. */
export function keyMove(event: KeyboardEvent, pxPerMm: number): Point | undefined {
  const direction = ({ ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] } as Readonly<Record<string, Point>>)[event.key];
  if (direction === undefined || event.ctrlKey || event.metaKey || event.altKey) return undefined;
  const far = Math.max(1, Math.round(2 / pxPerMm)) * (event.shiftKey ? 10 : 1);
  return [direction[0] * far, direction[1] * far];
}

/** A point half way to the next one, for an insertion after `place`. */
export function halfWay(outline: readonly MapPoint[], place: number): MapPoint {
  const [from, to] = [outline[place] as MapPoint, outline[(place + 1) % outline.length] as MapPoint];
  return rounded([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
}

/** The outline of a part with a handle at each of its points. */
export function outlineHandles(part: Part, outline: readonly MapPoint[], chosen: number | undefined, { toScreen }: MapPlace): SceneElement {
  const points = outline.map(toScreen);
  const close = points.some(([x, y], place) => Math.hypot(x - (points.at(place - 1)?.[0] ?? x), y - (points.at(place - 1)?.[1] ?? y)) < 11);
  const half = (place: number): number => (place === chosen ? 5.5 : close ? 2.5 : 4.5);
  return element(
    'g', { class: 'handles' },
    element('path', { d: pathThrough(points, true), fill: 'none', stroke: tableInk.casing, 'stroke-width': 4, 'pointer-events': 'none' }),
    element('path', { d: pathThrough(points, true), fill: 'none', stroke: tableInk.core, 'stroke-width': 1.5, 'pointer-events': 'none' }),
    points.map(([x, y], place) => element(
      'g', { class: 'handle', 'data-point': place },
      element('circle', { cx: x, cy: y, r: 12, fill: 'transparent' }, element('title', {}, `Point ${place + 1} of ${points.length} of ${part.name}`)),
      element('rect', {
        x: x - half(place), y: y - half(place), width: 2 * half(place), height: 2 * half(place), fill: place === chosen ? tableInk.core : tableInk.casing, stroke: place === chosen ? tableInk.casing : tableInk.core,
        'stroke-width': 1.5, 'pointer-events': 'none',
      }),
    )),
  );
}

/** An outline that is being drawn, with the cross that keys move. */
export function draftOutline(points: readonly MapPoint[], cross: MapPoint | undefined, { toScreen }: MapPlace): SceneElement {
  const drawn = [...points, ...(cross === undefined ? [] : [cross])].map(toScreen);
  const at = cross === undefined ? undefined : toScreen(cross);
  return element(
    'g', { class: 'draft', 'pointer-events': 'none' },
    element('path', { d: pathThrough(drawn), fill: 'none', stroke: tableInk.casing, 'stroke-width': 4 }),
    element('path', { d: pathThrough(drawn), fill: 'none', stroke: tableInk.core, 'stroke-width': 1.5, 'stroke-dasharray': '6 4' }),
    points.map(toScreen).map(([x, y], place) => element('rect', {
      x: x - 4, y: y - 4, width: 8, height: 8, fill: place === 0 ? tableInk.core : tableInk.casing, stroke: place === 0 ? tableInk.casing : tableInk.core, 'stroke-width': 1.5,
    })),
    at === undefined ? undefined : element('path', { d: `M${at[0] - 12} ${at[1]}h24M${at[0]} ${at[1] - 12}v24`, stroke: tableInk.core, 'stroke-width': 1.5 }),
  );
}
