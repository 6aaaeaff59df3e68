import type { Cabin, Specimen } from '../cabin/cabin.ts';
import { specimenKinds } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { defineAction } from './action.ts';
import { aChoice, aDate, aName, aNumber, aReference, aText, clearable, needed, optional } from './argument.ts';
import type { Changes, Edited } from './edit.ts';
import { addItem, editEach, editSource, editSpecimen, isRefusal, refuse, removeItem, setFields, setList, tidyPicks, withList, without } from './edit.ts';
import { freeId, numberedId } from './next-id.ts';
import { changedFields, count, listing, partName } from './wording.ts';

const specimen = needed(aReference('Specimen', 'specimen'));
const specimenWith = (cabin: Cabin, values: { readonly specimen?: string | undefined }): Specimen | undefined =>
  cabinIndex(cabin).specimens.get(values.specimen ?? '')?.specimen;

const takenIds = (cabin: Cabin): Iterable<string> => cabinIndex(cabin).specimens.keys();

const details = {
  producedOn: clearable(aDate('Produced on')),
  phase: clearable(aName('Phase')),
  tool: clearable(aName('Tool')),
  cavity: clearable(aName('Cavity')),
  parentMaster: clearable(aReference('Parent master', 'master')),
  issue: clearable(aName('Issue')),
  expires: clearable(aDate('Expires')),
  remeasureOn: clearable(aDate('Measure again on')),
  note: clearable(aText('Note')),
};

export const addSpecimen = defineAction({
  id: 'specimen.add', title: 'Add specimen', keywords: ['plaque', 'tool part', 'series part', 'sample', 'new'], group: 'Specimens', context: 'source',
  arguments: {
    part: needed(aReference('Part', 'part')),
    source: needed(aReference('Source', 'source')),
    kind: needed(aChoice('Kind', specimenKinds)),
    lot: optional(aName('Lot')),
    stage: optional(aName('Stage')),
    ...details,
  },
  label: ({ part, kind }, cabin) => `Add a ${kind} of ${partName(cabin, part)}`,
  edit: (cabin, { part, source, kind, lot, stage, ...fields }) => editSource(cabin, part, source, (of) => {
    const made: Specimen = {
      id: numberedId(source, takenIds(cabin)), kind, ...(lot === undefined ? {} : { lot: { id: lot } }),
      ...(stage === undefined || stage === 'new' ? {} : { exposure: { stage } }), readings: [],
    };
    return setList(of, 'specimens', [...of.specimens, setFields(made, fields)]);
  }),
});

export const removeSpecimen = defineAction({
  id: 'specimen.remove', title: 'Remove specimen', keywords: ['delete', 'sample'], keys: ['Delete'], group: 'Specimens', context: 'specimen',
  arguments: { specimen },
  label: (values, cabin) => {
    const readings = specimenWith(cabin, values)?.readings.length ?? 0;
    const parts = targetedBy(cabin, values.specimen);
    const also = [...(readings === 0 ? [] : [count(readings, 'reading')]), ...(parts === 0 ? [] : [`the target of ${count(parts, 'part')}`])];
    return `Remove specimen ${values.specimen}${also.length === 0 ? '' : ` with ${listing(also)}`}`;
  },
  edit: (cabin, { specimen: id }) => {
    const owner = cabinIndex(cabin).specimens.get(id);
    if (owner?.part === undefined || owner.source === undefined) return withoutMaster(cabin, id);
    const removed = editSource(cabin, owner.part, owner.source, (of) => tidyPicks(setList(of, 'specimens', without(of.specimens, (one) => one.id === id))));
    return isRefusal(removed) || owner.specimen.kind !== 'master' ? removed : withoutTargets(removed, id);
  },
});

const specimenFields = { specimen, kind: optional(aChoice('Kind', specimenKinds)), ...details };

export const setSpecimen = defineAction({
  id: 'specimen.set', title: 'Edit specimen', keywords: ['fields', 'kind', 'date', 'tool', 'cavity', 'issue', 'expiry'], group: 'Specimens', context: 'specimen',
  arguments: specimenFields,
  label: (values) => `Change ${changedFields(specimenFields, values, ['specimen'])} of specimen ${values.specimen}`,
  edit: (cabin, { specimen: id, ...changes }) => editSpecimen(cabin, id, (of) => setFields(of, changes)),
  subject: specimenWith,
});

const lotParts = {
  resin: clearable(aName('Resin lot')), paint: clearable(aName('Paint lot')), dye: clearable(aName('Dye lot')), hide: clearable(aName('Hide')),
  roll: clearable(aName('Roll')),
};

