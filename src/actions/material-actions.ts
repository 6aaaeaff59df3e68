import type { Cabin } from '../cabin/cabin.ts';
import { standardDeviations } from '../rules/material-schema.ts';
import { materialValues } from '../rules/rule-book.ts';
import type { MaterialClass } from '../rules/rule-book.ts';
import { defineAction } from './action.ts';
import { aChoice, aFlag, aName, aNumber, aReference, aText, clearable, needed, optional } from './argument.ts';
import type { Asked } from './argument.ts';
import { bookOfCabin, editBook } from './carried-book.ts';
import { refuse, setFields } from './edit.ts';
import type { Edited } from './edit.ts';
import { glossRuleFields, glossRuleValues, withGlossRule } from './gloss-rule-fields.ts';
import { argumentsOf, at, readAtPaths, setAtPaths } from './path-fields.ts';
import { changedFields } from './wording.ts';

const material = needed(aReference('Material', 'material'));
const rowOf = (cabin: Cabin, name: string | undefined): MaterialClass | undefined => bookOfCabin(cabin)?.materials.find((row) => row.material === name);

const editRow = (cabin: Cabin, name: string, edit: (row: MaterialClass) => MaterialClass): Edited<Cabin> => editBook(cabin, (book) => {
  const place = book.materials.findIndex((row) => row.material === name);
  const row = book.materials[place];
  if (row === undefined) return refuse('unknown-material', JSON.stringify(name), 'a material of the rule book');
  const edited = edit(row);
  return edited === row ? book : { ...book, materials: book.materials.with(place, edited) };
});

const threeSds: Asked<readonly [number, number, number]> = { label: 'Sd of one reading in L*, a*, b*', kind: 'numbers', schema: standardDeviations() };

const rowFields = {
  family: at(optional(aName('Family')), 'family'),
  colourLimit: at(optional(aNumber('Colour limit', { above: 0, max: 1000 })), 'colourLimit'),
  kL: at(optional(aNumber('kL', { above: 0, max: 100 })), 'kL'),
  lightnessCap: at(clearable(aNumber('Cap on |dL*| in the dark', { above: 0, max: 1000 })), 'lightnessCap'),
  readingSd: at(optional(threeSds), 'readingSd'),
  glossSd: at(optional(aNumber('Sd of one gloss reading', { above: 0, max: 100, unit: 'GU' })), 'glossSd'),
  spots: at(optional(aNumber('Spots wanted', { min: 1, max: 1000, whole: true })), 'wanted', 'spots'),
  rotations: at(clearable(aNumber('Rotations at each', { min: 1, max: 360, whole: true })), 'wanted', 'rotations'),
  specimens: at(clearable(aNumber('Specimens wanted', { min: 1, max: 1000, whole: true })), 'wanted', 'specimens'),
  masterColourLimit: at(optional(aNumber('Colour limit to the master', { above: 0, max: 1000 })), 'masterColourLimit'),
  masterGlossLimit: at(clearable(aNumber('Gloss limit to the master', { above: 0, max: 1000, unit: 'GU' })), 'masterGlossLimit'),
  advisory: at(clearable(aFlag('Colour is advisory only')), 'advisory'),
  sameGeometryOnly: at(clearable(aFlag('Compared in the same geometry only')), 'sameGeometryOnly'),
  basis: at(optional(aText('Basis of the row')), 'basis'),
} as const;

const rowArguments = { material, ...argumentsOf(rowFields) };

export const setMaterial = defineAction({
  id: 'material.set', title: 'Edit class of material', keywords: ['limit', 'kL', 'spots', 'repeatability', 'family', 'rule book'], group: 'Rules', context: 'material',
  arguments: rowArguments,
  label: (values) => `Change ${changedFields(rowArguments, values, ['material'])} of ${values.material} in the rule book`,
  edit: (cabin, { material: name, ...changes }) => editRow(cabin, name, (row) => setAtPaths(row, rowFields, changes)),
  subject: (cabin, values) => {
    const row = rowOf(cabin, values.material);
    return row === undefined ? undefined : readAtPaths(row, rowFields);
  },
});

const glossArguments = { material, ...glossRuleFields };

export const setMaterialGloss = defineAction({
  id: 'material.set-gloss', title: 'Set gloss limit of material', keywords: ['gloss', 'angle', 'haze', 'level', 'rule book'], group: 'Rules', context: 'material',
  arguments: glossArguments,
  label: (values) => `Change ${changedFields(glossArguments, values, ['material'])} of ${values.material} in the rule book`,
  edit: (cabin, { material: name, ...values }) => editRow(cabin, name, (row) => setFields(row, { gloss: withGlossRule(row.gloss, values) })),
  subject: (cabin, values) => glossRuleValues(rowOf(cabin, values.material)?.gloss),
});

export const setMaterialBasis = defineAction({
  id: 'material.set-basis', title: 'Set basis of a value of a material', keywords: ['source', 'practice', 'rule book'], group: 'Rules', context: 'material',
  arguments: { material, value: needed(aChoice('Value', materialValues)), basis: clearable(aText('Basis')) },
  label: ({ material: name, value }) => `Change the basis of ${value} of ${name} in the rule book`,
  edit: (cabin, { material: name, value, basis }) => editRow(cabin, name, (row) => setAtPaths(row, { basis: at(clearable(aText('Basis')), 'bases', value) }, { basis })),
  subject: (cabin, values) => ({ basis: values.value === undefined ? undefined : rowOf(cabin, values.material)?.bases?.[values.value] }),
});

export const addMaterial = defineAction({
  id: 'material.add', title: 'Add material to the rule book', keywords: ['class', 'new', 'copy'], group: 'Rules', context: 'none',
  arguments: { name: needed(aName('Name')), like: needed(aReference('Begin like', 'material')) },
  label: ({ name }) => `Add the material ${name} to the rule book`,
  edit: (cabin, { name, like }) => editBook(cabin, (book) => {
    const place = book.materials.findIndex((row) => row.material === like);
    const row = book.materials[place];
    if (row === undefined) return refuse('unknown-material', JSON.stringify(like), 'a material of the rule book');
    return { ...book, materials: book.materials.toSpliced(place + 1, 0, { ...row, material: name }) };
  }),
});

export const removeMaterial = defineAction({
  id: 'material.remove', title: 'Remove material from the rule book', keywords: ['class', 'delete'], group: 'Rules', context: 'material',
  arguments: { material },
  label: ({ material: name }) => `Remove the material ${name} from the rule book`,
  edit: (cabin, { material: name }) => editBook(cabin, (book) => {
    const named = book.rules.filter(({ pair }) => pair.includes(name));
    if (named.length > 0) return refuse('still-used', `the rules ${named.map(({ id }) => id).join(', ')} name it`, 'a material that no rule names', 'Remove these rules first.');
    return { ...book, materials: book.materials.filter((row) => row.material !== name) };
  }),
});

export const materialActions = [addMaterial, setMaterial, setMaterialGloss, setMaterialBasis, removeMaterial] as const;
