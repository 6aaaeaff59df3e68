import { element, pathThrough } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import { insetPolyline, sawtooth } from './polyline.ts';
import type { Point } from './polyline.ts';
import type { FigureTheme } from './theme.ts';

export interface VerdictMark {
  readonly verdict: 'holds' | 'open' | 'clashes';
  /** A clash with a decision in force: the saw is drawn thin. */
  readonly accepted?: boolean;
}

export interface LineSize {
  /** Scale of widths and teeth; 1 suits a map of some 800 px. */
  readonly scale?: number;
  /** Draw the light edge that keeps the line visible on samples. */
  readonly cased?: boolean;
}

const hueOf = (mark: VerdictMark, theme: FigureTheme): string =>
  mark.verdict === 'holds' ? theme.holds : mark.verdict === 'open' ? theme.open : theme.clashes;

/** Data and widths of the line of a verdict, px. */
export interface VerdictStroke {
  readonly d: string;
  readonly width: number;
  readonly casingWidth: number;
  readonly dashes: string | undefined;
  readonly join: 'miter' | 'round';
}

/** How a verdict is drawn along a way: holds thin, open dashed, clashes as a heavy saw, accepted as a thin one. */
export function verdictStroke(points: readonly Point[], mark: VerdictMark, scale = 1): VerdictStroke {
  const saw = mark.verdict === 'clashes';
  const line = saw ? sawtooth(insetPolyline(points, 2 * scale), 6.5 * scale, 3.25 * scale) : points;
  const width = (mark.verdict === 'holds' ? 1.25 : mark.verdict === 'open' ? 2 : mark.accepted ? 1.1 : 2.25) * scale;
  return { d: pathThrough(line), width, casingWidth: width + 2 * scale, dashes: mark.verdict === 'open' ? `${5 * scale} ${3.5 * scale}` : undefined, join: saw ? 'miter' : 'round' };
}

/**
 * The language of verdicts, told apart without hue: holds is a thin solid line, open is dashed,
 * clashes is a heavy saw; an accepted clash is the same saw, thin.
 */
export const verdictLine = (points: readonly Point[], mark: VerdictMark, theme: FigureTheme, size: LineSize = {}): SceneElement =>
  strokeLine(verdictStroke(points, mark, size.scale), mark, theme, size.cased);

/** The line of a verdict from its data, which may be that of several ways in one. */
export function strokeLine({ d, width, casingWidth, dashes, join }: VerdictStroke, mark: VerdictMark, theme: FigureTheme, cased = false): SceneElement {
  const stroke = { d, fill: 'none', 'stroke-linejoin': join, 'stroke-linecap': 'butt' } as const;
  return element(
    'g',
    { class: `verdict-line ${mark.verdict}` },
    cased ? element('path', { ...stroke, class: 'casing', stroke: theme.casing, 'stroke-width': casingWidth, 'stroke-linejoin': 'round' }) : undefined,
    element('path', { ...stroke, class: 'core', stroke: hueOf(mark, theme), 'stroke-width': width, 'stroke-dasharray': dashes }),
  );
}
