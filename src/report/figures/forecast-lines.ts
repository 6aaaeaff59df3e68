import { scaleLinear } from 'd3';
import { verdictLine } from './verdict-line.ts';
import type { FigureTheme } from './theme.ts';
import { drawing, element } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import type { JointForecast } from '../../series/index.ts';

/** A forecast as its row of the picture shows it. */
export interface ForecastRow {
  readonly forecast: JointForecast;
  readonly name: string;
  /** Colours of the two parts. */
  readonly colours: readonly [string | undefined, string | undefined];
}

const rowHeight = 44;

/**
 * Joints one under the other, over the days from the latest lot on: the line is the time within the limit, the bar the range in which the lines may come
 * over it, the heavy tick where they do. Beyond it the line is a sawtooth.
 */
export function forecastLines(rows: readonly ForecastRow[], ahead: number, width: number, theme: FigureTheme): SceneElement {
  const [left, right] = [4, width - 4];
  const farthest = Math.max(...rows.flatMap(({ forecast }) => [forecast.latest?.ahead ?? 0, (forecast.when?.ahead ?? 0) * 1.3]), 0.2 * ahead);
  const far = Math.min(ahead, farthest);
  const x = scaleLinear([0, far], [left, right]).clamp(true);
  const height = rows.length * rowHeight + 30;
  const ticks = x.ticks(Math.max(2, Math.floor(width / 140)));
  return drawing(width, height, undefined,
    ticks.map((tick) => [
      element('line', { x1: x(tick), y1: 0, x2: x(tick), y2: height - 26, stroke: theme.faint, 'stroke-width': 0.75 }),
      element('text', { x: x(tick), y: height - 8, 'font-size': 11, 'text-anchor': tick === 0 ? 'start' : x(tick) > width - 50 ? 'end' : 'middle', fill: theme.quiet }, tick === 0 ? 'latest lot' : `${tick} ${rows[0]?.forecast.unit === 'lot' ? 'lots' : 'days'} on`),
    ]).flat(),
    rows.map(({ forecast, name, colours }, index) => {
      const middle = index * rowHeight + 32;
      const when = forecast.state === 'over its limit' ? 0 : forecast.when?.ahead;
      const end = when === undefined ? right : x(when);
      const [from, to] = [forecast.earliest?.ahead, forecast.latest?.ahead];
      return element('g', {},
        colours.map((css, side) => element('rect', { class: 'sample', x: left + 13 * side, y: middle - 26, width: 13, height: 14, fill: css ?? theme.table, stroke: theme.core, 'stroke-width': 0.5 })),
        element('text', { x: left + 34, y: middle - 14, 'font-size': 13, fill: theme.ink, 'font-weight': index === 0 && when !== undefined ? 600 : undefined }, short(name, (width - 40) / 6.4)),
        from === undefined ? undefined : element('rect', { x: x(from), y: middle - 6, width: Math.max(2, x(to ?? far) - x(from)), height: 12, fill: theme.faint }),
        end > left ? verdictLine([[left, middle], [end, middle]], { verdict: 'holds' }, theme) : undefined,
        when === undefined || right - end < 12 ? undefined : verdictLine([[end, middle], [right, middle]], { verdict: 'clashes' }, theme),
        when === undefined ? undefined : element('line', { x1: end, y1: middle - 9, x2: end, y2: middle + 9, stroke: theme.ink, 'stroke-width': 3 }),
      );
    }),
  );
}

const short = (text: string, most: number): string => (text.length <= most ? text : `${text.slice(0, Math.max(1, Math.floor(most) - 1))}…`);
