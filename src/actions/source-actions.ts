import type { Cabin, NamedColour, Source, VolumePrice } from '../cabin/cabin.ts';
import { sourceStatuses, surfaces } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { labShape } from '../cabin/shapes/lab-shape.ts';
import { list, name, number, object, optional as member, required } from '../cabin/schema/index.ts';
import { defineAction } from './action.ts';
import { aChoice, aName, aNumber, aReference, aText, clearable, needed, optional, structure } from './argument.ts';
import { editPart, editSource, refuse, setFields, setList, without } from './edit.ts';
import { freeId, idsOf } from './next-id.ts';
import type { Selection } from './selection.ts';
import { leadingPart } from './selection.ts';
import { changedFields, count, partName } from './wording.ts';

const part = needed(aReference('Part', 'part'));
const source = needed(aReference('Source', 'source'));
const money = { min: 0, max: 1e12 };

const sourceWith = (cabin: Cabin, values: { readonly part?: string | undefined; readonly source?: string | undefined }): Source | undefined =>
  cabinIndex(cabin).parts.get(values.part ?? '')?.sources.find((one) => one.id === values.source);

export const addSource = defineAction({
  id: 'source.add', title: 'Add source', keywords: ['supplier', 'alternative', 'new'], group: 'Sources', context: 'part',
  arguments: {
    part,
    supplier: needed(aReference('Supplier', 'supplier')),
    material: needed(aName('Material')),
    surface: optional(aChoice('Surface', surfaces)),
    status: optional(aChoice('Status', sourceStatuses)),
  },
  label: ({ part: id, supplier }, cabin) => `Add a source of ${partName(cabin, id)} from ${cabinIndex(cabin).suppliers.get(supplier)?.name ?? supplier}`,
  edit: (cabin, { part: id, supplier, material, surface = 'solid', status = 'candidate' }) => editPart(cabin, id, (of) => {
    const made: Source = { id: freeId(`${id}-${supplier}`, idsOf(of.sources)), supplier, material, surface, status, specimens: [] };
    return setList(of, 'sources', [...of.sources, made]);
  }),
});

const onlySource = (cabin: Cabin, selection: Selection): string | undefined =>
  ((cabinIndex(cabin).parts.get(leadingPart(selection) ?? '')?.sources.length ?? 0) < 2 ? 'A part has at least one source.' : undefined);

export const removeSource = defineAction({
  id: 'source.remove', title: 'Remove source', keywords: ['supplier', 'delete'], keys: ['Delete'], group: 'Sources', context: 'source',
  arguments: { part, source },
  label: (values, cabin) => {
    const specimens = sourceWith(cabin, values)?.specimens.length ?? 0;
    return `Remove source ${values.source} of ${partName(cabin, values.part)}${specimens === 0 ? '' : ` with ${count(specimens, 'specimen')}`}`;
  },
  unless: onlySource,
  edit: (cabin, { part: id, source: gone }) => editPart(cabin, id, (of) => {
    if (of.sources.length < 2) return refuse('too-few', 'the only source of the part', 'at least one source of a part', 'Add another source first.');
    const kept = setList(of, 'sources', without(of.sources, (one) => one.id === gone));
    return of.source === gone ? setFields(kept, { source: null }) : kept;
  }),
});

const sourceFields = {
  part, source,
  supplier: optional(aReference('Supplier', 'supplier')),
  plant: clearable(aName('Plant')),
  material: optional(aName('Material')),
  surface: optional(aChoice('Surface', surfaces)),
  status: optional(aChoice('Status', sourceStatuses)),
  share: clearable(aNumber('Share of the volume', { min: 0, max: 1 })),
  leadWeeks: clearable(aNumber('Lead time', { min: 0, max: 1000, unit: 'weeks' })),
  tool: clearable(aName('Tool')),
  cavities: clearable(aNumber('Cavities', { min: 1, max: 1000, whole: true })),
  note: clearable(aText('Note')),
};

export const setSource = defineAction({
  id: 'source.set', title: 'Edit source', keywords: ['fields', 'material', 'surface', 'status', 'share', 'lead time'], group: 'Sources', context: 'source',
  arguments: sourceFields,
  label: (values, cabin) => `Change ${changedFields(sourceFields, values, ['part', 'source'])} of source ${values.source} of ${partName(cabin, values.part)}`,
  edit: (cabin, { part: id, source: of, ...changes }) => editSource(cabin, id, of, (one) => setFields(one, changes)),
  subject: sourceWith,
});

