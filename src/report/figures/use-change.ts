import { drawing, element, round } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import { limitScaleX } from './limit-scale.ts';
import type { FigureTheme } from './theme.ts';

export interface UseChangeInput {
  /** value / limit before and after; a side is undefined where there was none. */
  readonly before: number | undefined;
  readonly after: number | undefined;
  /** Name of the drawing; without one it is decoration beside its numbers. */
  readonly label?: string;
}

/** Limit use before (hollow) and after (solid) on one scale from 0 to twice the limit, an arrow from one to the other, the limit as a tick; px. */
export function useChange(input: UseChangeInput, size: { readonly width: number; readonly height: number }, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const x = limitScaleX({ width, padding: 6 });
  const middle = height / 2;
  const [from, to] = [input.before, input.after].map((use) => (use === undefined ? undefined : x(use)));
  return drawing(width, height, input.label,
    element('line', { x1: x(0), y1: middle, x2: x(2), y2: middle, stroke: theme.faint, 'stroke-width': 1, class: 'rest' }),
    element('line', { class: 'limit', x1: x(1), y1: 1, x2: x(1), y2: height - 1, stroke: theme.ink, 'stroke-width': 1 }),
    from !== undefined && to !== undefined ? arrow(from, to, middle, theme) : undefined,
    from === undefined ? undefined : element('circle', { class: 'before', cx: from, cy: middle, r: 3, fill: theme.paper, stroke: theme.ink, 'stroke-width': 1.25 }),
    to === undefined ? undefined : element('circle', { class: 'after', cx: to, cy: middle, r: 3, fill: theme.ink }));
}

/** A line that ends in a point; only the line where there is no room for it. */
function arrow(from: number, to: number, y: number, theme: FigureTheme): SceneElement {
  const way = Math.sign(to - from);
  const tip = to - way * 3.5;
  const room = Math.abs(to - from) > 12;
  return element('g', {},
    element('line', { x1: from, y1: y, x2: to, y2: y, stroke: theme.ink, 'stroke-width': 1.75 }),
    room ? element('path', { d: `M${round(tip)} ${round(y)}l${round(-way * 5)} -3.4v6.8z`, fill: theme.ink }) : undefined);
}
