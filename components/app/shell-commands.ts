import { actionCommands, commandsOfSelection } from '../model/commands.ts';
import type { Command, DeskCall } from '../model/commands.ts';
import type { OpenCabin } from '../controllers/open-cabin.ts';
import { registeredViews } from '../views/view-registry.ts';

const cabinPlace = { view: 'cabin', title: 'Cabin', about: 'map and joint strips' } as const;

/** Everything there is to do, for the palette: places, what the shell does itself, edits. What cannot be done now stays in the list and tells why. */
export function shellCommands(open: OpenCabin | undefined): readonly Command[] {
  if (open === undefined) return deskCommands(open);
  return [...[cabinPlace, ...registeredViews].map(placeCommand), ...deskCommands(open), ...actionCommands(open.cabin, open.selection, open.locked)];
}

/** What can be done with what is selected, for its menu. */
export const menuCommands = (open: OpenCabin): readonly Command[] => commandsOfSelection(actionCommands(open.cabin, open.selection, open.locked));

const placeCommand = ({ view, title, about }: Pick<(typeof registeredViews)[number], 'view' | 'title' | 'about'>): Command =>
  ({ id: `place.${view}`, title: `Go to ${title}`, group: 'Places', keywords: [about], enabled: true, run: { kind: 'place', view } });

function deskCommands(open: OpenCabin | undefined): readonly Command[] {
  const there = open === undefined ? 'No cabin is open' : true;
  return [
    deskCommand('open', 'Open a cabin file', 'Mod+O', true, 'load'),
    deskCommand('new', 'Make a new cabin', undefined, true, 'start', 'empty'),
    deskCommand('save', 'Save', 'Mod+S', there, 'write', 'keep'),
    deskCommand('save as', 'Save under another name', 'Mod+Shift+S', there, 'copy', 'export'),
    deskCommand('undo', open?.undo === undefined ? 'Undo' : `Undo: ${open.undo}`, 'Mod+Z', open?.undo === undefined ? 'Nothing to undo' : true, 'back'),
    deskCommand('redo', open?.redo === undefined ? 'Redo' : `Redo: ${open.redo}`, 'Mod+Shift+Z', open?.redo === undefined ? 'Nothing to redo' : true, 'again'),
    deskCommand('close', 'Close the cabin', undefined, there),
    deskCommand('ink', 'Change ink and paper', undefined, true, 'dark', 'light', 'night'),
    deskCommand('help', 'Help: what to do here, words and keys', 'F1', true, 'glossary', 'legend', 'meaning'),
  ];
}

const deskCommand = (call: DeskCall, title: string, keys: string | undefined, enabled: true | string, ...keywords: string[]): Command =>
  ({ id: `desk.${call}`, title, group: 'File', keywords, ...(keys === undefined ? {} : { keys }), enabled, run: { kind: 'desk', call } });
