import { scaleLinear } from 'd3';
import type { FigureTheme } from './theme.ts';
import { drawing, element, pathThrough } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import type { PartSeries, TrendTold } from '../../series/index.ts';

/** Colours of the lots on the screen, in their order; undefined where one cannot be shown. */
export type LotColours = readonly (string | undefined)[];

/** A lot as a small sample of its colour, crossed out where it cannot be shown. */
export function lotMark(x: number, y: number, half: number, css: string | undefined, theme: FigureTheme): SceneElement {
  return element('g', {},
    element('rect', { class: 'sample', x: x - half - 1, y: y - half - 1, width: 2 * half + 2, height: 2 * half + 2, fill: theme.casing }),
    element('rect', { class: 'sample', x: x - half, y: y - half, width: 2 * half, height: 2 * half, fill: css ?? theme.paper, stroke: theme.core, 'stroke-width': 1 }),
    css === undefined ? element('path', { d: `M${x - half} ${y + half}L${x + half} ${y - half}`, stroke: theme.core }) : undefined);
}

interface Panel {
  readonly title: string;
  readonly height: number;
  readonly places: readonly number[];
  readonly values: readonly number[];
  readonly marks: LotColours;
  readonly trend?: TrendTold;
  readonly axis?: number;
  /** Limit at each lot. */
  readonly limits?: readonly number[];
  readonly outside?: readonly boolean[];
  readonly least: number;
}

const [left, right] = [72, 16];

/** T2 with its limit, then L*, a*, b* and gloss with their lines and bands, all over one scale of time. The words of outside lots stand beside their marks. */
export function lotPanels(series: PartSeries, colours: LotColours, width: number, theme: FigureTheme, heights = { chart: 148, axis: 96 }): SceneElement {
  const { lots, trend, gloss, chart } = series;
  const places = lots.map(({ place }) => place);
  const charted = lots.flatMap((lot, index) => (lot.charted === undefined ? [] : [{ ...lot.charted, index }]));
  const panels: Panel[] = [
    ...(chart.reason !== undefined || charted.length === 0 ? [] : [{
      title: 'T²', height: heights.chart, places: charted.map(({ index }) => places[index]), values: charted.map(({ statistic }) => statistic), marks: charted.map(({ index }) => colours[index]),
      limits: charted.map(({ limit }) => limit), outside: charted.map(({ outside }) => outside), least: 0,
    }]),
    ...(['L*', 'a*', 'b*'] as const).map((title, axis): Panel => ({ title, height: heights.axis, places, values: lots.map(({ lab }) => lab[axis as 0 | 1 | 2]), marks: colours, trend, axis, least: 0.4 })),
    ...(gloss === undefined ? [] : [{
      title: `GU ${gloss.angle}°`, height: heights.axis, places: gloss.lots.map(({ place }) => place), values: gloss.lots.map(({ mean }) => mean),
      marks: gloss.lots.map(({ id }) => colours[lots.findIndex((lot) => lot.id === id)]), trend: gloss, axis: 0, least: 0.4,
    }]),
  ];
  const [from, to] = [Math.min(...places), Math.max(...places)];
  const pad = Math.max(0.5, 0.03 * (to - from));
  const x = scaleLinear([from - pad, to + pad], [left, width - right]);
  const height = panels.reduce((sum, panel) => sum + panel.height, 0) + 34;
  let top = 0;
  const drawn = panels.map((panel) => {
    const made = panelOf(panel, x, top, width, theme);
    top += panel.height;
    return made;
  });
  const each = Math.max(1, Math.ceil(lots.length / Math.max(2, Math.floor((width - left - right) / 84))));
  const ticks = lots.flatMap((lot, index) => ((lots.length - 1 - index) % each === 0 ? [
    element('line', { x1: x(lot.place), y1: top, x2: x(lot.place), y2: top + 4, stroke: theme.quiet, 'stroke-width': 0.75 }),
    element('text', { x: x(lot.place), y: top + 17, 'font-size': 12, 'text-anchor': anchorAt(x(lot.place), width), fill: theme.ink }, lot.id),
    element('text', { x: x(lot.place), y: top + 31, 'font-size': 11, 'text-anchor': anchorAt(x(lot.place), width), fill: theme.quiet }, lot.producedOn ?? ''),
  ] : []));
  return drawing(width, height, undefined, drawn, ticks);
}

const anchorAt = (x: number, width: number): string => (x > width - 40 ? 'end' : x < 34 ? 'start' : 'middle');

