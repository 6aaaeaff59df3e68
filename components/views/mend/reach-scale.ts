import type { FigureTheme } from '../../../src/report/figures/theme.ts';
import { signed } from '../../../src/report/number-text.ts';
import { drawing, element } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';

export interface ReachRow {
  readonly name: string;
  readonly shift: number;
  /** How far the material can be taken either way. */
  readonly reach: number;
}

const [rowHeight, left, right] = [24, 54, 58] as const;

/** What is asked on each axis, on a scale from the far end of the material's reach to the other. */
export function reachScale(rows: readonly ReachRow[], width: number, theme: FigureTheme): SceneElement {
  const from = left;
  const to = width - right;
  const middle = (from + to) / 2;
  return drawing(
    width, rows.length * rowHeight, undefined,
    rows.flatMap(({ name, shift, reach }, index) => {
      const y = index * rowHeight + rowHeight / 2;
      const at = middle + (reach === 0 ? 0 : Math.max(-1, Math.min(1, shift / reach)) * ((to - from) / 2));
      return [
        element('text', { x: 0, y: y + 4, 'font-size': 12, fill: theme.ink }, name),
        element('line', { x1: from, y1: y, x2: to, y2: y, stroke: theme.quiet, 'stroke-width': 1, 'stroke-dasharray': reach === 0 ? '1 3' : undefined }),
        ...(reach === 0 ? [] : [from, to].map((x) => element('line', { x1: x, y1: y - 4, x2: x, y2: y + 4, stroke: theme.quiet, 'stroke-width': 1 }))),
        element('line', { x1: middle, y1: y - 6, x2: middle, y2: y + 6, stroke: theme.ink, 'stroke-width': 1 }),
        ...(shift === 0 ? [] : [
          element('line', { x1: middle, y1: y, x2: at, y2: y, stroke: theme.ink, 'stroke-width': 4 }),
          element('path', { d: `M${at} ${y - 7}l5 7l-5 7l-5 -7z`, fill: theme.ink }),
        ]),
        element('text', { x: width, y: y + 4, 'font-size': 12, 'text-anchor': 'end', fill: shift === 0 ? theme.quiet : theme.ink, 'font-weight': shift === 0 ? undefined : 600 }, shift === 0 ? 'as it is' : signed(shift, 2)),
      ];
    }),
  );
}
