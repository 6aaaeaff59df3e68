import type { Cabin } from '../cabin/cabin.ts';
import { defineAction } from './action.ts';
import { aName, aReference, clearable, needed, optional, references } from './argument.ts';
import { addItem, editItem, removeItem, setFields } from './edit.ts';
import { freeId, idOfName, idsOf } from './next-id.ts';
import { partName } from './wording.ts';

const run = needed(aReference('Run', 'run'));
const path = references('Parts along the run', 'part', { min: 2, max: 1000 });
const runName = (cabin: Cabin, id: string): string => cabin.runs?.find((one) => one.id === id)?.name ?? id;

export const addRun = defineAction({
  id: 'run.add', title: 'Watch drift along parts', keywords: ['run', 'path', 'drift', 'new'], group: 'Runs', context: 'part',
  arguments: { parts: needed(path), name: optional(aName('Name')) },
  label: ({ parts }, cabin) => `Watch the run from ${partName(cabin, parts[0] ?? '')} to ${partName(cabin, parts.at(-1) ?? '')}`,
  unless: (_, { parts = [] }) => (parts.length < 2 ? 'Select two parts or more, in the order of the run.' : undefined),
  edit: (cabin, { parts, name }) =>
    addItem(cabin, 'runs', { id: freeId(idOfName(name ?? 'run', 'run'), idsOf(cabin.runs)), ...(name === undefined ? {} : { name }), parts }),
});

export const setRun = defineAction({
  id: 'run.set', title: 'Edit run', keywords: ['path', 'drift', 'rename', 'parts'], group: 'Runs', context: 'run',
  arguments: { run, name: clearable(aName('Name')), parts: optional(path) },
  label: ({ run: id }, cabin) => `Change run ${runName(cabin, id)}`,
  edit: (cabin, { run: id, ...changes }) => editItem(cabin, 'runs', id, (of) => setFields(of, changes)),
  subject: (cabin, values) => cabin.runs?.find((one) => one.id === values.run),
});

export const removeRun = defineAction({
  id: 'run.remove', title: 'Remove run', keywords: ['path', 'drift', 'delete'], keys: ['Delete'], group: 'Runs', context: 'run',
  arguments: { run },
  label: ({ run: id }, cabin) => `Remove run ${runName(cabin, id)}`,
  edit: (cabin, { run: id }) => removeItem(cabin, 'runs', id),
});

export const runActions = [addRun, setRun, removeRun] as const;