export const setLot = defineAction({
  id: 'specimen.set-lot', title: 'Set lot of specimen', keywords: ['resin', 'paint', 'dye', 'hide', 'roll'], group: 'Specimens', context: 'specimen',
  arguments: { specimen, lot: clearable(aName('Lot')), ...lotParts },
  label: ({ specimen: id, lot }) => (lot === null ? `Take the lot off specimen ${id}` : `Set the lot of specimen ${id}${typeof lot === 'string' ? ` to ${lot}` : ''}`),
  edit: (cabin, { specimen: id, lot, ...parts }) => editSpecimen(cabin, id, (of) => withDetail(of, 'lot', of.lot, lot, 'id', parts, 'the lot')),
  subject: (cabin, values) => {
    const of = specimenWith(cabin, values)?.lot;
    return of === undefined ? undefined : { ...of, lot: of.id };
  },
});

export const setExposure = defineAction({
  id: 'specimen.set-exposure', title: 'Set exposure of specimen', keywords: ['stage', 'aged', 'light-exposed', 'heat', 'dose', 'hours'], group: 'Specimens', context: 'specimen',
  arguments: {
    specimen,
    stage: clearable(aName('Stage')),
    method: clearable(aName('Method')),
    doseKjPerM2: clearable(aNumber('Dose', { min: 0, max: 1e9, unit: 'kJ/m²' })),
    hours: clearable(aNumber('Time', { min: 0, max: 1e6, unit: 'h' })),
  },
  label: ({ specimen: id, stage }) => `Set the stage of specimen ${id} to ${stage === null ? 'new' : stage ?? 'what it was, with other exposure'}`,
  edit: (cabin, { specimen: id, stage, ...parts }) => editSpecimen(cabin, id, (of) => withDetail(of, 'exposure', of.exposure, stage, 'stage', parts, 'the stage')),
  subject: (cabin, values) => specimenWith(cabin, values)?.exposure,
});

/** A specimen with its lot or exposure set: `null` for what names it takes it off. */
function withDetail<K extends 'lot' | 'exposure', D extends NonNullable<Specimen[K]>, N extends keyof D>(
  of: Specimen, key: K, current: D | undefined, named: D[N] | null | undefined, nameKey: N, parts: Changes<D>, what: string,
): Edited<Specimen> {
  if (named === null) return setFields<Specimen>(of, { [key]: null });
  const kept = current ?? (named === undefined ? undefined : { [nameKey]: named } as unknown as D);
  if (kept === undefined) return refuse('missing-field', `a specimen without ${what}`, `the name of ${what}`, `Name ${what} first.`);
  return setFields<Specimen>(of, { [key]: setFields(kept, { ...parts, ...(named === undefined ? {} : { [nameKey]: named }) } as Changes<D>) });
}

export const addMaster = defineAction({
  id: 'master.add', title: 'Add master', keywords: ['standard', 'target', 'new'], group: 'Specimens', context: 'none',
  arguments: { id: needed(aName('Id')), ...details },
  label: ({ id }) => `Add master ${id}`,
  edit: (cabin, { id, ...fields }) => {
    const made: Specimen = { id: freeId(id, takenIds(cabin)), kind: 'master', readings: [] };
    return addItem(cabin, 'masters', setFields(made, fields));
  },
});

const targetedBy = (cabin: Cabin, master: string): number => cabin.parts.filter((part) => part.target?.master === master).length;

export const removeMaster = defineAction({
  id: 'master.remove', title: 'Remove master', keywords: ['standard', 'delete'], group: 'Specimens', context: 'specimen',
  arguments: { specimen: needed(aReference('Master', 'specimen')) },
  label: ({ specimen: id }, cabin) => {
    const parts = targetedBy(cabin, id);
    return `Remove master ${id}${parts === 0 ? '' : ` and the target of ${count(parts, 'part')}`}`;
  },
  unless: (cabin, { specimen: id = '' }) => (cabin.masters?.some((master) => master.id === id) === true ? undefined : 'The specimen is no master of the cabin.'),
  edit: (cabin, { specimen: id }) => (cabin.masters?.some((master) => master.id === id) === true
    ? withoutMaster(cabin, id)
    : refuse('unknown-master', JSON.stringify(id), 'a master of the cabin')),
});

const withoutTargets = (cabin: Cabin, master: string): Cabin =>
  withList(cabin, 'parts', editEach(cabin.parts, (part) => (part.target?.master === master ? setFields(part, { target: null }) : part)));

const withoutMaster = (cabin: Cabin, id: string): Cabin => withoutTargets(removeItem(cabin, 'masters', id), id);

export const specimenActions = [addSpecimen, removeSpecimen, setSpecimen, setLot, setExposure, addMaster, removeMaster] as const;
