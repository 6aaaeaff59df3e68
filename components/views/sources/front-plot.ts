import { scaleLinear } from 'd3';
import type { FigureTheme } from '../../../src/report/figures/theme.ts';
import { drawing, element, pathThrough } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import { moneyText } from '../../model/money-text.ts';

export interface PlottedSet {
  readonly clashes: number;
  readonly cost: number;
  readonly proved: boolean;
}

export interface FrontPlotInput {
  readonly front: readonly PlottedSet[];
  /** The cabin as it stands. */
  readonly present: PlottedSet | undefined;
  /** Which point is picked. */
  readonly picked: number | undefined;
  readonly currency: string;
  readonly budget: number | undefined;
}

/** Money across, clashes upward: below and to the left is better. The stair is what no set can go under. */
export function frontPlot(input: FrontPlotInput, size: { readonly width: number; readonly height: number }, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const { front, present, picked, currency, budget } = input;
  const every = [...front, ...(present === undefined ? [] : [present])];
  if (every.length === 0) return drawing(width, height, undefined);
  const [left, right, top, bottom] = [52, width - 28, 26, height - 46];
  const costs = every.map(({ cost }) => cost);
  const span = Math.max(1, Math.max(...costs) - Math.min(...costs));
  const x = scaleLinear([Math.min(...costs) - 0.06 * span, Math.max(...costs) + 0.08 * span], [left, right]);
  const y = scaleLinear([0, Math.max(1, ...every.map(({ clashes }) => clashes)) * 1.12], [bottom, top]);
  const rule = (x1: number, y1: number, x2: number, y2: number): SceneElement => element('line', { x1, y1, x2, y2, stroke: theme.faint, 'stroke-width': 0.75 });
  const words = (px: number, py: number, text: string, anchor: string, bold = false): SceneElement =>
    element('text', { x: px, y: py, 'font-size': 12, 'text-anchor': anchor, fill: bold ? theme.ink : theme.quiet, 'font-weight': bold ? 600 : undefined }, text);
  const rising = [...front].sort((a, b) => a.cost - b.cost);
  const stair = rising.flatMap((point, index): [number, number][] => (index === 0 ? [[x(point.cost), top], [x(point.cost), y(point.clashes)]] : [[x(point.cost), y(rising[index - 1]!.clashes)], [x(point.cost), y(point.clashes)]]));
  const last = rising.at(-1);
  if (last !== undefined) stair.push([right, y(last.clashes)]);
  const chosen = picked === undefined ? undefined : front[picked];
  return drawing(
    width, height, undefined,
    y.ticks(5).map((tick) => [rule(left, y(tick), right, y(tick)), words(left - 8, y(tick) + 4, String(tick), 'end')]).flat(),
    x.ticks(Math.max(2, Math.floor(width / 170))).map((tick) => [rule(x(tick), bottom, x(tick), bottom + 5), words(x(tick), bottom + 19, moneyText(tick, ''), 'middle')]).flat(),
    rule(left, bottom, right, bottom),
    words(left - 44, 14, 'joints that clash', 'start'),
    words(right, height - 6, `cost of a year${currency === '' ? '' : `, ${currency}`}`, 'end'),
    budget === undefined || budget < x.domain()[0]! || budget > x.domain()[1]! ? undefined : [
      element('line', { x1: x(budget), y1: top, x2: x(budget), y2: bottom, stroke: theme.ink, 'stroke-width': 1, 'stroke-dasharray': '1 3' }), words(x(budget) + 5, top + 10, 'budget', 'start'),
    ],
    front.length > 1 ? element('path', { d: pathThrough([...stair, [right, bottom], [x(rising[0]!.cost), bottom]], true), fill: theme.faint, opacity: 0.3 }) : undefined,
    front.length > 1 ? element('path', { d: pathThrough(stair), fill: 'none', stroke: theme.quiet, 'stroke-width': 1 }) : undefined,
    present === undefined ? undefined : element('g', { class: 'present' },
      element('path', { d: `M${x(present.cost) - 6} ${y(present.clashes)}h12M${x(present.cost)} ${y(present.clashes) - 6}v12`, stroke: theme.ink, 'stroke-width': 2 }),
      words(x(present.cost) + (x(present.cost) > right - 90 ? -10 : 10), y(present.clashes) - 8, 'as it is', x(present.cost) > right - 90 ? 'end' : 'start', true)),
    chosen === undefined ? undefined : [
      element('line', { x1: left, y1: y(chosen.clashes), x2: x(chosen.cost), y2: y(chosen.clashes), stroke: theme.ink, 'stroke-width': 0.75, 'stroke-dasharray': '2 2' }),
      element('line', { x1: x(chosen.cost), y1: bottom, x2: x(chosen.cost), y2: y(chosen.clashes), stroke: theme.ink, 'stroke-width': 0.75, 'stroke-dasharray': '2 2' }),
      element('circle', { cx: x(chosen.cost), cy: y(chosen.clashes), r: 11, fill: 'none', stroke: theme.ink, 'stroke-width': 2 }),
    ],
    front.map((point, index) => element('g', { class: 'point', 'data-point': index, cursor: 'pointer' },
      element('circle', { cx: x(point.cost), cy: y(point.clashes), r: 14, fill: 'transparent' }),
      element('circle', { cx: x(point.cost), cy: y(point.clashes), r: 5.5, fill: point.proved ? theme.ink : theme.paper, stroke: theme.ink, 'stroke-width': 1.5, 'stroke-dasharray': point.proved ? undefined : '2 1.5' }))),
  );
}
