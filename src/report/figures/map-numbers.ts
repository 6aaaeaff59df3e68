import { element } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import type { Point } from './polyline.ts';
import { placeAlong, polylineLength } from './polyline.ts';
import type { FigureTheme } from './theme.ts';

const radius = 8.5;
/** Shares of a line that a number may stand at, the middle first. */
const shares = [0.5, 0.3, 0.7, 0.15, 0.85];

/** Numbers on lines that lead from a picture to a list: each on its own line, clear of the numbers before it and of the edge of the box. */
export function mapNumbers(lines: readonly { readonly number: number; readonly path: readonly Point[] }[], size: { readonly width: number; readonly height: number }, theme: FigureTheme): readonly SceneElement[] {
  const placed: Point[] = [];
  return lines.flatMap(({ number, path }): SceneElement[] => {
    if (path.length < 2) return [];
    const length = polylineLength(path);
    const spots = shares.flatMap((share) => {
      const [x, y] = placeAlong(path, share * length).point;
      return [[0, -14], [14, 0], [-14, 0], [0, 14]].map(([dx, dy]): Point => [within(x + dx, size.width), within(y + dy, size.height)]);
    });
    const room = ([x, y]: Point): number => Math.min(2 * radius + 3, ...placed.map(([px, py]) => Math.hypot(px - x, py - y)));
    const best = spots.reduce((kept, spot) => (room(spot) > room(kept) ? spot : kept));
    placed.push(best);
    const [x, y] = best;
    return [element('g', { class: 'number' },
      element('circle', { cx: x, cy: y, r: radius, fill: theme.paper, stroke: theme.ink, 'stroke-width': 1.25 }),
      element('text', { x, y: y + 4.2, 'font-size': number > 9 ? 10.5 : 12, 'font-weight': 700, 'text-anchor': 'middle', fill: theme.ink }, String(number)))];
  });
}

const within = (value: number, size: number): number => Math.max(radius + 2, Math.min(size - radius - 2, value));
