import { verdictLine } from './verdict-line.ts';
import { nameLines } from './name-lines.ts';
import type { FigureTheme } from './theme.ts';
import { drawing, element } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import type { BuiltSet } from '../../series/index.ts';

export interface BuildLinksInput {
  readonly parts: readonly string[];
  /** Lots of each part in order of production, with their colours. */
  readonly lots: readonly (readonly { readonly id: string; readonly css: string | undefined }[])[];
  /** Places of the two parts of each joint. */
  readonly sides: readonly (readonly [number, number])[];
  readonly sets: readonly BuiltSet[];
}

/** A joint that is expected to clash this often is drawn as one that does. */
const mostly = 0.5;
/** Height of a lot, px: less where there are many, so that a picture fits on a page. */
const [tallest, lowest, picture] = [34, 7, 640];
/** Height of a line of a name, px. */
const lineHeight = 15;

/** Parts as columns of samples in order of production, each joint of each set a line between the lots that it takes: thin where it holds, dashed where that is not certain, a saw where it clashes. */
export function buildLinks({ parts, lots, sides, sets }: BuildLinksInput, width: number, theme: FigureTheme): SceneElement {
  const most = Math.max(...lots.map((own) => own.length));
  const step = Math.max(lowest, Math.min(tallest, picture / most));
  const half = Math.min(13, 0.38 * step);
  const each = Math.ceil(13 / step);
  const names = parts.map((name) => nameLines(name, width / parts.length / 7));
  const head = lineHeight * Math.max(1, ...names.map((lines) => lines.length)) + 11;
  const height = head + 4 + most * step;
  const column = Math.min(30, Math.max(16, width / (3 * parts.length)));
  const x = (part: number): number => (parts.length === 1 ? width / 2 : column / 2 + 44 + (part * (width - column - 96)) / (parts.length - 1));
  const y = (lot: number): number => head + lot * step + step / 2;
  const line = (set: BuiltSet, joint: number): SceneElement | undefined => {
    const [first, second] = [...sides[joint]].sort((p, q) => p - q);
    const [from, to] = [first, second].map((at) => lots[at].findIndex(({ id }) => id === set.lots[at]));
    if (from < 0 || to < 0) return undefined;
    const clashes = set.atJoints[joint];
    const verdict = clashes > mostly ? 'clashes' : clashes > 0.005 ? 'open' : 'holds';
    return verdictLine([[x(first) + column / 2, y(from)], [x(second) - column / 2, y(to)]], { verdict }, theme);
  };
  return drawing(width, height, undefined,
    names.flatMap((lines, part) => lines.map((line, at) => element('text', { x: part === 0 ? 0 : part === parts.length - 1 ? width : x(part), y: 13 + lineHeight * at, 'font-size': 12, 'font-weight': 600, 'text-anchor': part === 0 ? 'start' : part === parts.length - 1 ? 'end' : 'middle', fill: theme.ink }, line))),
    sets.flatMap((set) => sides.map((_, joint) => line(set, joint))).filter((each) => each !== undefined),
    lots.flatMap((own, part) => own.flatMap(({ id, css }, lot) => [
      element('rect', { class: 'sample', x: x(part) - column / 2, y: y(lot) - half, width: column, height: 2 * half, fill: css ?? theme.table, stroke: theme.core, 'stroke-width': 0.75 }),
      ...((part === 0 || part === parts.length - 1) && (own.length - 1 - lot) % each === 0 ? [element('text', { x: part === 0 ? x(part) - column / 2 - 6 : x(part) + column / 2 + 6, y: y(lot) + 4, 'font-size': 11, 'text-anchor': part === 0 ? 'end' : 'start', fill: theme.quiet }, short(id, 7))] : []),
    ])),
  );
}

const short = (text: string, most: number): string => (text.length <= most ? text : `${text.slice(0, Math.max(1, Math.floor(most) - 1))}…`);
