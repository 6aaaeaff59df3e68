import type { Cabin } from '../cabin/cabin.ts';
import { lightNames } from '../colour/lights.ts';
import { defineAction } from './action.ts';
import { aName, aNumber, aReference, needed, numbers, optional } from './argument.ts';
import { addItem, editItem, removeItem, setFields } from './edit.ts';
import { freeId, idOfName, idsOf } from './next-id.ts';
import { changedFields } from './wording.ts';

const startNm = aNumber('First wavelength', { min: 200, max: 500, unit: 'nm' });
const stepNm = aNumber('Step of wavelength', { above: 0, max: 100, unit: 'nm' });
const power = numbers('Relative power', { min: 0, max: 1e12 }, 2000);
const light = needed(aReference('Light', 'user light'));
const lightName = (cabin: Cabin, id: string): string => cabin.lights?.find((one) => one.id === id)?.name ?? id;

export const addLight = defineAction({
  id: 'light.add', title: 'Add own light', keywords: ['spectral power distribution', 'SPD', 'lamp', 'ambient', 'new'], group: 'Lights', context: 'none',
  arguments: { name: needed(aName('Name')), startNm: needed(startNm), stepNm: needed(stepNm), values: needed(power) },
  label: ({ name }) => `Add light ${name}`,
  edit: (cabin, { name, startNm: start, stepNm: step, values }) =>
    addItem(cabin, 'lights', { id: freeId(idOfName(name, 'light'), [...lightNames, ...idsOf(cabin.lights)]), name, startNm: start, stepNm: step, values }),
});

const lightFields = { light, name: optional(aName('Name')), startNm: optional(startNm), stepNm: optional(stepNm), values: optional(power) };

export const setLight = defineAction({
  id: 'light.set', title: 'Edit own light', keywords: ['spectral power distribution', 'SPD', 'rename'], group: 'Lights', context: 'light',
  arguments: lightFields,
  label: (values, cabin) => `Change ${changedFields(lightFields, values, ['light'])} of light ${lightName(cabin, values.light)}`,
  edit: (cabin, { light: id, ...changes }) => editItem(cabin, 'lights', id, (of) => setFields(of, changes)),
  subject: (cabin, values) => cabin.lights?.find((one) => one.id === values.light),
});

export const removeLight = defineAction({
  id: 'light.remove', title: 'Remove own light', keywords: ['SPD', 'delete'], keys: ['Delete'], group: 'Lights', context: 'light',
  arguments: { light },
  label: ({ light: id }, cabin) => `Remove light ${lightName(cabin, id)}`,
  edit: (cabin, { light: id }) => removeItem(cabin, 'lights', id),
});

export const lightActions = [addLight, setLight, removeLight] as const;
