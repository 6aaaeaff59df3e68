import type { Cabin, Specimen } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { list } from '../cabin/schema/index.ts';
import { readingShape } from '../cabin/shapes/reading-shape.ts';
import { fileShape } from '../cabin/shapes/register-shapes.ts';
import type { Reading } from '../readings/reading.ts';
import { defineAction } from './action.ts';
import { aFlag, aPlace, aReference, needed, places, structure } from './argument.ts';
import type { Edited } from './edit.ts';
import { addItem, editSpecimen, isRefusal, refuse, sameValue, setFields, setList } from './edit.ts';
import { freeId, idsOf } from './next-id.ts';
import { count } from './wording.ts';

const specimen = needed(aReference('Specimen', 'specimen'));
const readings = needed(places('Readings'));

/** Edits the readings at some places of a specimen. */
function editReadings(cabin: Cabin, id: string, at: readonly number[], edit: (reading: Reading) => Reading | undefined): Edited<Cabin> {
  const size = cabinIndex(cabin).specimens.get(id)?.specimen.readings.length ?? 0;
  const beyond = at.find((place) => place >= size);
  if (beyond !== undefined) return refuse('unknown-reading', `place ${beyond}`, size === 0 ? 'a specimen with readings' : `a place from 0 to ${size - 1}`);
  const chosen = new Set(at);
  return editSpecimen(cabin, id, (of): Specimen => {
    const edited = of.readings.flatMap((reading, place) => (chosen.has(place) ? edit(reading) ?? [] : [reading]));
    const same = edited.length === size && edited.every((reading, place) => reading === of.readings[place]);
    return same ? of : setList(of, 'readings', edited);
  });
}

export const addReadings = defineAction({
  id: 'readings.add', title: 'Add readings', keywords: ['measurement', 'spectrum', 'CIELAB', 'gloss', 'texture', 'new'], group: 'Readings', context: 'specimen',
  arguments: { specimen, added: needed(structure('Readings', list(readingShape, { min: 1, max: 10_000, items: 'readings' }))) },
  label: ({ specimen: id, added }) => `Add ${count(added.length, 'reading')} to specimen ${id}`,
  edit: (cabin, { specimen: id, added }) => editSpecimen(cabin, id, (of) => setList(of, 'readings', [...of.readings, ...added])),
});

/** The reading of a surface that was measured from its file: reading and file in one step. A file that was read before, by its digest, is refused. */
export const addSurfaceReading = defineAction({
  id: 'readings.add-surface', title: 'Add texture of a surface file', keywords: ['height map', 'photograph', 'areal', 'grain', 'import'], group: 'Readings', context: 'specimen',
  arguments: { specimen, texture: needed(structure('Reading of texture', readingShape)), file: needed(structure('File', fileShape)) },
  label: ({ specimen: id, file }) => `Add texture of ${file.name} to specimen ${id}`,
  edit: (cabin, { specimen: id, texture, file }) => {
    if (texture.quantity !== 'texture') return refuse('not-a-texture', texture.quantity, 'a reading of texture');
    const before = cabin.files?.find(({ sha256 }) => sha256 === file.sha256);
    if (before !== undefined) return refuse('file-already-read', JSON.stringify(before.name), 'a file that is not in the cabin', 'Its reading would count twice.');
    const recorded = { ...file, id: freeId(file.id, idsOf(cabin.files)) };
    return editSpecimen(addItem(cabin, 'files', recorded), id, (of) => setList(of, 'readings', [...of.readings, { ...texture, file: recorded.id, row: texture.row ?? 1 }]));
  },
});

export const replaceReading = defineAction({
  id: 'readings.replace', title: 'Edit reading', keywords: ['measurement', 'values', 'correct'], group: 'Readings', context: 'readings',
  arguments: { specimen, place: needed(aPlace('Place of the reading')), reading: needed(structure('Reading', readingShape)) },
  label: ({ specimen: id, reading }) => `Edit reading at ${reading.spot.name} of specimen ${id}`,
  edit: (cabin, { specimen: id, place, reading }) => editReadings(cabin, id, [place], (of) => (sameValue(of, reading) ? of : reading)),
  subject: (cabin, { specimen: id = '', place = 0 }) => {
    const reading = cabinIndex(cabin).specimens.get(id)?.specimen.readings[place];
    return reading === undefined ? undefined : { reading };
  },
});

export const removeReadings = defineAction({
  id: 'readings.remove', title: 'Remove readings', keywords: ['delete', 'measurement'], keys: ['Delete'], group: 'Readings', context: 'readings',
  arguments: { specimen, readings },
  label: ({ specimen: id, readings: at }) => `Remove ${count(new Set(at).size, 'reading')} of specimen ${id}`,
  edit: (cabin, { specimen: id, readings: at }) => editReadings(cabin, id, at, () => undefined),
});

export const setOutlier = defineAction({
  id: 'readings.set-outlier', title: 'Mark or unmark readings as outliers', keywords: ['outlier', 'leave out', 'exclude', 'include'], group: 'Readings', context: 'readings',
  arguments: { specimen, readings, outlier: needed(aFlag('Outlier')) },
  label: ({ specimen: id, readings: at, outlier }) => `${outlier ? 'Mark' : 'Unmark'} ${count(new Set(at).size, 'reading')} of specimen ${id} as ${
    new Set(at).size === 1 ? 'an outlier' : 'outliers'}`,
  edit: (cabin, { specimen: id, readings: at, outlier }) => editReadings(cabin, id, at, (reading) => setFields(reading, { outlier: outlier ? true : null })),
});

export const setReadingConditions = defineAction({
  id: 'readings.set-conditions', title: 'Set conditions of readings', keywords: ['instrument', 'geometry', 'aperture'], group: 'Readings', context: 'readings',
  arguments: { specimen, readings, conditions: needed(aReference('Conditions', 'conditions')) },
  label: ({ specimen: id, readings: at, conditions }) => `Put ${count(new Set(at).size, 'reading')} of specimen ${id} under conditions ${conditions}`,
  edit: (cabin, { specimen: id, readings: at, conditions }) => editReadings(cabin, id, at, (reading) => setFields(reading, { conditions })),
});

export const moveReadings = defineAction({
  id: 'readings.move', title: 'Move readings to another specimen', keywords: ['wrong specimen', 'reassign'], group: 'Readings', context: 'readings',
  arguments: { specimen, readings, to: needed(aReference('To specimen', 'specimen')) },
  label: ({ specimen: id, readings: at, to }) => `Move ${count(new Set(at).size, 'reading')} from specimen ${id} to ${to}`,
  edit: (cabin, { specimen: id, readings: at, to }) => {
    const chosen = new Set(at);
    const moved = (cabinIndex(cabin).specimens.get(id)?.specimen.readings ?? []).filter((_, place) => chosen.has(place));
    if (id === to) return cabin;
    const taken = editReadings(cabin, id, at, () => undefined);
    return isRefusal(taken) ? taken : editSpecimen(taken, to, (of) => setList(of, 'readings', [...of.readings, ...moved]));
  },
});

export const readingActions = [addReadings, addSurfaceReading, replaceReading, removeReadings, setOutlier, setReadingConditions, moveReadings] as const;
