import type { Cabin } from '../cabin/cabin.ts';
import { checkChanges } from '../cabin/check-changes.ts';
import { collectFaults, describeValue, nameHint } from '../cabin/schema/index.ts';
import type { Faults } from '../cabin/schema/index.ts';
import type { Issue, Outcome } from '../issue.ts';
import type { Argument, Arguments, ValuesOf } from './argument.ts';
import type { Edited } from './edit.ts';
import { isRefusal } from './edit.ts';
import { isNamed, namedItems } from './references.ts';
import type { ReferenceKind } from './references.ts';
import { contextMet, leadingPart } from './selection.ts';
import type { Context, Selection } from './selection.ts';

/** Where an action stands in menus. */
export const groups = ['Cabin', 'Parts', 'Outline', 'Sources', 'Specimens', 'Readings', 'Joints', 'Decisions', 'Zones', 'Lights', 'Runs', 'Registers', 'Plans', 'Rules'] as const;
export type Group = (typeof groups)[number];

/** One edit of the document, as menus, keys, the palette and forms see it. */
export interface Action<Values = Readonly<Record<string, unknown>>> {
  readonly id: string;
  /** As in a menu: `Remove part`. */
  readonly title: string;
  readonly keywords: readonly string[];
  /** Keys in the notation of the workbench: `Delete`, `F2`, `Mod+D`; they count where the context is selected. */
  readonly keys?: readonly string[];
  readonly group: Group;
  readonly context: Context;
  readonly arguments: Arguments;
  /** What undo and redo call this step. */
  label(values: Values, cabin: Cabin): string;
  /** `true`, or the reason why it cannot be done now. */
  enabled(cabin: Cabin, selection: Selection): true | string;
  /** The arguments that the selection answers. */
  fromSelection(selection: Selection): Readonly<Record<string, unknown>>;
  /** What the fields that are asked for hold now, for a form to begin with; only the arguments that name the item need be given. */
  current(cabin: Cabin, values: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>>;
  /** The cabin after the edit, or the issues that refuse it. The same object where nothing changes; unchanged items keep their identity. */
  run(cabin: Cabin, values: Values): Outcome<Cabin>;
}

export interface ActionDefinition<A extends Arguments> {
  readonly id: string;
  readonly title: string;
  readonly keywords?: readonly string[];
  readonly keys?: readonly string[];
  readonly group: Group;
  readonly context: Context;
  readonly arguments: A;
  readonly label: (values: ValuesOf<A>, cabin: Cabin) => string;
  readonly edit: (cabin: Cabin, values: ValuesOf<A>) => Edited<Cabin>;
  /** A further reason why it cannot be done, once the context is met. */
  readonly unless?: (cabin: Cabin, selection: Selection) => string | undefined;
  /** The object whose fields the arguments set. */
  readonly subject?: (cabin: Cabin, values: Partial<ValuesOf<A>>) => object | undefined;
}

/** Makes an action of its definition: arguments are read through their schemas before, the document is checked after. */
export function defineAction<const A extends Arguments>(definition: ActionDefinition<A>): Action<ValuesOf<A>> {
  const { id, title, keywords = [], keys, group, context } = definition;
  return {
    id, title, keywords, ...(keys === undefined ? {} : { keys }), group, context, arguments: definition.arguments,
    label: definition.label,
    enabled: (cabin, selection) => {
      const met = contextMet(context, selection);
      return met === true ? definition.unless?.(cabin, selection) ?? true : met;
    },
    fromSelection: (selection) => filled(definition.arguments, selection),
    current: (cabin, values) => currentValues(definition.arguments, definition.subject?.(cabin, values as Partial<ValuesOf<A>>)),
    run: (cabin, values) => {
      const read = readValues(definition.arguments, values, cabin);
      if (read.value === undefined) return { value: undefined, issues: read.issues };
      const edited = definition.edit(cabin, read.value as unknown as ValuesOf<A>);
      if (isRefusal(edited)) return { value: undefined, issues: [edited.refused] };
      return checkChanges(cabin, edited);
    },
  };
}

function currentValues(asked: Arguments, subject: object | undefined): Readonly<Record<string, unknown>> {
  if (subject === undefined) return {};
  return Object.fromEntries(Object.entries(subject).filter(([key, value]) => value !== undefined && Object.hasOwn(asked, key)));
}

/** What each kind of reference is in a selection. */
function selected(kind: ReferenceKind, selection: Selection): string | undefined {
  switch (kind) {
    case 'part': return leadingPart(selection);
    case 'user light': return selection.light;
    case 'master': case 'light': case 'file': case 'paired material': return undefined;
    default: return selection[kind];
  }
}

function filled(asked: Arguments, selection: Selection): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(asked).flatMap(([key, argument]): (readonly [string, unknown])[] => {
    const value = answer(key, argument, selection);
    return value === undefined ? [] : [[key, value]];
  }));
}

