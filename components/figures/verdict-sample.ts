import { verdictLine } from '../../src/report/figures/verdict-line.ts';
import type { VerdictMark } from '../../src/report/figures/verdict-line.ts';
import type { FigureTheme } from '../../src/report/figures/theme.ts';
import { drawing } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';

/** A short piece of line in the language of verdicts, for legends and buttons. */
export const verdictSample = (mark: VerdictMark, width: number, height: number, theme: FigureTheme, cased = false): SceneElement =>
  drawing(width, height, undefined, verdictLine([[1, height / 2], [width - 1, height / 2]], mark, theme, { cased }));
