import { drawing } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';
import type { FigureTheme } from '../../src/report/figures/theme.ts';
import { verdictLine } from '../../src/report/figures/verdict-line.ts';
import type { VerdictMark } from '../../src/report/figures/verdict-line.ts';

export interface VerdictCounts {
  readonly clashes: number;
  readonly accepted: number;
  readonly open: number;
  readonly holds: number;
}

/** Shortest piece that still shows its kind of line, px. */
const least = 9;

/** How some joints stand, as one line in the language of verdicts: clashes first, each kind as long as its share. Decoration beside its numbers. */
export function verdictShares(counts: VerdictCounts, width: number, height: number, theme: FigureTheme): SceneElement {
  const marks: readonly (readonly [VerdictMark, number])[] = [
    [{ verdict: 'clashes' }, counts.clashes], [{ verdict: 'clashes', accepted: true }, counts.accepted], [{ verdict: 'open' }, counts.open], [{ verdict: 'holds' }, counts.holds],
  ];
  const there = marks.filter(([, count]) => count > 0);
  const all = there.reduce((sum, [, count]) => sum + count, 0);
  const free = width - 2 - 3 * Math.max(0, there.length - 1) - least * there.length;
  let x = 1;
  return drawing(width, height, undefined, there.map(([mark, count]) => {
    const length = least + (free * count) / all;
    const line = verdictLine([[x, height / 2], [x + length, height / 2]], mark, theme, { scale: 0.85 });
    x += length + 3;
    return line;
  }));
}