/** Only what must be named is taken from the selection, since an optional reference is a choice to be made. */
function answer(key: string, { kind, presence, refersTo }: Argument, selection: Selection): unknown {
  if (presence !== 'needed') return undefined;
  if (key === 'first') return selection.parts?.at(-2);
  if (key === 'second') return selection.parts?.length === 2 ? selection.parts[1] : undefined;
  if (key === 'point') return selection.point;
  if (key === 'record') return selection.record;
  if (key === 'readings' && kind === 'places') return selection.readings;
  if (kind === 'references' && refersTo === 'part') return selection.parts;
  return kind === 'reference' && refersTo !== undefined ? selected(refersTo, selection) : undefined;
}

/** The values of an action's arguments, each through its schema; all faults are listed. */
export function readValues(asked: Arguments, given: object, cabin: Cabin): Outcome<Readonly<Record<string, unknown>>> {
  const faults = collectFaults();
  const values: Record<string, unknown> = {};
  const raw = given as Readonly<Record<string, unknown>>;
  for (const key of Object.keys(raw)) {
    if (Object.hasOwn(asked, key) || raw[key] === undefined) continue;
    const hint = nameHint(key, Object.keys(asked));
    faults.add('unknown-field', { expected: 'an argument of the action', found: describeValue(key), ...(hint === undefined ? {} : { hint }) }, key);
  }
  for (const [key, argument] of Object.entries(asked)) {
    const value = Object.hasOwn(raw, key) ? raw[key] : undefined;
    if (value === undefined) {
      if (argument.presence === 'needed') faults.add('missing-field', { expected: argument.schema.expected, found: 'nothing' }, key);
      continue;
    }
    if (value === null && argument.presence === 'clearable') {
      values[key] = null;
      continue;
    }
    faults.path.push(key);
    const read = argument.schema.read(value, faults);
    faults.path.length = 0;
    if (read !== undefined) {
      values[key] = read;
      checkReference(key, argument, read, raw, cabin, faults);
    }
  }
  const issues: readonly Issue[] = faults.list();
  return { value: faults.errors() === 0 ? values : undefined, issues };
}

function checkReference(key: string, { refersTo }: Argument, value: unknown, raw: Readonly<Record<string, unknown>>, cabin: Cabin, faults: Faults): void {
  if (refersTo === undefined) return;
  const part = typeof raw['part'] === 'string' ? raw['part'] : undefined;
  for (const id of (Array.isArray(value) ? value : [value]) as readonly unknown[]) {
    if (typeof id !== 'string' || isNamed(cabin, refersTo, id, part)) continue;
    const hint = nameHint(id, namedItems(cabin, refersTo, part).map((item) => item.id));
    faults.add(`unknown-${refersTo.replace(' ', '-')}`, {
      expected: `the id of a ${refersTo}${refersTo === 'source' ? ' of the part' : ''}`, found: JSON.stringify(id), ...(hint === undefined ? {} : { hint }),
    }, key);
  }
}
