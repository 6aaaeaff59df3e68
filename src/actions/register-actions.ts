import type { Cabin, Supplier } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { fileShape, instrumentShape } from '../cabin/shapes/register-shapes.ts';
import { geometries } from '../readings/reading.ts';
import type { Conditions, Instrument } from '../readings/reading.ts';
import { defineAction } from './action.ts';
import { aChoice, aDate, aName, aNumber, aReference, aText, clearable, needed, optional, structure } from './argument.ts';
import { addItem, editItem, refuse, removeItem, sameValue, setFields } from './edit.ts';
import { freeId, idOfName, idsOf } from './next-id.ts';
import { changedFields, count } from './wording.ts';

const setupCost = clearable(aNumber('Set-up cost', { min: 0, max: 1e12 }));
const supplier = needed(aReference('Supplier', 'supplier'));
const supplierName = (cabin: Cabin, id: string): string => cabinIndex(cabin).suppliers.get(id)?.name ?? id;
const instrumentName = (cabin: Cabin, id: string): string => cabinIndex(cabin).instruments.get(id)?.name ?? id;

export const addSupplier = defineAction({
  id: 'supplier.add', title: 'Add supplier', keywords: ['new', 'maker'], group: 'Registers', context: 'none',
  arguments: { name: needed(aName('Name')), setupCost },
  label: ({ name }) => `Add supplier ${name}`,
  edit: (cabin, { name, ...fields }) => {
    const made: Supplier = { id: freeId(idOfName(name, 'supplier'), idsOf(cabin.suppliers)), name };
    return addItem(cabin, 'suppliers', setFields(made, fields));
  },
});

const supplierFields = { supplier, name: optional(aName('Name')), setupCost };

export const setSupplier = defineAction({
  id: 'supplier.set', title: 'Edit supplier', keywords: ['rename', 'cost'], group: 'Registers', context: 'supplier',
  arguments: supplierFields,
  label: (values, cabin) => `Change ${changedFields(supplierFields, values, ['supplier'])} of supplier ${supplierName(cabin, values.supplier)}`,
  edit: (cabin, { supplier: id, ...changes }) => editItem(cabin, 'suppliers', id, (of) => setFields(of, changes)),
  subject: (cabin, values) => cabinIndex(cabin).suppliers.get(values.supplier ?? ''),
});

const sourcesOf = (cabin: Cabin, id: string): string | undefined => {
  const sources = cabin.parts.flatMap((part) => part.sources).filter((source) => source.supplier === id).length;
  return sources === 0 ? undefined : `${count(sources, 'source')} ${sources === 1 ? 'is' : 'are'} of this supplier.`;
};

export const removeSupplier = defineAction({
  id: 'supplier.remove', title: 'Remove supplier', keywords: ['delete', 'maker'], keys: ['Delete'], group: 'Registers', context: 'supplier',
  arguments: { supplier },
  label: ({ supplier: id }, cabin) => `Remove supplier ${supplierName(cabin, id)}`,
  unless: (cabin, selection) => sourcesOf(cabin, selection.supplier ?? ''),
  edit: (cabin, { supplier: id }) => {
    const used = sourcesOf(cabin, id);
    return used === undefined ? removeItem(cabin, 'suppliers', id) : refuse('still-used', used, 'a supplier without sources', 'Remove the sources or give them another supplier first.');
  },
});

const instrumentKinds = ['spectrophotometer', 'colorimeter', 'glossmeter', 'areal profiler'] as const;
const instrument = needed(aReference('Instrument', 'instrument'));
const instrumentDetails = {
  serial: clearable(aName('Serial number')),
  calibratedOn: clearable(aDate('Calibrated on')),
  calibrationDays: clearable(aNumber('Calibration holds for', { min: 1, max: 36_500, whole: true, unit: 'days' })),
  note: clearable(aText('Note')),
};

export const addInstrument = defineAction({
  id: 'instrument.add', title: 'Add instrument', keywords: ['spectrophotometer', 'glossmeter', 'profiler', 'new'], group: 'Registers', context: 'none',
  arguments: { name: needed(aName('Name')), kind: needed(aChoice('Kind', instrumentKinds)), ...instrumentDetails },
  label: ({ name }) => `Add instrument ${name}`,
  edit: (cabin, { name, kind, ...fields }) => {
    const made: Instrument = { id: freeId(idOfName(name, 'instrument'), idsOf(cabin.instruments)), name, kind };
    return addItem(cabin, 'instruments', setFields(made, fields));
  },
});

const instrumentFields = { instrument, name: optional(aName('Name')), kind: optional(aChoice('Kind', instrumentKinds)), ...instrumentDetails };