function panelOf(panel: Panel, x: (place: number) => number, top: number, width: number, theme: FigureTheme): SceneElement {
  const { title, places, values, marks, trend, axis = 0, limits, outside, least } = panel;
  // Marks of many lots are smaller, so that they keep apart.
  const half = Math.max(2, Math.min(5, (0.42 * (width - left - right)) / Math.max(1, values.length)));
  const [high, low] = [top + 16, top + panel.height - 10];
  const line = trend?.line ?? [];
  const band = line.flatMap(({ value, reach }) => [value[axis] - reach[axis], value[axis] + reach[axis]]);
  const every = [...values, ...(limits ?? []), ...(limits === undefined ? [] : [0]), ...band];
  const [min, max] = [Math.min(...every), Math.max(...every)];
  const room = Math.max(0, (least - (max - min)) / 2) + 0.08 * (max - min);
  const y = scaleLinear([limits === undefined ? min - room : 0, max + room], [low, high]);
  const at = (points: readonly (readonly [number, number])[]): [number, number][] => points.map(([place, value]) => [x(place), y(value)]);
  const claimed = trend?.state === 'trend';
  const count = panel.height > 120 ? 4 : panel.height > 80 ? 3 : 2;
  const ticks = y.ticks(count);
  return element('g', {},
    ticks.map((tick) => element('line', { x1: left, y1: y(tick), x2: width - right, y2: y(tick), stroke: theme.faint, 'stroke-width': 0.75 })),
    ticks.map((tick) => element('text', { x: left - 8, y: y(tick) + 4, 'font-size': 11, 'text-anchor': 'end', fill: theme.quiet }, y.tickFormat(count)(tick).replace('-', '−'))),
    element('text', { x: 0, y: top + 14, 'font-size': 13, 'font-weight': 600, fill: theme.ink }, title),
    line.length === 0 ? undefined : [
      element('path', { d: pathThrough([...at(line.map(({ place, value, reach }) => [place, value[axis] + reach[axis]])), ...at(line.map(({ place, value, reach }) => [place, value[axis] - reach[axis]])).reverse()], true), fill: theme.faint, opacity: claimed ? 0.55 : 0.25 }),
      element('path', { d: pathThrough(at(line.map(({ place, value }) => [place, value[axis]]))), fill: 'none', stroke: theme.ink, 'stroke-width': claimed ? 1.75 : 0.75, 'stroke-dasharray': claimed ? undefined : '2 3' }),
    ],
    limits === undefined ? undefined : limitLine(places, values, limits, x, y, width, theme),
    element('path', { d: pathThrough(at(values.map((value, index) => [places[index], value]))), fill: 'none', stroke: theme.quiet, 'stroke-width': 0.75, opacity: claimed || limits !== undefined ? 0.8 : 0.5 }),
    values.map((value, index) => [
      outside?.[index] === true ? element('circle', { cx: x(places[index]), cy: y(value), r: 2 * half, fill: 'none', stroke: theme.clashes, 'stroke-width': half < 4 ? 1.75 : 2.5 }) : undefined,
      lotMark(x(places[index]), y(value), half, marks[index], theme),
    ].filter((each) => each !== undefined)).flat(),
  );
}

/** The limit as a heavy dashed line that steps where another one holds. */
function limitLine(places: readonly number[], values: readonly number[], limits: readonly number[], x: (place: number) => number, y: (value: number) => number, width: number, theme: FigureTheme): SceneElement {
  const points: [number, number][] = [];
  // The word stands at the end where the lots keep farther from the line.
  const room = (index: number): number => Math.abs(y(values[index]) - y(limits[index]));
  const atStart = room(0) > room(limits.length - 1);
  limits.forEach((limit, index) => {
    const before = index === 0 ? left : (x(places[index - 1]) + x(places[index])) / 2;
    const after = index === limits.length - 1 ? width - right : (x(places[index]) + x(places[index + 1])) / 2;
    points.push([before, y(limit)], [after, y(limit)]);
  });
  return element('g', {},
    element('path', { d: pathThrough(points), fill: 'none', stroke: theme.ink, 'stroke-width': 1.5, 'stroke-dasharray': '7 3' }),
    element('text', { x: atStart ? left : width - right, y: y(limits[atStart ? 0 : limits.length - 1]) - 5, 'font-size': 11, 'text-anchor': atStart ? 'start' : 'end', fill: theme.quiet }, 'limit'));
}
