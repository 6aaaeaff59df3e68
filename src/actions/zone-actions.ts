import type { Cabin, Cap, Zone } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { defineAction } from './action.ts';
import { aChoice, aName, aNumber, aReference, aText, clearable, needed, optional } from './argument.ts';
import { addItem, editById, editItem, isRefusal, refuse, removeItem, setFields, setList, setOptionalList, without } from './edit.ts';
import { freeId, idOfName, idsOf, numberedId } from './next-id.ts';
import { changedFields, count } from './wording.ts';

const zone = needed(aReference('Zone', 'zone'));
const zoneName = (cabin: Cabin, id: string): string => cabinIndex(cabin).zones.get(id)?.name ?? id;
const partsIn = (cabin: Cabin, id: string): number => cabin.parts.filter((part) => part.zone === id).length;

export const addZone = defineAction({
  id: 'zone.add', title: 'Add zone', keywords: ['area', 'new'], group: 'Zones', context: 'none',
  arguments: { name: needed(aName('Name')) },
  label: ({ name }) => `Add zone ${name}`,
  edit: (cabin, { name }) => addItem(cabin, 'zones', { id: freeId(idOfName(name, 'zone'), idsOf(cabin.zones)), name }),
});

export const renameZone = defineAction({
  id: 'zone.rename', title: 'Rename zone', keywords: ['area', 'name'], keys: ['F2'], group: 'Zones', context: 'zone',
  arguments: { zone, name: needed(aName('Name')) },
  label: ({ zone: id, name }, cabin) => `Rename zone ${zoneName(cabin, id)} to ${name}`,
  edit: (cabin, { zone: id, name }) => editItem(cabin, 'zones', id, (of) => setFields(of, { name })),
  subject: (cabin, values) => cabinIndex(cabin).zones.get(values.zone ?? ''),
});

const stillUsed = (cabin: Cabin, id: string): string | undefined => {
  const parts = partsIn(cabin, id);
  return parts === 0 ? undefined : `${count(parts, 'part')} of the cabin ${parts === 1 ? 'lies' : 'lie'} in the zone.`;
};

export const removeZone = defineAction({
  id: 'zone.remove', title: 'Remove zone', keywords: ['area', 'delete'], keys: ['Delete'], group: 'Zones', context: 'zone',
  arguments: { zone },
  label: ({ zone: id }, cabin) => `Remove zone ${zoneName(cabin, id)}`,
  unless: (cabin, selection) => stillUsed(cabin, selection.zone ?? ''),
  edit: (cabin, { zone: id }) => {
    const used = stillUsed(cabin, id);
    return used === undefined ? removeItem(cabin, 'zones', id) : refuse('still-used', used, 'a zone without parts', 'Move its parts to another zone first.');
  },
});

const capFields = {
  quantity: needed(aChoice('Quantity', ['gloss', 'lightness'] as const)),
  max: needed(aNumber('At most', { min: 0, max: 2000 })),
  angle: clearable(aChoice('Angle of gloss', [20, 60, 85] as const)),
  basis: needed(aText('Basis')),
  caution: clearable(aText('Caution')),
};

export const addCap = defineAction({
  id: 'cap.add', title: 'Add cap to zone', keywords: ['limit', 'glare', 'gloss', 'lightness'], group: 'Zones', context: 'zone',
  arguments: { zone, ...capFields },
  label: ({ zone: id, quantity, max }, cabin) => `Cap ${quantity} in zone ${zoneName(cabin, id)} at ${max}`,
  edit: (cabin, { zone: id, quantity, max, basis, angle, caution }) => editItem(cabin, 'zones', id, (of) => {
    const taken = cabin.zones.flatMap(({ caps }) => idsOf(caps));
    const made: Cap = { id: numberedId(`${id}-${quantity}`, taken), quantity, max, basis };
    return setList(of, 'caps', [...(of.caps ?? []), setFields(made, { angle, caution })]);
  }),
});

const cap = needed(aReference('Cap', 'cap'));
const ownerOf = (cabin: Cabin, id: string): Zone | undefined => cabin.zones.find(({ caps }) => caps?.some((one) => one.id === id));
const capWith = (cabin: Cabin, id: string): Cap | undefined => ownerOf(cabin, id)?.caps?.find((one) => one.id === id);

const setCapFields = {
  cap,
  quantity: optional(aChoice('Quantity', ['gloss', 'lightness'] as const)),
  max: optional(aNumber('At most', { min: 0, max: 2000 })),
  angle: capFields.angle,
  basis: optional(aText('Basis')),
  caution: capFields.caution,
};

export const setCap = defineAction({
  id: 'cap.set', title: 'Edit cap', keywords: ['limit', 'glare'], group: 'Zones', context: 'cap',
  arguments: setCapFields,
  label: (values, cabin) => `Change ${changedFields(setCapFields, values, ['cap'])} of the ${capWith(cabin, values.cap)?.quantity ?? ''} cap in zone ${ownerOf(cabin, values.cap)?.name ?? ''}`,
  edit: (cabin, { cap: id, ...changes }) => editItem(cabin, 'zones', ownerOf(cabin, id)?.id ?? '', (of) => {
    const caps = editById(of.caps ?? [], id, (one) => setFields(one, changes));
    return isRefusal(caps) ? caps : setList(of, 'caps', caps);
  }),
  subject: (cabin, values) => capWith(cabin, values.cap ?? ''),
});

export const removeCap = defineAction({
  id: 'cap.remove', title: 'Remove cap', keywords: ['limit', 'delete'], keys: ['Delete'], group: 'Zones', context: 'cap',
  arguments: { cap },
  label: ({ cap: id }, cabin) => `Remove the ${capWith(cabin, id)?.quantity ?? ''} cap of zone ${ownerOf(cabin, id)?.name ?? ''}`,
  edit: (cabin, { cap: id }) => editItem(cabin, 'zones', ownerOf(cabin, id)?.id ?? '', (of) =>
    setOptionalList(of, 'caps', without(of.caps ?? [], (one) => one.id === id))),
});

export const zoneActions = [addZone, renameZone, removeZone, addCap, setCap, removeCap] as const;
