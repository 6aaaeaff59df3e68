import { line, scaleLinear } from 'd3';
import type { FigureTheme } from '../../src/report/figures/theme.ts';
import { drawing, element } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';

interface Curve {
  readonly startNm: number;
  readonly stepNm: number;
  readonly values: readonly number[];
}

/** Several spectra at a glance, on one pair of scales. `unit` stands at the upright one. */
export function spectraSketch(curves: readonly Curve[], size: { readonly width: number; readonly height: number }, unit: string, theme: FigureTheme, label: string): SceneElement {
  const { width, height } = size;
  const left = 40;
  const bottom = height - 20;
  const nm = curves.flatMap(({ startNm, stepNm, values }) => [startNm, startNm + stepNm * (values.length - 1)]);
  const x = scaleLinear([Math.min(...nm), Math.max(...nm)], [left, width - 8]);
  const top = Math.max(...curves.map(({ values }) => Math.max(...values)), 1e-6);
  const y = scaleLinear([0, top], [bottom, 18]).nice(3);
  const path = line<[number, number]>((point) => x(point[0]), (point) => y(point[1])).digits(2);
  const words = (at: readonly [number, number], text: string, anchor: string): SceneElement =>
    element('text', { x: at[0], y: at[1], 'font-size': 11, 'text-anchor': anchor, fill: theme.quiet }, text);
  return drawing(
    width, height, label,
    words([left, 11], unit, 'start'),
    y.ticks(3).flatMap((tick) => [
      element('line', { x1: left, y1: y(tick), x2: width - 8, y2: y(tick), stroke: tick === 0 ? theme.quiet : theme.faint, 'stroke-width': tick === 0 ? 1 : 0.75 }),
      words([left - 6, y(tick) + 4], String(Number(tick.toPrecision(3))), 'end'),
    ]),
    x.ticks(4).map((tick, i, every) => words([x(tick), height - 5], i === every.length - 1 ? `${tick} nm` : String(tick), i === every.length - 1 ? 'end' : 'middle')),
    curves.map(({ startNm, stepNm, values }) => element('path', {
      d: path(values.map((value, i): [number, number] => [startNm + i * stepNm, value])) ?? '', fill: 'none', stroke: theme.ink, 'stroke-width': 1.25, 'stroke-linejoin': 'round', 'stroke-opacity': curves.length > 6 ? 0.6 : 1,
    })),
  );
}
