import { verdictLine } from '../../../src/report/figures/verdict-line.ts';
import type { FigureTheme } from '../../../src/report/figures/theme.ts';
import { drawing, element } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import type { BuiltSet } from '../../../src/series/index.ts';

export interface BuildLinksInput {
  readonly parts: readonly string[];
  /** Lots of each part in order of production, with their colours. */
  readonly lots: readonly (readonly { readonly id: string; readonly css: string | undefined }[])[];
  readonly sets: readonly BuiltSet[];
}

/** A set that is expected to clash this often is drawn as one that does. */
const mostly = 0.5;
const step = 34;

/** Parts as columns of samples in order of production, each set a line through the lots that it takes: thin where it holds, dashed where that is not certain, a saw where it clashes. */
export function buildLinks({ parts, lots, sets }: BuildLinksInput, width: number, theme: FigureTheme): SceneElement {
  const most = Math.max(...lots.map((own) => own.length));
  const height = 30 + most * step;
  const column = Math.min(30, Math.max(16, width / (3 * parts.length)));
  const x = (part: number): number => (parts.length === 1 ? width / 2 : column / 2 + 44 + (part * (width - column - 96)) / (parts.length - 1));
  const y = (lot: number): number => 30 + lot * step + step / 2 - 4;
  const line = (set: BuiltSet, part: number): SceneElement | undefined => {
    const [from, to] = [part, part + 1].map((at) => lots[at]!.findIndex(({ id }) => id === set.lots[at]));
    if (from === undefined || to === undefined || from < 0 || to < 0) return undefined;
    const verdict = set.clashes > mostly ? 'clashes' : set.clashes > 0.005 ? 'open' : 'holds';
    return verdictLine([[x(part) + column / 2, y(from)], [x(part + 1) - column / 2, y(to)]], { verdict }, theme);
  };
  return drawing(width, height, undefined,
    parts.map((name, part) => element('text', { x: part === 0 ? 0 : part === parts.length - 1 ? width : x(part), y: 13, 'font-size': 12, 'font-weight': 600, 'text-anchor': part === 0 ? 'start' : part === parts.length - 1 ? 'end' : 'middle', fill: theme.ink }, short(name, width / parts.length / 7))),
    sets.flatMap((set) => parts.slice(1).map((_, part) => line(set, part))).filter((each) => each !== undefined),
    lots.flatMap((own, part) => own.flatMap(({ id, css }, lot) => [
      element('rect', { class: 'sample', x: x(part) - column / 2, y: y(lot) - 13, width: column, height: 26, fill: css ?? theme.table, stroke: theme.core, 'stroke-width': 0.75 }),
      ...(part === 0 || part === parts.length - 1 ? [element('text', { x: part === 0 ? x(part) - column / 2 - 6 : x(part) + column / 2 + 6, y: y(lot) + 4, 'font-size': 11, 'text-anchor': part === 0 ? 'end' : 'start', fill: theme.quiet }, short(id, 7))] : []),
    ])),
  );
}

const short = (text: string, most: number): string => (text.length <= most ? text : `${text.slice(0, Math.max(1, Math.floor(most) - 1))}…`);
