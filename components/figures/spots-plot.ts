import { scaleLinear } from 'd3';
import type { FigureTheme } from '../../src/report/figures/theme.ts';
import { drawing, element, pathThrough } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';
import type { SpotColour } from '../model/spot-colours.ts';

export interface SpotsSide {
  readonly name: string;
  readonly spots: readonly SpotColour[];
}

type Axis = 0 | 1 | 2;
type Scale = (value: number) => number;

/** Radius in standard deviations of the ellipse that holds 95 % of a normal spread in two dimensions. */
const ellipseRadius = Math.sqrt(-2 * Math.log(0.05));

const meanOf = (spots: readonly SpotColour[], axis: Axis): number => spots.reduce((sum, { lab }) => sum + lab[axis], 0) / spots.length;

/** Outline of the 95 % ellipse of the spots' own spread in a* and b*; nothing below three spots. */
export function spreadEllipse(spots: readonly SpotColour[]): [a: number, b: number][] {
  if (spots.length < 3) return [];
  const a = meanOf(spots, 1);
  const b = meanOf(spots, 2);
  const covariance = (p: Axis, q: Axis): number =>
    spots.reduce((sum, { lab }) => sum + (lab[p] - (p === 1 ? a : b)) * (lab[q] - (q === 1 ? a : b)), 0) / (spots.length - 1);
  const [aa, ab, bb] = [covariance(1, 1), covariance(1, 2), covariance(2, 2)];
  const first = Math.sqrt(aa);
  const cross = first > 0 ? ab / first : 0;
  const second = Math.sqrt(Math.max(0, bb - cross * cross));
  return Array.from({ length: 48 }, (_, i) => {
    const angle = (i * Math.PI) / 24;
    const [u, v] = [ellipseRadius * Math.cos(angle), ellipseRadius * Math.sin(angle)];
    return [a + first * u, b + cross * u + second * v];
  });
}

/**
 * Every spot of both sides in a*, b* on equal axes, and in L* on an upright scale of the same measure beside it.
 * The standard's spots are filled, the trial's hollow; crosses are the means.
 */
export function spotsPlot(
  standard: SpotsSide, trial: SpotsSide, size: { readonly width: number; readonly height: number }, theme: FigureTheme,
): SceneElement {
  const { width, height } = size;
  const sides = [standard, trial];
  const every = sides.flatMap((side) => side.spots);
  const label = `Readings of ${standard.name} and ${trial.name} by spot`;
  if (every.length === 0) return drawing(width, height, label, words(width / 2, height / 2, 'no readings under this light', 'middle', theme));
  const around = [...every.map(({ lab }): [number, number] => [lab[1], lab[2]]), ...sides.flatMap((side) => spreadEllipse(side.spots))];
  const extent = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];
  const [aLow, aHigh] = extent(around.map(([a]) => a));
  const [bLow, bHigh] = extent(around.map(([, b]) => b));
  const [LLow, LHigh] = extent(every.map(({ lab }) => lab[0]));
  const span = Math.max(0.4, aHigh - aLow, bHigh - bLow, LHigh - LLow) * 1.2;
  const edge = Math.min(height - 84, width - 130);
  const across = (low: number, high: number, from: number, to: number): Scale =>
    scaleLinear([(low + high - span) / 2, (low + high + span) / 2], [from, to]);
  const x = across(aLow, aHigh, 44, 44 + edge);
  const y = across(bLow, bHigh, 28 + edge, 28);
  const l = across(LLow, LHigh, 28 + edge, 28);
  const lx = 44 + edge + 56;
  return drawing(
    width,
    height,
    label,
    ticks(x).map((tick) => [rule(x(tick), 28, x(tick), 28 + edge, theme), words(x(tick), 28 + edge + 14, short(tick), 'middle', theme)]).flat(),
    ticks(y).map((tick) => [rule(44, y(tick), 44 + edge, y(tick), theme), words(38, y(tick) + 4, short(tick), 'end', theme)]).flat(),
    ticks(l).map((tick) => [rule(lx - 8, l(tick), lx + 24, l(tick), theme), words(lx - 12, l(tick) + 4, short(tick), 'end', theme)]).flat(),
    words(44 + edge, 28 + edge + 28, 'a*', 'end', theme),
    words(44, 18, 'b*', 'start', theme),
    words(lx + 8, 18, 'L*', 'middle', theme),
    sides.map((side, i) => [
      side.spots.length > 2
        ? element('path', {
            d: pathThrough(spreadEllipse(side.spots).map(([a, b]) => [x(a), y(b)]), true), fill: 'none', stroke: theme.quiet, 'stroke-width': 1,
            'stroke-dasharray': i === 1 ? '3 2' : undefined,
          })
        : undefined,
      side.spots.map(({ lab, name }) => [
        mark(x(lab[1]), y(lab[2]), i, theme, name), mark(lx + (i === 0 ? 2 : 14), l(lab[0]), i, theme, name),
      ]).flat(),
      side.spots.length > 0 ? cross(x(meanOf(side.spots, 1)), y(meanOf(side.spots, 2)), theme) : undefined,
      side.spots.length > 0 ? cross(lx + (i === 0 ? 2 : 14), l(meanOf(side.spots, 0)), theme) : undefined,
    ].flat().filter((part) => part !== undefined)).flat(),
    legend(sides, height - 6, theme),
  );
}

const ticks = (scale: Scale): number[] => (scale as ReturnType<typeof scaleLinear<number>>).ticks(5);
const short = (tick: number): string => (tick < 0 ? `\u2212${Math.abs(tick)}` : String(tick));

const rule = (x1: number, y1: number, x2: number, y2: number, theme: FigureTheme): SceneElement =>
  element('line', { x1, y1, x2, y2, stroke: theme.faint, 'stroke-width': 0.75 });

const words = (x: number, y: number, text: string, anchor: string, theme: FigureTheme): SceneElement =>
  element('text', { x, y, 'font-size': 11, 'text-anchor': anchor, fill: theme.quiet }, text);

const mark = (cx: number, cy: number, side: number, theme: FigureTheme, name = ''): SceneElement =>
  element(
    'circle',
    { cx, cy, r: 3.25, fill: side === 0 ? theme.ink : theme.paper, stroke: theme.ink, 'stroke-width': 1.25 },
    name === '' ? undefined : element('title', {}, name),
  );

const cross = (x: number, y: number, theme: FigureTheme): SceneElement =>
  element('path', { d: `M${x - 6} ${y}h12M${x} ${y - 6}v12`, stroke: theme.ink, 'stroke-width': 1, fill: 'none' });

function legend(sides: readonly SpotsSide[], y: number, theme: FigureTheme): SceneElement[] {
  const counts = sides.map((side) => `${side.spots.length} ${side.spots.length === 1 ? 'spot' : 'spots'}`);
  return [
    mark(48, y - 4, 0, theme), words(58, y, `standard, ${counts[0]}`, 'start', theme),
    mark(172, y - 4, 1, theme), words(182, y, `trial, ${counts[1]}`, 'start', theme),
  ];
}
