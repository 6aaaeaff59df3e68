import type { Cabin, Decision, VisualRecord } from '../cabin/cabin.ts';
import { checkNames, visualResults } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { defineAction } from './action.ts';
import { aChoice, aDate, aName, aNumber, aPlace, aReference, aText, clearable, names, needed, optional } from './argument.ts';
import { editJoint, refuse, setFields, setList, setOptionalList, without } from './edit.ts';
import { idsOf, numberedId } from './next-id.ts';
import { jointName } from './wording.ts';

const joint = needed(aReference('Joint', 'joint'));
const ownerOf = (cabin: Cabin, decision: string): string =>
  cabin.joints.find(({ decisions }) => decisions?.some(({ id }) => id === decision))?.id ?? '';

export const addDecision = defineAction({
  id: 'decision.add', title: 'Accept a clash for a time', keywords: ['decision', 'deviation', 'concession', 'agree'], group: 'Decisions', context: 'joint',
  arguments: {
    joint,
    check: needed(aChoice('Check', checkNames)),
    reason: needed(aText('Reason')),
    role: needed(aName('Role that decided')),
    date: needed(aDate('Date')),
    expires: needed(aDate('Expires')),
    value: needed(aNumber('Agreed value', { min: 0, max: 1e6 })),
    light: optional(aReference('Light', 'light')),
    criterion: optional(aName('What the value is, if not the difference')),
  },
  label: ({ joint: id, check, expires }, cabin) => `Accept the ${check} of joint ${jointName(cabin, id)} until ${expires}`,
  edit: (cabin, { joint: id, check, reason, role, date, expires, value, light, criterion }) => editJoint(cabin, id, (of) => {
    const taken = cabin.joints.flatMap(({ decisions }) => idsOf(decisions));
    const made: Decision = { id: numberedId('decision', taken), check, reason, role, date, expires, value, ...(light === undefined ? {} : { light }), ...(criterion === undefined ? {} : { criterion }) };
    return setList(of, 'decisions', [...(of.decisions ?? []), made]);
  }),
});

export const withdrawDecision = defineAction({
  id: 'decision.withdraw', title: 'Withdraw decision', keywords: ['remove', 'revoke', 'deviation'], keys: ['Delete'], group: 'Decisions', context: 'decision',
  arguments: { decision: needed(aReference('Decision', 'decision')) },
  label: ({ decision }, cabin) => `Withdraw ${decision} of joint ${jointName(cabin, ownerOf(cabin, decision))}`,
  edit: (cabin, { decision }) => editJoint(cabin, ownerOf(cabin, decision), (of) =>
    setOptionalList(of, 'decisions', without(of.decisions ?? [], ({ id }) => id === decision))),
});

const ratingScales = ['ISO 3668', 'ISO 105-A02'] as const;

export const addVisualRecord = defineAction({
  id: 'visual-record.add', title: 'Record a visual assessment', keywords: ['light booth', 'observers', 'seen', 'grey scale'], group: 'Decisions', context: 'joint',
  arguments: {
    joint,
    date: needed(aDate('Date')),
    light: needed(aName('Light')),
    illuminanceLx: clearable(aNumber('Illuminance', { above: 0, max: 200_000, unit: 'lx' })),
    observers: needed(aNumber('Number of observers', { min: 1, max: 1000, whole: true })),
    roles: optional(names('Roles of the observers', 'a role', 100)),
    result: needed(aChoice('Result', visualResults)),
    scale: optional(aChoice('Scale', ratingScales)),
    grade: optional(aNumber('Grade', { min: 0, max: 5 })),
    note: clearable(aText('Note')),
  },
  label: ({ joint: id, result, date }, cabin) => `Record ${result} seen on ${date} at joint ${jointName(cabin, id)}`,
  edit: (cabin, { joint: id, date, light, illuminanceLx, observers, roles = [], result, scale, grade, note }) => {
    if ((scale === undefined) !== (grade === undefined)) return refuse('missing-field', scale === undefined ? 'a grade without a scale' : 'a scale without a grade', 'both or neither');
    const made: VisualRecord = { date, light, observers: { count: observers, roles }, result, ...(scale === undefined || grade === undefined ? {} : { rating: { scale, grade } }) };
    return editJoint(cabin, id, (of) => setList(of, 'visualRecords', [...(of.visualRecords ?? []), setFields(made, { illuminanceLx, note })]));
  },
});

export const removeVisualRecord = defineAction({
  id: 'visual-record.remove', title: 'Remove visual record', keywords: ['light booth', 'delete'], keys: ['Delete'], group: 'Decisions', context: 'visual record',
  arguments: { joint, record: needed(aPlace('Place of the record')) },
  label: ({ joint: id, record }, cabin) => {
    const date = cabinIndex(cabin).joints.get(id)?.visualRecords?.[record]?.date;
    return `Remove the visual record${date === undefined ? '' : ` of ${date}`} at joint ${jointName(cabin, id)}`;
  },
  edit: (cabin, { joint: id, record }) => editJoint(cabin, id, (of) => {
    const records = of.visualRecords ?? [];
    if (record >= records.length) return refuse('unknown-record', `place ${record}`, records.length === 0 ? 'a joint with visual records' : `a place from 0 to ${records.length - 1}`);
    return setOptionalList(of, 'visualRecords', records.toSpliced(record, 1));
  }),
});

export const decisionActions = [addDecision, withdrawDecision, addVisualRecord, removeVisualRecord] as const;
