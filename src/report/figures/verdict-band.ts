import type { SceneElement } from '../scene.ts';
import type { FigureTheme } from './theme.ts';
import type { VerdictMark } from './verdict-line.ts';
import { drawing, element } from '../scene.ts';
import { verdictLine } from './verdict-line.ts';

export interface VerdictCount extends VerdictMark {
  readonly count: number;
  readonly label: string;
}

const gap = 14;
const leastWidth = ({ count, label }: VerdictCount): number => Math.max(26 * String(count).length, 7.2 * label.length);

/** Width that every figure has its own room in, px. */
export function narrowestBand(counts: readonly VerdictCount[]): number {
  const shown = counts.filter(({ count }) => count > 0);
  return shown.reduce((sum, count) => sum + leastWidth(count), gap * Math.max(0, shown.length - 1));
}

/**
 * All joints of a cabin laid end to end, each verdict as long as its share in the language of verdicts,
 * with its count over it. A share too small for its figure is drawn as wide as the figure needs; px.
 */
export function verdictBand(counts: readonly VerdictCount[], size: { readonly width: number; readonly height: number }, theme: FigureTheme): SceneElement {
  const shown = counts.filter((count) => count.count > 0);
  const room = size.width - gap * Math.max(0, shown.length - 1);
  const least = shown.map(leastWidth);
  const widths = shares(shown.map(({ count }) => count), least, room);
  const line = size.height - 30;
  let left = 0;
  return drawing(size.width, size.height, counts.map(({ count, label }) => `${count} ${label}`).join(', '),
    shown.map((entry, index) => {
      const from = left;
      left += widths[index] + gap;
      return element('g', {},
        element('text', { x: from - 2, y: line - 14, 'font-size': 50, 'font-weight': 300, 'letter-spacing': -1, fill: theme.ink }, String(entry.count)),
        verdictLine([[from, line], [from + widths[index], line]], entry, theme, { scale: 1.5 }),
        element('text', { x: from, y: size.height - 5, 'font-size': 13.5, fill: theme.quiet }, entry.label));
    }));
}

/** Widths in proportion to the counts, none below its least, adding up to the room. */
function shares(counts: readonly number[], least: readonly number[], room: number): number[] {
  const fixed = new Set<number>();
  for (;;) {
    const free = room - [...fixed].reduce((sum, index) => sum + least[index], 0);
    const total = counts.reduce((sum, count, index) => sum + (fixed.has(index) ? 0 : count), 0);
    const widths = counts.map((count, index) => (fixed.has(index) || total === 0 ? least[index] : (count / total) * free));
    const small = widths.findIndex((width, index) => !fixed.has(index) && width < least[index]);
    if (small < 0) return widths;
    fixed.add(small);
  }
}
