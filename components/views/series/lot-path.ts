import { scaleLinear } from 'd3';
import type { FigureTheme } from '../../../src/report/figures/theme.ts';
import { drawing, element, pathThrough } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import type { PartSeries } from '../../../src/series/index.ts';
import { lotMark } from '../../../src/report/figures/lot-panels.ts';
import type { LotColours } from '../../../src/report/figures/lot-panels.ts';

/** The way of the lots through a* and b* on equal axes, and through L* on an upright scale of the same measure beside it. */
export function lotPath({ lots }: PartSeries, colours: LotColours, width: number, theme: FigureTheme): SceneElement {
  const edge = Math.max(120, Math.min(420, width - 150));
  const height = edge + 52;
  const of = (axis: 0 | 1 | 2): readonly number[] => lots.map(({ lab }) => lab[axis]);
  const middle = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;
  const extent = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const span = 1.25 * Math.max(0.4, extent(of(0)), extent(of(1)), extent(of(2)));
  const across = (values: readonly number[], from: number, to: number) => scaleLinear([middle(values) - span / 2, middle(values) + span / 2], [from, to]);
  const x = across(of(1), 46, 46 + edge);
  const y = across(of(2), 16 + edge, 16);
  const L = across(of(0), 16 + edge, 16);
  const upright = 46 + edge + 64;
  const words = (px: number, py: number, text: string, anchor: string, quiet = true): SceneElement =>
    element('text', { x: px, y: py, 'font-size': quiet ? 11 : 13, 'text-anchor': anchor, fill: quiet ? theme.quiet : theme.ink, 'font-weight': quiet ? undefined : 600 }, text);
  const rule = (x1: number, y1: number, x2: number, y2: number): SceneElement => element('line', { x1, y1, x2, y2, stroke: theme.faint, 'stroke-width': 0.75 });
  const points = lots.map(({ lab }): [number, number] => [x(lab[1]), y(lab[2])]);
  const last = lots.length - 1;
  const names = nameSpots(points, [...new Set([0, last])].map((index) => [index, lots[index]!.id]), [46, 46 + edge]);
  return drawing(width, height, undefined,
    x.ticks(4).map((tick) => [rule(x(tick), 16, x(tick), 16 + edge), words(x(tick), edge + 32, minus(x.tickFormat(4)(tick)), 'middle')]).flat(),
    y.ticks(4).map((tick) => [rule(46, y(tick), 46 + edge, y(tick)), words(38, y(tick) + 4, minus(y.tickFormat(4)(tick)), 'end')]).flat(),
    L.ticks(4).map((tick) => [rule(upright - 8, L(tick), upright + 8, L(tick)), words(upright - 14, L(tick) + 4, minus(L.tickFormat(4)(tick)), 'end')]).flat(),
    rule(upright, 16, upright, 16 + edge),
    words(46 + edge, edge + 48, 'a*', 'end', false), words(6, 14, 'b*', 'start', false), words(upright, edge + 48, 'L*', 'middle', false),
    element('path', { d: pathThrough(points), fill: 'none', stroke: theme.ink, 'stroke-width': 1 }),
    lots.map(({ lab }, index) => [lotMark(points[index]![0], points[index]![1], index === last ? 8 : 5, colours[index], theme), lotMark(upright, L(lab[0]), index === last ? 8 : 5, colours[index], theme)]).flat(),
    names.map(([px, py, name]) => words(px, py + 5, name, 'middle', false)),
  );
}

type Named = readonly [x: number, y: number, name: string];

/** The middles of names beside their points, each on the side that is farthest from the other points and from the names before it. */
function nameSpots(points: readonly (readonly [number, number])[], named: readonly (readonly [index: number, name: string])[], [left, right]: readonly [number, number]): readonly Named[] {
  const placed: Named[] = [];
  for (const [index, name] of named) {
    const [x, y] = points[index]!;
    const half = 4 * name.length;
    const sides = [[half + 16, 0], [-half - 16, 0], [0, -20], [0, 20]].map(([dx, dy]) => [x + dx!, y + dy!] as const).filter(([at]) => at - half >= left && at + half <= right);
    const room = ([sx, sy]: readonly [number, number]): number => Math.min(
      ...points.map(([px, py], other) => (other === index ? Infinity : Math.hypot(Math.max(0, Math.abs(px - sx) - half), py - sy))),
      ...placed.map(([px, py]) => Math.hypot(Math.max(0, Math.abs(px - sx) - 2 * half), py - sy)));
    const [best] = sides.toSorted((one, other) => room(other) - room(one));
    placed.push([...(best ?? [x, y - 20] as const), name]);
  }
  return placed;
}

const minus = (text: string): string => text.replace('-', '−');
