import { actions } from '../../src/actions/index.ts';
import type { Selection } from '../../src/actions/index.ts';
import { contexts } from '../../src/actions/selection.ts';
import type { Context } from '../../src/actions/selection.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { View } from '../controllers/route.ts';

/** Something that can be done from the palette, a menu or by keys. */
export interface Command {
  readonly id: string;
  readonly title: string;
  readonly group: string;
  readonly keywords: readonly string[];
  readonly keys?: string;
  /** `true`, or why it cannot be done now. */
  readonly enabled: true | string;
  /** What an edit needs to be selected. */
  readonly context?: Context;
  readonly run: { readonly kind: 'action'; readonly action: string } | { readonly kind: 'place'; readonly view: View } | { readonly kind: 'desk'; readonly call: DeskCall };
}

/** What the shell itself does. */
export const deskCalls = ['open', 'new', 'save', 'save as', 'undo', 'redo', 'close', 'palette', 'ink', 'help'] as const;
export type DeskCall = (typeof deskCalls)[number];

/** The edits of the registry as commands, in the order of menus. */
export const actionCommands = (cabin: Cabin, selection: Selection, locked: boolean): readonly Command[] => actions.map((action) => ({
  id: action.id, title: action.title, group: action.group, keywords: action.keywords, ...(action.keys?.[0] === undefined ? {} : { keys: action.keys[0] }),
  enabled: locked ? 'The cabin is open in another tab' : action.enabled(cabin, selection), context: action.context,
  run: { kind: 'action', action: action.id },
}));

/** How far in what a command needs lies: a specimen further than its source, that further than its part. */
const depth = ({ context = 'none' }: Command): number => contexts.indexOf(context);

/** Of commands that can be done, that of the innermost thing: a key means what has the focus and not what holds it. */
export const innermost = (commands: readonly Command[]): Command | undefined =>
  commands.filter(({ enabled }) => enabled === true).reduce<Command | undefined>((best, one) => (best === undefined || depth(one) > depth(best) ? one : best), undefined);

/** What can be done with the innermost thing that is selected; with parts also what needs two of them or a point of an outline. */
export function commandsOfSelection(commands: readonly Command[]): readonly Command[] {
  const can = commands.filter((one) => one.enabled === true && depth(one) > 0);
  const deepest = Math.max(0, ...can.map(depth));
  const outermost = deepest <= contexts.indexOf('point') ? 1 : deepest;
  return can.filter((one) => depth(one) >= outermost);
}

/**
 * Commands that fit what was typed, the best first: every word must be found in the title, the group or the keywords; words at the start
 * of the title count most. Commands that cannot be done now come last.
 */
export function matchingCommands(commands: readonly Command[], typed: string): readonly Command[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const scored = commands.flatMap((command, place) => {
    const score = scoreOf(command, words);
    return score === undefined ? [] : [{ command, score: score - (command.enabled === true ? 0 : 100), place }];
  });
  return scored.sort((first, second) => second.score - first.score || first.place - second.place).map(({ command }) => command);
}

function scoreOf({ title, group, keywords }: Command, words: readonly string[]): number | undefined {
  const name = title.toLowerCase();
  let score = 0;
  for (const word of words) {
    if (name.startsWith(word)) score += 8;
    else if (name.includes(` ${word}`)) score += 6;
    else if (keywords.some((keyword) => keyword.toLowerCase().startsWith(word))) score += 4;
    else if (name.includes(word)) score += 3;
    else if (group.toLowerCase().startsWith(word) || keywords.some((keyword) => keyword.toLowerCase().includes(word))) score += 2;
    else return undefined;
  }
  return score;
}
