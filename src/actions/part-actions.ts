import type { Cabin, Part } from '../cabin/cabin.ts';
import { hands, surfaces } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { defineAction } from './action.ts';
import { aChoice, aFlag, aName, aNumber, aReference, aText, clearable, needed, optional, points } from './argument.ts';
import { addItem, editEach, editPart, refuse, setFields, setList, withList, without } from './edit.ts';
import { freeId, idOfName, idsOf } from './next-id.ts';
import { changedFields, count, listing, partName } from './wording.ts';

const thePart = needed(aReference('Part', 'part'));
const visibility = aNumber('Visibility', { min: 0, max: 1 });
const partOf = (cabin: Cabin, values: { readonly part?: string | undefined }): Part | undefined => cabinIndex(cabin).parts.get(values.part ?? '');

export const addPart = defineAction({
  id: 'part.add', title: 'Add part', keywords: ['new', 'face', 'create'], group: 'Parts', context: 'none',
  arguments: {
    name: needed(aName('Name')),
    zone: needed(aReference('Zone', 'zone')),
    supplier: needed(aReference('Supplier', 'supplier')),
    material: needed(aName('Material')),
    surface: optional(aChoice('Surface', surfaces)),
    hand: optional(aChoice('Hand', hands)),
    outline: optional(points('Outline')),
  },
  label: ({ name }) => `Add part ${name}`,
  edit: (cabin, { name, zone, supplier, material, surface = 'solid', hand, outline }) => {
    const id = freeId(idOfName(name, 'part'), idsOf(cabin.parts));
    return addItem(cabin, 'parts', {
      id, name, zone, ...(outline === undefined ? {} : { outline }), ...(hand === undefined ? {} : { hand }),
      sources: [{ id: `${id}-${supplier}`, supplier, material, surface, status: 'candidate', specimens: [] }],
    });
  },
});

/** What goes with a part: joints and runs that cannot be without it, and mirror references to it. */
function goingWith(cabin: Cabin, part: string): { readonly joints: number; readonly runs: number; readonly mirrors: number } {
  return {
    joints: cabin.joints.filter((joint) => joint.parts.includes(part)).length,
    runs: (cabin.runs ?? []).filter((run) => run.parts.includes(part)).length,
    mirrors: cabin.parts.filter((other) => other.mirrorOf === part).length,
  };
}

export const removePart = defineAction({
  id: 'part.remove', title: 'Remove part', keywords: ['delete'], keys: ['Delete'], group: 'Parts', context: 'part',
  arguments: { part: thePart },
  label: ({ part }, cabin) => {
    const { joints, runs, mirrors } = goingWith(cabin, part);
    const also = [
      ...(joints === 0 ? [] : [count(joints, 'joint')]),
      ...(runs === 0 ? [] : [`its place in ${count(runs, 'run')}`]),
      ...(mirrors === 0 ? [] : ['the mirror reference to it']),
    ];
    return `Remove part ${partName(cabin, part)}${also.length === 0 ? '' : ` with ${listing(also)}`}`;
  },
  edit: (cabin, { part }) => {
    const parts = editEach(without(cabin.parts, ({ id }) => id === part), (other) => (other.mirrorOf === part ? setFields(other, { mirrorOf: null }) : other));
    const joints = without(cabin.joints, (joint) => joint.parts.includes(part));
    const runs = without(
      editEach(cabin.runs ?? [], (run) => setList(run, 'parts', without(run.parts, (id) => id === part))),
      (run) => run.parts.length < 2,
    );
    return withList(withList(withList(cabin, 'parts', parts), 'joints', joints), 'runs', runs);
  },
});

export const renamePart = defineAction({
  id: 'part.rename', title: 'Rename part', keywords: ['name', 'call'], keys: ['F2'], group: 'Parts', context: 'part',
  arguments: { part: thePart, name: needed(aName('Name')) },
  label: ({ part, name }, cabin) => `Rename ${partName(cabin, part)} to ${name}`,
  edit: (cabin, { part, name }) => editPart(cabin, part, (of) => setFields(of, { name })),
  subject: partOf,
});

const partFields = {
  part: thePart,
  name: optional(aName('Name')),
  partNumber: clearable(aName('Part number')),
  revision: clearable(aName('Revision')),
  zone: optional(aReference('Zone', 'zone')),
  module: clearable(aName('Module')),
  frozen: clearable(aFlag('Carry-over, left as it is')),
  visibility: clearable(visibility),
  flatAreaMm: clearable(aNumber('Flat area', { above: 0, max: 1e6, unit: 'mm' })),
  curvatureRadiusMm: clearable(aNumber('Radius of curvature', { above: 0, max: 1e9, unit: 'mm' })),
  note: clearable(aText('Note')),
};

export const setPart = defineAction({
  id: 'part.set', title: 'Edit part', keywords: ['fields', 'properties', 'number', 'revision', 'note', 'flat area', 'curvature'], group: 'Parts', context: 'part',
  arguments: partFields,
  label: (values, cabin) => `Change ${changedFields(partFields, values, ['part'])} of ${partName(cabin, values.part)}`,
  edit: (cabin, { part, ...changes }) => editPart(cabin, part, (of) => setFields(of, changes)),
  subject: partOf,
});

