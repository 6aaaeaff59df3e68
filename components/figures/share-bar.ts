import type { FigureTheme } from '../../src/report/figures/theme.ts';
import { drawing, element } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';

export interface ShareBarInput {
  /** Share of the limit, 0 and above. */
  readonly share: number | undefined;
  /** Share that should not be passed; an upright tick. */
  readonly goal: number;
  /** A second share on the same scale, a hollow mark: that of the gauge. */
  readonly mark?: number | undefined;
}

/** Share of a limit at the right end of the bar; more is drawn to the end with an arrow. */
export const shareBarEnd = 0.5;

/** How much of a limit something takes: a bar up to half of the limit, hollow and heavy where it passes the goal. Decorative: the numbers stand beside it. */
export function shareBar({ share, goal, mark }: ShareBarInput, size: { readonly width: number; readonly height: number }, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const x = (value: number): number => 1 + (Math.min(value, shareBarEnd) / shareBarEnd) * (width - 10);
  const middle = height / 2;
  const over = share !== undefined && share > goal;
  const end = share === undefined ? 1 : x(share);
  return drawing(
    width, height, undefined,
    element('line', { x1: 1, y1: middle, x2: width - 9, y2: middle, stroke: theme.faint, 'stroke-width': 1 }),
    share === undefined ? undefined : element('rect', {
      x: 1, y: middle - 4, width: Math.max(1, end - 1), height: 8, fill: over ? theme.paper : theme.ink, stroke: over ? theme.open : theme.ink, 'stroke-width': over ? 2 : 1, 'stroke-dasharray': over ? '4 2' : undefined,
    }),
    share !== undefined && share > shareBarEnd ? element('path', { d: `M${width - 8} ${middle - 5}l6 5l-6 5`, fill: 'none', stroke: theme.open, 'stroke-width': 2 }) : undefined,
    mark === undefined ? undefined : element('circle', { cx: x(mark), cy: middle, r: 3.5, fill: theme.paper, stroke: theme.ink, 'stroke-width': 1.5 }),
    element('line', { x1: x(goal), y1: 1, x2: x(goal), y2: height - 1, stroke: theme.ink, 'stroke-width': 1.5 }),
  );
}
