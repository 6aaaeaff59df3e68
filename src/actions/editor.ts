import type { Cabin } from '../cabin/cabin.ts';
import { checkChanges } from '../cabin/check-changes.ts';
import type { Issue, Outcome } from '../issue.ts';
import type { Action } from './action.ts';
import { added } from './added.ts';
import type { History } from './history.ts';
import { record, redo, seal, startHistory, undo } from './history.ts';
import type { Selection } from './selection.ts';
import { withinCabin } from './selection.ts';

/** An open document: its history, what is selected in it, and the state it was last saved in. Selecting is no edit. */
export interface Editor {
  readonly history: History<Cabin>;
  readonly selection: Selection;
  /** The document as it lies in the user's file; undefined where it never was in one. */
  readonly saved: Cabin | undefined;
}

/** What became of an edit: the editor, unchanged where it was refused, and what is to be said. */
export interface EditResult {
  readonly editor: Editor;
  readonly issues: readonly Issue[];
  readonly done: boolean;
  /** What undo will call it; undefined where nothing changed. */
  readonly label: string | undefined;
}

export interface EditOptions {
  /** Edits in a row with the same key are one step of undo: a drag, typing in one field. */
  readonly key?: string;
}

/** Begins with a document that came through `restoreCabin()`. */
export const openEditor = (cabin: Cabin, saved: Cabin | undefined = cabin): Editor => ({ history: startHistory(cabin), selection: {}, saved });

export const isUnsaved = ({ history, saved }: Editor): boolean => history.present !== saved;
export const markSaved = (editor: Editor): Editor => ({ ...editor, saved: editor.history.present });
export const sealStep = (editor: Editor): Editor => withHistory(editor, seal(editor.history));

/** Selects; what the cabin does not have is left out. The history stays as it is. */
export const select = (editor: Editor, selection: Selection): Editor => ({ ...editor, selection: withinCabin(editor.history.present, selection) });

export const undoEdit = (editor: Editor): Editor => withHistory(editor, undo(editor.history));
export const redoEdit = (editor: Editor): Editor => withHistory(editor, redo(editor.history));

function withHistory(editor: Editor, history: History<Cabin>): Editor {
  if (history === editor.history) return editor;
  const moved = history.present !== editor.history.present;
  return { ...editor, history, selection: moved ? withinCabin(history.present, editor.selection) : editor.selection };
}

/** Does one action. Where it adds something, that is selected. */
export function perform<Values>(editor: Editor, action: Action<Values>, values: Values, options: EditOptions = {}): EditResult {
  const before = editor.history.present;
  const outcome = action.run(before, values);
  return settle(editor, outcome, outcome.value === undefined ? '' : action.label(values, before), options);
}

export interface CommitOptions extends EditOptions {
  /** The document that the cabin was checked against already; it is not checked again where that is the present one. */
  readonly checkedAgainst?: Cabin;
}

/** Takes a cabin that was made from the present one in another way, as by an import or a plan, as one step. */
export const commit = (editor: Editor, cabin: Cabin, label: string, { checkedAgainst, ...options }: CommitOptions = {}): EditResult =>
  settle(editor, checkedAgainst === editor.history.present ? { value: cabin, issues: [] } : checkChanges(editor.history.present, cabin), label, options);

function settle(editor: Editor, { value, issues }: Outcome<Cabin>, label: string, { key }: EditOptions): EditResult {
  if (value === undefined) return { editor, issues, done: false, label: undefined };
  const before = editor.history.present;
  if (value === before) return { editor, issues, done: true, label: undefined };
  const history = record(editor.history, value, { label, ...(key === undefined ? {} : { key }) });
  return { editor: { ...editor, history, selection: withinCabin(value, added(before, value) ?? editor.selection) }, issues, done: true, label };
}
