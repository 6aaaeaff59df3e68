import { scaleLinear } from 'd3';
import { element, round } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import type { FigureTheme } from './theme.ts';
import { verdictLine } from './verdict-line.ts';
import type { VerdictMark } from './verdict-line.ts';

export interface LimitScaleInput extends VerdictMark {
  /** value / limit, 1 at the limit; absent where there is no value. */
  readonly limitUse: number | undefined;
  /** Standard uncertainty in the same units: u / limit. */
  readonly uncertaintyUse?: number;
  /** The value is shown but not counted: a dotted line in quiet ink. */
  readonly indicative?: boolean;
  /** Limit use to point at beside the value, for example under the light that was chosen. */
  readonly marker?: number;
}

export interface LimitScaleSize {
  readonly width: number;
  readonly height: number;
  /** Room left and right of the scale, px. */
  readonly padding?: number;
  /** Limit use at the right end: 2 is 200 %. */
  readonly maximum?: number;
  /** Print 0, 100 % and the end under the scale. */
  readonly labelled?: boolean;
}

/** Maps limit use to px along a scale; values beyond the end stay at the end. */
export const limitScaleX = ({ width, padding = 0, maximum = 2 }: Omit<LimitScaleSize, 'height'>): ((use: number) => number) =>
  scaleLinear([0, maximum], [padding, width - padding]).clamp(true);

/**
 * Limit use along a thin scale: the value as a line in the language of verdicts from 0, its standard
 * uncertainty as a bar about the end, the limit as a tick. A value past the end runs into an arrow.
 */
export function limitScale(input: LimitScaleInput, size: LimitScaleSize, theme: FigureTheme): SceneElement {
  const x = limitScaleX(size);
  const maximum = size.maximum ?? 2;
  const labelled = size.labelled ?? false;
  const height = size.height - (labelled ? 14 : 0);
  const middle = height / 2;
  const use = input.limitUse;
  const uncertainty = input.uncertaintyUse ?? 0;
  const label = (at: number, text: string, anchor: string): SceneElement =>
    element('text', { x: x(at), y: size.height - 2, 'font-size': 11, 'text-anchor': anchor, fill: theme.quiet }, text);
  return element(
    'g',
    { class: 'limit-scale' },
    element('line', { x1: x(0), y1: middle, x2: x(maximum), y2: middle, stroke: theme.faint, 'stroke-width': 1, class: 'rest' }),
    element('line', { x1: x(0), y1: middle - 3, x2: x(0), y2: middle + 3, stroke: theme.faint, 'stroke-width': 1, class: 'rest' }),
    use !== undefined && uncertainty > 0
      ? element('rect', {
          class: 'uncertainty',
          x: x(Math.max(0, use - uncertainty)),
          y: middle - height * 0.3,
          width: Math.max(1, x(use + uncertainty) - x(Math.max(0, use - uncertainty))),
          height: height * 0.6,
          fill: theme.faint,
        })
      : undefined,
    use !== undefined && x(use) > x(0)
      ? input.indicative
        ? element('line', {
            class: 'indicative', x1: x(0), y1: middle, x2: x(use), y2: middle, stroke: theme.quiet, 'stroke-width': 1.25, 'stroke-dasharray': '1 2.5',
          })
        : verdictLine([[x(0), middle], [x(use), middle]], input, theme, { scale: 1 })
      : undefined,
    use !== undefined
      ? element('line', {
          class: 'value', x1: x(use), y1: middle - height * 0.3, x2: x(use), y2: middle + height * 0.3, stroke: theme.ink, 'stroke-width': 1.5,
        })
      : undefined,
    use !== undefined && use > maximum
      ? element('path', { class: 'beyond', d: `M${round(x(maximum) - 7)} ${round(middle - 5)}l7 5l-7 5z`, fill: theme.clashes })
      : undefined,
    input.marker === undefined
      ? undefined
      : element('path', {
          class: 'marker', d: `M${round(x(input.marker))} ${round(middle - 4)}l-3.5 -5h7z`, fill: theme.paper, stroke: theme.ink, 'stroke-width': 1,
        }),
    element('line', { class: 'limit', x1: x(1), y1: 0, x2: x(1), y2: height, stroke: theme.ink, 'stroke-width': 1 }),
    labelled ? [label(0, '0', 'start'), label(1, 'limit', 'middle'), label(maximum, `${maximum * 100} %`, 'end')] : undefined,
  );
}
