import type { FigureTheme } from '../../src/report/figures/theme.ts';
import { limitScaleX } from '../../src/report/figures/limit-scale.ts';
import { drawing, element, round } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';

/** A joint by how much of the limit it uses under one book and under the other. */
export interface UsePoint {
  readonly id: string;
  readonly label: string;
  readonly before: number;
  readonly after: number;
  /** Under the other book. */
  readonly verdict: 'holds' | 'open' | 'clashes';
  /** The two books give it other verdicts. */
  readonly turned: boolean;
}

export interface UseScatterInput {
  readonly points: readonly UsePoint[];
  /** Names of the axes. */
  readonly across: string;
  readonly up: string;
  readonly pointed?: string | undefined;
}

const margin = { left: 46, right: 14, top: 14, bottom: 40 };
const ticks = [0, 0.5, 1, 1.5, 2];

/** Corners of a saw round a point. */
function saw(x: number, y: number, size: number): string {
  return `${Array.from({ length: 16 }, (_, corner) => {
    const radius = corner % 2 === 0 ? size : size * 0.6;
    const angle = (corner * Math.PI) / 8;
    return `${corner === 0 ? 'M' : 'L'}${round(x + radius * Math.cos(angle))} ${round(y + radius * Math.sin(angle))}`;
  }).join('')}Z`;
}

function mark({ verdict, turned }: UsePoint, x: number, y: number, theme: FigureTheme, pointed: boolean): SceneElement {
  const stroke = verdict === 'holds' ? theme.holds : verdict === 'open' ? theme.open : theme.clashes;
  const shape = { fill: turned ? stroke : theme.paper, 'fill-opacity': turned ? 1 : 0.6, stroke, 'stroke-width': pointed ? 3 : verdict === 'holds' ? 1.1 : 1.7 };
  const size = pointed ? 7 : 4.6;
  return verdict === 'clashes' ? element('path', { ...shape, d: saw(x, y, size + 1.6) })
    : element('circle', { ...shape, cx: x, cy: y, r: size, 'stroke-dasharray': verdict === 'open' ? '2.6 1.8' : undefined });
}

/**
 * Limit use of joints under one rule book across and under another one up, both from 0 to twice the limit; what lies beyond stays at the edge.
 * The two limits cross the field; on the slanting line both books ask the same. Saws clash, dashed rings are open, rings hold under the other
 * book; full marks are those whose verdict turns.
 */
export function useScatter({ points, across, up, pointed }: UseScatterInput, size: { readonly width: number; readonly height: number }, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const inside = { width: width - margin.left - margin.right, height: height - margin.top - margin.bottom };
  const [scaleX, scaleY] = [limitScaleX({ width: inside.width, padding: 0 }), limitScaleX({ width: inside.height, padding: 0 })];
  const x = (use: number): number => margin.left + scaleX(use);
  const y = (use: number): number => margin.top + inside.height - scaleY(use);
  const words = { 'font-size': 11, fill: theme.quiet } as const;
  // Turned joints lie on top, the one that is pointed at above all.
  const order = [...points].sort((one, other) => Number(one.turned) - Number(other.turned) || Number(one.id === pointed) - Number(other.id === pointed));
  return drawing(width, height, `Limit use of ${points.length} joints, ${across} against ${up}; the same figures stand in the table`,
    element('rect', { x: x(0), y: y(2), width: inside.width, height: inside.height, fill: 'none', stroke: theme.faint, 'stroke-width': 1 }),
    element('line', { x1: x(0), y1: y(0), x2: x(2), y2: y(2), stroke: theme.faint, 'stroke-width': 1 }),
    element('line', { class: 'limit', x1: x(1), y1: y(0), x2: x(1), y2: y(2), stroke: theme.ink, 'stroke-width': 1 }),
    element('line', { class: 'limit', x1: x(0), y1: y(1), x2: x(2), y2: y(1), stroke: theme.ink, 'stroke-width': 1 }),
    ticks.flatMap((use) => [
      element('text', { ...words, x: x(use), y: height - margin.bottom + 14, 'text-anchor': 'middle' }, `${use * 100}`),
      element('text', { ...words, x: margin.left - 6, y: y(use) + 4, 'text-anchor': 'end' }, `${use * 100}`),
    ]),
    element('text', { ...words, x: x(1), y: height - 6, 'text-anchor': 'middle', fill: theme.ink }, `% of the limit, ${across}`),
    element('text', { ...words, x: 0, y: 0, 'text-anchor': 'middle', fill: theme.ink, transform: `translate(11 ${round(y(1))}) rotate(-90)` }, `% of the limit, ${up}`),
    element('text', { ...words, x: x(0) + 6, y: y(2) + 15 }, 'stricter there'),
    element('text', { ...words, x: x(2) - 6, y: y(0) - 7, 'text-anchor': 'end' }, 'looser there'),
    order.map((point) => element('g', { class: `joint${point.turned ? ' turned' : ''}`, 'data-joint': point.id },
      element('title', {}, point.label), mark(point, x(point.before), y(point.after), theme, point.id === pointed))));
}