const volumePrices = list(
  object<VolumePrice>('a price by volume', { fromVolume: required(number({ min: 0, max: 1e9 })), piecePrice: required(number(money)) }),
  { max: 100, items: 'prices by volume' },
);
const priceFields = {
  part, source,
  piecePrice: clearable(aNumber('Piece price', money)),
  volumePrices: clearable(structure('Prices by volume', volumePrices)),
  freightPerPiece: clearable(aNumber('Freight, packing and insurance of a piece', money)),
  dutyShare: clearable(aNumber('Duty as a share of the price', { min: 0, max: 10 })),
  toolCost: clearable(aNumber('Tool cost', money)),
  setupCost: clearable(aNumber('Set-up cost', money)),
  currency: clearable(aName('Currency')),
};

export const setPrices = defineAction({
  id: 'source.set-prices', title: 'Set prices of source', keywords: ['cost', 'money', 'currency', 'tool'], group: 'Sources', context: 'source',
  arguments: priceFields,
  label: (values, cabin) => `Change ${changedFields(priceFields, values, ['part', 'source'])} of source ${values.source} of ${partName(cabin, values.part)}`,
  edit: (cabin, { part: id, source: of, ...changes }) => editSource(cabin, id, of, (one) => setFields(one, changes)),
  subject: sourceWith,
});

export const setGrain = defineAction({
  id: 'source.set-grain', title: 'Set grain of source', keywords: ['texture', 'depth', 'VDI 3400'], group: 'Sources', context: 'source',
  arguments: {
    part, source,
    grain: clearable(aName('Grain')),
    depthUm: clearable(aNumber('Depth', { min: 0, max: 10_000, unit: 'µm' })),
    vdiClass: clearable(aNumber('Class of VDI 3400', { min: 0, max: 45 })),
  },
  label: ({ part: id, grain }, cabin) => (grain === null ? `Take the grain off a source of ${partName(cabin, id)}` : `Set the grain of a source of ${partName(cabin, id)}`),
  edit: (cabin, { part: id, source: of, grain, ...sizes }) => editSource(cabin, id, of, (one) => {
    if (grain === null) return setFields(one, { grain: null });
    const kept = one.grain ?? (grain === undefined ? undefined : { id: grain });
    if (kept === undefined) return refuse('missing-field', 'a source without a grain', 'the name of the grain', 'Name the grain first.');
    return setFields(one, { grain: setFields(kept, { id: grain, ...sizes }) });
  }),
  subject: (cabin, values) => {
    const grain = sourceWith(cabin, values)?.grain;
    return grain === undefined ? undefined : { grain: grain.id, depthUm: grain.depthUm, vdiClass: grain.vdiClass };
  },
});

const colours = list(
  object<NamedColour>('a named colour', {
    name: required(name('the name of the colour')), areaShare: required(number({ min: 0, max: 1 })), lab: member(labShape()),
  }),
  { min: 1, max: 100, items: 'named colours' },
);

export const setNamedColours = defineAction({
  id: 'source.set-named-colours', title: 'Set colours of a patterned source', keywords: ['pattern', 'area share'], group: 'Sources', context: 'source',
  arguments: { part, source, namedColours: clearable(structure('Named colours', colours)) },
  label: ({ part: id }, cabin) => `Change the named colours of a source of ${partName(cabin, id)}`,
  edit: (cabin, { part: id, source: of, namedColours }) => editSource(cabin, id, of, (one) => setFields(one, { namedColours })),
  subject: sourceWith,
});

export const setStandsBy = defineAction({
  id: 'source.set-stands-by', title: 'Pick the specimen a source stands by', keywords: ['standing', 'stage', 'specimen', 'judged on'], group: 'Sources', context: 'source',
  arguments: { part, source, stage: needed(aName('Stage')), specimen: clearable(aReference('Specimen', 'specimen')) },
  label: ({ part: id, stage, specimen }, cabin) => (typeof specimen === 'string'
    ? `Let ${partName(cabin, id)} be judged on ${specimen} at stage ${stage}`
    : `Leave the specimen of ${partName(cabin, id)} at stage ${stage} to the usual order`),
  edit: (cabin, { part: id, source: of, stage, specimen = null }) => editSource(cabin, id, of, (one) => {
    const others = Object.entries(one.standsBy ?? {}).filter(([other]) => other !== stage);
    const picks = specimen === null ? others : [...others, [stage, specimen] as const];
    return setFields(one, { standsBy: picks.length === 0 ? null : Object.fromEntries(picks) });
  }),
});

export const sourceActions = [addSource, removeSource, setSource, setPrices, setGrain, setNamedColours, setStandsBy] as const;
