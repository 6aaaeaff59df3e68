import type { EditOptions, EditResult, Selection } from '../../src/actions/index.ts';
import { tell } from './tell.ts';

/** An edit that an element asks for; the shell does it at once and puts the result in. */
export interface WantedEdit {
  readonly action: string;
  readonly values: Readonly<Record<string, unknown>>;
  readonly options: EditOptions;
  result?: EditResult;
}

/** A form for an action: the user fills in what the preset leaves open. */
export interface WantedForm {
  readonly action: string;
  readonly preset: Readonly<Record<string, unknown>>;
  /** What is asked where that is less than the preset leaves open: the rest of the preset is not shown as fields, `about` says it in words. */
  readonly asks?: readonly string[];
  readonly about?: string;
  /** Called with the result when the edit was done. */
  readonly done?: (result: EditResult) => void;
}

/** A menu of actions at a place of the window, for what is selected. */
export interface WantedMenu {
  readonly x: number;
  readonly y: number;
  readonly selection: Selection;
}

export const editEvent = 'adjoin-edit';
export const formEvent = 'adjoin-form';
export const menuEvent = 'adjoin-menu';
export const selectEvent = 'adjoin-select';

/** Does an action of the registry from anywhere under the shell. Edits in a row with one key are one step of undo. */
export function doAction(from: EventTarget, action: string, values: Readonly<Record<string, unknown>>, options: EditOptions = {}): EditResult | undefined {
  const wanted: WantedEdit = { action, values, options };
  tell(from, editEvent, wanted);
  return wanted.result;
}

/** Opens the form of an action; what is selected fills in what it can. */
export const askAction = (from: EventTarget, action: string, preset: WantedForm['preset'] = {}, rest: Omit<WantedForm, 'action' | 'preset'> = {}): boolean =>
  tell(from, formEvent, { action, preset, ...rest } satisfies WantedForm);

export const askMenu = (from: EventTarget, menu: WantedMenu): boolean => tell(from, menuEvent, menu);

export const askSelection = (from: EventTarget, selection: Selection): boolean => tell(from, selectEvent, selection);
