import { scaleLinear } from 'd3';
import type { FigureTheme } from '../../src/report/figures/theme.ts';
import { drawing, element } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';

export interface TileRow {
  readonly tile: string;
  /** Size of the deviation of each instrument. */
  readonly values: readonly number[];
}

const shapes = [
  (x: number, y: number): string => `M${x - 4} ${y}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0`, (x: number, y: number): string => `M${x - 4} ${y - 4}h8v8h-8z`, (x: number, y: number): string => `M${x} ${y - 5}l5 9h-10z`,
  (x: number, y: number): string => `M${x} ${y - 5}l5 5l-5 5l-5 -5z`, (x: number, y: number): string => `M${x - 4} ${y - 4}l8 8M${x + 4} ${y - 4}l-8 8`,
] as const;

/** How far each instrument reads from the mean of all, tile by tile: a row a tile, a shape an instrument. */
export function tileDeviations(rows: readonly TileRow[], instruments: readonly string[], size: { readonly width: number; readonly height: number }, theme: FigureTheme): SceneElement {
  const { width } = size;
  const left = 150;
  const x = scaleLinear([0, Math.max(0.1, ...rows.flatMap(({ values }) => values)) * 1.05], [left, width - 12]).nice(4);
  const step = (size.height - 34) / Math.max(1, rows.length);
  const words = (at: number, y: number, text: string, anchor: string): SceneElement => element('text', { x: at, y, 'font-size': 11, 'text-anchor': anchor, fill: theme.quiet }, text);
  const mark = (instrument: number, at: number, y: number): SceneElement => element('path', { d: shapes[instrument % shapes.length]?.(at, y) ?? '', fill: instrument % 2 === 0 ? theme.ink : theme.paper, stroke: theme.ink, 'stroke-width': 1.25 });
  const between = Math.min(190, (width - left) / Math.max(1, instruments.length));
  // Names that have no room beside each other stand below each other: cut short they would be alike.
  const below = instruments.some((name) => name.length > between / 6);
  const down = below ? 15 * (instruments.length - 1) : 0;
  const height = size.height + down;
  const place = (at: number): readonly [x: number, y: number] => (below ? [left + 4, 8 + 15 * at] : [left + 4 + at * between, 8]);
  return drawing(
    width, height, `Differences of ${instruments.join(', ')} from their mean by tile; the table below has the numbers`,
    instruments.flatMap((name, at) => [mark(at, ...place(at)), words(place(at)[0] + 10, place(at)[1] + 4, name, 'start')]),
    x.ticks(5).flatMap((tick) => [element('line', { x1: x(tick), y1: 18 + down, x2: x(tick), y2: height - 16, stroke: tick === 0 ? theme.quiet : theme.faint, 'stroke-width': 0.75 }), words(x(tick), height - 3, String(tick), 'middle')]),
    rows.flatMap(({ tile, values }, row) => {
      const y = 20 + down + step * (row + 0.5);
      return [words(left - 8, y + 4, tile.length > 22 ? `${tile.slice(0, 21)}…` : tile, 'end'), element('line', { x1: left, y1: y, x2: width - 12, y2: y, stroke: theme.faint, 'stroke-width': 0.5 }), ...values.map((value, at) => mark(at, x(value), y))];
    }),
  );
}
