import type { Cabin, MapPoint, Part } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { defineAction } from './action.ts';
import { aNumber, aPlace, aPoint, aReference, clearable, needed, points } from './argument.ts';
import type { Edited } from './edit.ts';
import { editPart, refuse, setFields } from './edit.ts';
import type { Selection } from './selection.ts';
import { leadingPart } from './selection.ts';
import { partName } from './wording.ts';

const part = needed(aReference('Part', 'part'));
const distance = { min: -1e6, max: 1e6, unit: 'mm' };

const withoutOutline = (cabin: Cabin, selection: Selection): string | undefined =>
  (cabinIndex(cabin).parts.get(leadingPart(selection) ?? '')?.outline === undefined ? 'The part has no outline.' : undefined);

/** Edits the outline of a part that has one; `at` must be a place in it, or the place after the last where a point is put in. */
function editOutline(cabin: Cabin, id: string, at: number, edit: (outline: readonly MapPoint[]) => readonly MapPoint[], room = 0): Edited<Cabin> {
  return editPart(cabin, id, (of): Edited<Part> => {
    if (of.outline === undefined) return refuse('no-outline', `${of.name} without an outline`, 'a part with an outline', 'Draw one first.');
    if (at >= of.outline.length + room) return refuse('unknown-point', `place ${at}`, `a place from 0 to ${of.outline.length - 1 + room}`);
    return setFields(of, { outline: edit(of.outline) });
  });
}

export const setOutline = defineAction({
  id: 'part.set-outline', title: 'Set outline of part', keywords: ['draw', 'shape', 'polygon', 'map'], group: 'Outline', context: 'part',
  arguments: { part, outline: clearable(points('Outline')) },
  label: (values, cabin) => (values.outline === null ? `Take the outline off ${partName(cabin, values.part)}` : `Draw the outline of ${partName(cabin, values.part)}`),
  edit: (cabin, { part: id, outline }) => editPart(cabin, id, (of) => setFields(of, { outline })),
  subject: (cabin, values) => cabinIndex(cabin).parts.get(values.part ?? ''),
});

export const moveOutline = defineAction({
  id: 'part.move-outline', title: 'Move outline of part', keywords: ['drag', 'shift', 'map'], group: 'Outline', context: 'part',
  arguments: { part, dxMm: needed(aNumber('Right', distance)), dyMm: needed(aNumber('Down', distance)) },
  label: (values, cabin) => `Move the outline of ${partName(cabin, values.part)}`,
  unless: withoutOutline,
  edit: (cabin, { part: id, dxMm, dyMm }) => editOutline(cabin, id, 0, (outline) => outline.map(([x, y]) => [x + dxMm, y + dyMm] as const)),
});

export const movePoint = defineAction({
  id: 'part.move-point', title: 'Move point of outline', keywords: ['drag', 'corner', 'vertex'], group: 'Outline', context: 'point',
  arguments: { part, point: needed(aPlace('Place of the point')), to: needed(aPoint('To')) },
  label: (values, cabin) => `Move a point of ${partName(cabin, values.part)}`,
  unless: withoutOutline,
  edit: (cabin, { part: id, point, to }) => editOutline(cabin, id, point, (outline) => outline.with(point, to)),
});

export const insertPoint = defineAction({
  id: 'part.insert-point', title: 'Insert point in outline', keywords: ['corner', 'vertex', 'add'], keys: ['Insert'], group: 'Outline', context: 'point',
  arguments: { part, point: needed(aPlace('Place of the new point')), to: needed(aPoint('At')) },
  label: (values, cabin) => `Insert a point in ${partName(cabin, values.part)}`,
  unless: withoutOutline,
  edit: (cabin, { part: id, point, to }) => editOutline(cabin, id, point, (outline) => outline.toSpliced(point, 0, to), 1),
});

export const deletePoint = defineAction({
  id: 'part.delete-point', title: 'Delete point of outline', keywords: ['corner', 'vertex', 'remove'], keys: ['Delete'], group: 'Outline', context: 'point',
  arguments: { part, point: needed(aPlace('Place of the point')) },
  label: (values, cabin) => `Delete a point of ${partName(cabin, values.part)}`,
  unless: withoutOutline,
  edit: (cabin, { part: id, point }) => editOutline(cabin, id, point, (outline) => outline.toSpliced(point, 1)),
});

export const outlineActions = [setOutline, moveOutline, movePoint, insertPoint, deletePoint] as const;