export const setPartZone = defineAction({
  id: 'part.set-zone', title: 'Move part to zone', keywords: ['zone', 'area'], group: 'Parts', context: 'part',
  arguments: { part: thePart, zone: needed(aReference('Zone', 'zone')) },
  label: ({ part, zone }, cabin) => `Move ${partName(cabin, part)} to zone ${cabinIndex(cabin).zones.get(zone)?.name ?? zone}`,
  edit: (cabin, { part, zone }) => editPart(cabin, part, (of) => setFields(of, { zone })),
  subject: partOf,
});

export const setPartHand = defineAction({
  id: 'part.set-hand', title: 'Set hand and mirror part', keywords: ['left', 'right', 'mirror', 'opposite'], group: 'Parts', context: 'part',
  arguments: { part: thePart, hand: clearable(aChoice('Hand', hands)), mirrorOf: clearable(aReference('Mirror of', 'part')) },
  label: ({ part, hand, mirrorOf }, cabin) => {
    if (typeof mirrorOf === 'string') return `Make ${partName(cabin, part)} the mirror of ${partName(cabin, mirrorOf)}`;
    if (mirrorOf === null && (hand === undefined || hand === null)) return `Take the mirror off ${partName(cabin, part)}`;
    return `Set the hand of ${partName(cabin, part)} to ${hand ?? 'none'}`;
  },
  edit: (cabin, { part, hand, mirrorOf }) => {
    const partner = typeof mirrorOf === 'string' ? cabinIndex(cabin).parts.get(mirrorOf) : undefined;
    const opposite = partner?.hand === 'left' ? 'right' as const : partner?.hand === 'right' ? 'left' as const : undefined;
    return editPart(cabin, part, (of) => setFields(of, { mirrorOf, hand: hand === undefined && opposite !== undefined ? opposite : hand }));
  },
  subject: partOf,
});

export const setPartModule = defineAction({
  id: 'part.set-module', title: 'Put part in a module', keywords: ['module', 'bought together', 'supplier'], group: 'Parts', context: 'part',
  arguments: { part: thePart, module: clearable(aName('Module')) },
  label: ({ part, module }, cabin) => (typeof module === 'string' ? `Put ${partName(cabin, part)} in module ${module}` : `Take ${partName(cabin, part)} out of its module`),
  edit: (cabin, { part, module }) => editPart(cabin, part, (of) => setFields(of, { module })),
  subject: partOf,
});

export const setPartFrozen = defineAction({
  id: 'part.set-frozen', title: 'Lock or unlock part for plans', keywords: ['frozen', 'carry-over', 'lock', 'free'], group: 'Parts', context: 'part',
  arguments: { part: thePart, frozen: needed(aFlag('Carry-over, left as it is')) },
  label: ({ part, frozen }, cabin) => `${frozen ? 'Lock' : 'Unlock'} ${partName(cabin, part)} for plans`,
  edit: (cabin, { part, frozen }) => editPart(cabin, part, (of) => setFields(of, { frozen: frozen ? true : null })),
  subject: partOf,
});

export const setPartVisibility = defineAction({
  id: 'part.set-visibility', title: 'Set visibility of part', keywords: ['weight', 'seen'], group: 'Parts', context: 'part',
  arguments: { part: thePart, visibility: needed(visibility) },
  label: ({ part, visibility: weight }, cabin) => `Set the visibility of ${partName(cabin, part)} to ${weight}`,
  edit: (cabin, { part, visibility: weight }) => editPart(cabin, part, (of) => setFields(of, { visibility: weight })),
  subject: partOf,
});

export const setPartTarget = defineAction({
  id: 'part.set-target', title: 'Set target of part', keywords: ['master', 'limit', 'tolerance'], group: 'Parts', context: 'part',
  arguments: {
    part: thePart,
    master: clearable(aReference('Master', 'master')),
    colourLimit: clearable(aNumber('Colour limit', { above: 0, max: 1000 })),
    glossLimit: clearable(aNumber('Gloss limit', { above: 0, max: 2000, unit: 'GU' })),
  },
  label: ({ part, master }, cabin) => {
    if (master === null) return `Take the target off ${partName(cabin, part)}`;
    return `${typeof master === 'string' ? `Hold ${partName(cabin, part)} to master ${master}` : `Change the target limits of ${partName(cabin, part)}`}`;
  },
  edit: (cabin, { part, master, ...limits }) => editPart(cabin, part, (of) => {
    if (master === null) return setFields(of, { target: null });
    const kept = of.target ?? (master === undefined ? undefined : { master });
    if (kept === undefined) return refuse('missing-field', 'a part without a target', 'the master that the part is held to', 'Name a master first.');
    return setFields(of, { target: setFields(kept, { master, ...limits }) });
  }),
  subject: (cabin, values) => partOf(cabin, values)?.target,
});

export const chooseSource = defineAction({
  id: 'part.choose-source', title: 'Choose source of part', keywords: ['supplier', 'swap', 'pick', 'stands by'], group: 'Sources', context: 'source',
  arguments: { part: thePart, source: needed(aReference('Source', 'source')) },
  label: ({ part, source }, cabin) => `Let ${partName(cabin, part)} stand by source ${source}`,
  edit: (cabin, { part, source }) => editPart(cabin, part, (of) => setFields(of, { source })),
  subject: partOf,
});

export const partActions = [
  addPart, removePart, renamePart, setPart, setPartZone, setPartHand, setPartModule, setPartFrozen, setPartVisibility, setPartTarget, chooseSource,
] as const;