export const setInstrument = defineAction({
  id: 'instrument.set', title: 'Edit instrument', keywords: ['calibration', 'serial', 'rename'], group: 'Registers', context: 'instrument',
  arguments: instrumentFields,
  label: (values, cabin) => `Change ${changedFields(instrumentFields, values, ['instrument'])} of instrument ${instrumentName(cabin, values.instrument)}`,
  edit: (cabin, { instrument: id, ...changes }) => editItem(cabin, 'instruments', id, (of) => setFields(of, changes)),
  subject: (cabin, values) => cabinIndex(cabin).instruments.get(values.instrument ?? ''),
});

export const replaceInstrument = defineAction({
  id: 'instrument.replace', title: 'Enter agreement of instrument', keywords: ['agreement set', 'covariance', 'tiles'], group: 'Registers', context: 'instrument',
  arguments: { instrument, entry: needed(structure('Instrument', instrumentShape)) },
  label: ({ instrument: id }, cabin) => `Change the agreement of instrument ${instrumentName(cabin, id)}`,
  edit: (cabin, { instrument: id, entry }) => editItem(cabin, 'instruments', id, (of) => (sameValue(of, { ...entry, id }) ? of : { ...entry, id })),
  subject: (cabin, values) => ({ entry: cabinIndex(cabin).instruments.get(values.instrument ?? '') }),
});

export const removeInstrument = defineAction({
  id: 'instrument.remove', title: 'Remove instrument', keywords: ['delete'], keys: ['Delete'], group: 'Registers', context: 'instrument',
  arguments: { instrument },
  label: ({ instrument: id }, cabin) => `Remove instrument ${instrumentName(cabin, id)}`,
  edit: (cabin, { instrument: id }) => removeItem(cabin, 'instruments', id),
});

const uvStates = ['included', 'excluded', 'adjusted', 'unknown'] as const;
const conditions = needed(aReference('Conditions', 'conditions'));
const conditionDetails = {
  geometry: clearable(aChoice('Geometry', geometries)),
  apertureMm: clearable(aNumber('Aperture', { above: 0, max: 1000, unit: 'mm' })),
  uv: clearable(aChoice('UV', uvStates)),
  aspecularDeg: clearable(aNumber('Aspecular angle', { min: -90, max: 180, unit: 'degrees' })),
  backing: clearable(aName('Backing')),
  temperatureC: clearable(aNumber('Temperature', { min: -60, max: 200, unit: '°C' })),
};

export const addConditions = defineAction({
  id: 'conditions.add', title: 'Add conditions of readings', keywords: ['geometry', 'aperture', 'UV', 'new'], group: 'Registers', context: 'none',
  arguments: { id: needed(aName('Id')), instrument, ...conditionDetails },
  label: ({ id }) => `Add conditions ${id}`,
  edit: (cabin, { id, instrument: by, ...fields }) => {
    const made: Conditions = { id: freeId(id, idsOf(cabin.conditions)), instrument: by };
    return addItem(cabin, 'conditions', setFields(made, fields));
  },
});

const conditionsFields = { conditions, instrument: optional(aReference('Instrument', 'instrument')), ...conditionDetails };

export const setConditions = defineAction({
  id: 'conditions.set', title: 'Edit conditions of readings', keywords: ['geometry', 'aperture', 'UV', 'backing', 'temperature'], group: 'Registers', context: 'conditions',
  arguments: conditionsFields,
  label: (values) => `Change ${changedFields(conditionsFields, values, ['conditions'])} of conditions ${values.conditions}`,
  edit: (cabin, { conditions: id, ...changes }) => editItem(cabin, 'conditions', id, (of) => setFields(of, changes)),
  subject: (cabin, values) => cabinIndex(cabin).conditions.get(values.conditions ?? ''),
});

export const removeConditions = defineAction({
  id: 'conditions.remove', title: 'Remove conditions of readings', keywords: ['geometry', 'delete'], keys: ['Delete'], group: 'Registers', context: 'conditions',
  arguments: { conditions },
  label: ({ conditions: id }) => `Remove conditions ${id}`,
  edit: (cabin, { conditions: id }) => removeItem(cabin, 'conditions', id),
});

/** A file that readings came from; its id gets a number where it is taken. */
export const addFile = defineAction({
  id: 'file.add', title: 'Record a file of readings', keywords: ['import', 'sha256', 'source file'], group: 'Registers', context: 'none',
  arguments: { file: needed(structure('File', fileShape)) },
  label: ({ file }) => `Record file ${file.name}`,
  edit: (cabin, { file }) => addItem(cabin, 'files', { ...file, id: freeId(file.id, idsOf(cabin.files)) }),
});

export const registerActions = [
  addSupplier, setSupplier, removeSupplier, addInstrument, setInstrument, replaceInstrument, removeInstrument, addConditions, setConditions, removeConditions, addFile,
] as const;
