import { line, scaleLinear, scaleLog } from 'd3';
import { drawing, element } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';

/** Visible contrast at one viewing distance. */
export interface SeenAt {
  readonly viewMm: number;
  readonly contrast: number;
}

const [left, right, top, bottom] = [44, 12, 10, 34];
const size = { width: 420, height: 190 };

/** Visible contrast over the distance one looks from, against its threshold of one; `atMm` is the distance asked about. */
export function distanceCurve(seen: readonly SeenAt[], atMm: number): SceneElement {
  const { width, height } = size;
  const x = scaleLog([seen[0]?.viewMm ?? 200, seen.at(-1)?.viewMm ?? 5000], [left, width - right]);
  const y = scaleLinear([0, Math.max(2, ...seen.map(({ contrast }) => contrast))], [height - bottom, top]).nice(4);
  const path = line<SeenAt>((point) => x(point.viewMm), (point) => y(point.contrast)).digits(1)(seen) ?? '';
  const text = (content: string, attributes: Record<string, string | number>): SceneElement => element('text', { 'font-size': 12, fill: 'currentColor', ...attributes }, content);
  return drawing(width, height, 'Visible contrast over the viewing distance',
    ...y.ticks(4).flatMap((tick) => [
      element('line', { x1: left, x2: width - right, y1: y(tick), y2: y(tick), stroke: 'currentColor', 'stroke-opacity': 0.16 }),
      text(String(tick), { x: left - 8, y: y(tick) + 4, 'text-anchor': 'end' }),
    ]),
    ...[250, 500, 1000, 2000, 4000].map((tick) => text(`${tick / 1000}`, { x: x(tick), y: height - bottom + 16, 'text-anchor': 'middle' })),
    text('viewing distance, m', { x: (left + width - right) / 2, y: height - 3, 'text-anchor': 'middle' }),
    element('line', { x1: left, x2: width - right, y1: y(1), y2: y(1), stroke: 'currentColor', 'stroke-dasharray': '5 4' }),
    text('threshold', { x: width - right, y: y(1) - 5, 'text-anchor': 'end' }),
    element('line', { x1: x(atMm), x2: x(atMm), y1: top, y2: height - bottom, stroke: 'currentColor', 'stroke-opacity': 0.5 }),
    element('path', { d: path, fill: 'none', stroke: 'currentColor', 'stroke-width': 2 }));
}
