import type { Cabin, Intent, Joint } from '../cabin/cabin.ts';
import { jointKinds } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { defineAction } from './action.ts';
import { aChoice, aName, aNumber, aReference, aText, clearable, needed, optional, points } from './argument.ts';
import { addItem, editJoint, removeItem, setFields } from './edit.ts';
import { freeId, idsOf } from './next-id.ts';
import { changedFields, count, jointName, listing, partName } from './wording.ts';

const joint = needed(aReference('Joint', 'joint'));
const colourIntents = ['match', 'tone-step', 'contrast', 'free'] as const;
const surfaceIntents = ['match', 'contrast', 'free'] as const;
const length = { min: 0, max: 100_000, unit: 'mm' };

const measures = {
  gapMm: clearable(aNumber('Gap', { min: 0, max: 1000, unit: 'mm' })),
  stepMm: clearable(aNumber('Step', { min: -1000, max: 1000, unit: 'mm' })),
  lengthMm: clearable(aNumber('Length', length)),
  viewMm: clearable(aNumber('Viewing distance', { above: 0, max: 100_000, unit: 'mm' })),
  tiltDeg: clearable(aNumber('Tilt', { min: -180, max: 180, unit: 'degrees' })),
  weight: clearable(aNumber('Weight', { min: 0, max: 1000 })),
};

const jointWith = (cabin: Cabin, values: { readonly joint?: string | undefined }): Joint | undefined => cabinIndex(cabin).joints.get(values.joint ?? '');

export const addJoint = defineAction({
  id: 'joint.add', title: 'Join two parts', keywords: ['add joint', 'connect', 'meet', 'new'], keys: ['Mod+J'], group: 'Joints', context: 'two parts',
  arguments: {
    first: needed(aReference('First part', 'part')),
    second: needed(aReference('Second part', 'part')),
    kind: needed(aChoice('Kind', jointKinds)),
    ...measures,
  },
  label: ({ first, second, kind }, cabin) => `Join ${partName(cabin, first)} and ${partName(cabin, second)} by ${kind === 'edge' ? 'an' : 'a'} ${kind}`,
  edit: (cabin, { first, second, kind, ...fields }) => {
    const made: Joint = { id: freeId(`${first}--${second}`, idsOf(cabin.joints)), parts: [first, second], kind };
    return addItem(cabin, 'joints', setFields(made, fields));
  },
});

export const removeJoint = defineAction({
  id: 'joint.remove', title: 'Remove joint', keywords: ['delete', 'disconnect'], keys: ['Delete'], group: 'Joints', context: 'joint',
  arguments: { joint },
  label: (values, cabin) => {
    const { decisions = [], visualRecords = [] } = jointWith(cabin, values) ?? {};
    const also = [
      ...(decisions.length === 0 ? [] : [count(decisions.length, 'decision')]),
      ...(visualRecords.length === 0 ? [] : [count(visualRecords.length, 'visual record')]),
    ];
    return `Remove joint ${jointName(cabin, values.joint)}${also.length === 0 ? '' : ` with ${listing(also)}`}`;
  },
  edit: (cabin, { joint: id }) => removeItem(cabin, 'joints', id),
});

const jointFields = {
  joint,
  kind: optional(aChoice('Kind', jointKinds)),
  ...measures,
  reference: clearable(aReference('Reference part', 'part')),
  note: clearable(aText('Note')),
};

export const setJoint = defineAction({
  id: 'joint.set', title: 'Edit joint', keywords: ['kind', 'gap', 'step', 'length', 'viewing distance', 'tilt', 'weight', 'reference', 'note'], group: 'Joints', context: 'joint',
  arguments: jointFields,
  label: (values, cabin) => `Change ${changedFields(jointFields, values, ['joint'])} of joint ${jointName(cabin, values.joint)}`,
  edit: (cabin, { joint: id, ...changes }) => editJoint(cabin, id, (of) => setFields(of, changes)),
  subject: jointWith,
});

const intentFields = {
  joint,
  colour: clearable(aChoice('Colour', colourIntents)),
  gloss: clearable(aChoice('Gloss', surfaceIntents)),
  texture: clearable(aChoice('Texture', surfaceIntents)),
};

export const setIntent = defineAction({
  id: 'joint.set-intent', title: 'Set intent of joint', keywords: ['match', 'tone-step', 'contrast', 'free', 'wanted'], group: 'Joints', context: 'joint',
  arguments: intentFields,
  label: (values, cabin) => `Change intent of joint ${jointName(cabin, values.joint)}: ${changedFields(intentFields, values, ['joint'])}`,
  edit: (cabin, { joint: id, ...changes }) => editJoint(cabin, id, (of) => {
    const intent = setFields<Intent>(of.intent ?? {}, changes);
    return setFields(of, { intent: Object.keys(intent).length === 0 ? null : intent });
  }),
  subject: (cabin, values) => jointWith(cabin, values)?.intent,
});

export const setReference = defineAction({
  id: 'joint.set-reference', title: 'Set reference part of joint', keywords: ['standard', 'trial'], group: 'Joints', context: 'joint',
  arguments: { joint, reference: clearable(aReference('Reference part', 'part')) },
  label: ({ joint: id, reference }, cabin) => (typeof reference === 'string'
    ? `Let ${partName(cabin, reference)} be the reference of joint ${jointName(cabin, id)}`
    : `Leave joint ${jointName(cabin, id)} without a reference`),
  edit: (cabin, { joint: id, reference }) => editJoint(cabin, id, (of) => setFields(of, { reference })),
  subject: jointWith,
});

export const setPath = defineAction({
  id: 'joint.set-path', title: 'Draw path of joint', keywords: ['line', 'map', 'course'], group: 'Joints', context: 'joint',
  arguments: { joint, path: clearable(points('Path')) },
  label: ({ joint: id, path }, cabin) => (path === null
    ? `Leave the path of joint ${jointName(cabin, id)} to the outlines` : `Draw the path of joint ${jointName(cabin, id)}`),
  edit: (cabin, { joint: id, path }) => editJoint(cabin, id, (of) => setFields(of, { path })),
  subject: jointWith,
});

export const setJointId = defineAction({
  id: 'joint.set-id', title: 'Change id of joint', keywords: ['rename', 'name'], keys: ['F2'], group: 'Joints', context: 'joint',
  arguments: { joint, id: needed(aName('Id')) },
  label: ({ joint: before, id }) => `Call joint ${before} ${id}`,
  edit: (cabin, { joint: before, id }) => editJoint(cabin, before, (of) => setFields(of, { id })),
  subject: jointWith,
});

export const jointActions = [addJoint, removeJoint, setJoint, setIntent, setReference, setPath, setJointId] as const;
