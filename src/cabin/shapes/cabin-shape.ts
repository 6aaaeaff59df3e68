import type { Cabin } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { date, describeValue, jsonObject, list, name, number, object, oneOf, optional, plain, remark, required, withDefault } from '../schema/index.ts';
import { jointShape } from './joint-shape.ts';
import { partShape } from './part-shape.ts';
import { planningShape } from './planning-shape.ts';
import { conditionsShape, fileShape, instrumentShape, lightShape, runShape, supplierShape, zoneShape } from './register-shapes.ts';
import { specimenShape } from './specimen-shape.ts';
import { tileSetShape } from './tile-set-shape.ts';

const ruleBookName = name('the id of a rule book');
const ruleBookObject = jsonObject();
const ruleBook = plain<string | object>('the id of a rule book, or a rule book', (value, faults) => {
  if (typeof value === 'string') return ruleBookName.read(value, faults);
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return ruleBookObject.read(value, faults);
  faults.add('wrong-type', { expected: 'the id of a rule book, or a rule book', found: describeValue(value) });
  return undefined;
});

/** The most items that each list of the document may hold. */
export const cabinListSizes = {
  zones: 1000, suppliers: 5000, instruments: 1000, conditions: 10_000, files: 10_000, lights: 200, masters: 5000, tileSets: 100, parts: 5000, joints: 20_000, runs: 1000,
} as const;
const sizes = cabinListSizes;

/** The shape of the whole document, in the order in which it is written. */
export const cabinShape: Schema<Cabin> = object<Cabin>('a cabin', {
  format: required(oneOf(['adjoin-cabin'])),
  version: required(oneOf([1])),
  id: required(name('the id of the cabin')),
  name: required(name('the name of the cabin')),
  trimLevel: optional(name()),
  colourway: optional(name()),
  phase: optional(name()),
  revision: optional(name()),
  asOf: required(date()),
  stage: optional(name('the name of a stage')),
  note: optional(remark()),
  volume: optional(number({ min: 0, max: 1e9 })),
  planning: optional(planningShape),
  zones: withDefault(list(zoneShape, { max: sizes.zones, items: 'zones' }), []),
  suppliers: withDefault(list(supplierShape, { max: sizes.suppliers, items: 'suppliers' }), []),
  instruments: withDefault(list(instrumentShape, { max: sizes.instruments, items: 'instruments' }), []),
  conditions: withDefault(list(conditionsShape, { max: sizes.conditions, items: 'conditions' }), []),
  files: optional(list(fileShape, { max: sizes.files, items: 'files' })),
  lights: optional(list(lightShape, { max: sizes.lights, items: 'lights' })),
  masters: optional(list(specimenShape, { max: sizes.masters, items: 'masters' })),
  tileSets: optional(list(tileSetShape, { max: sizes.tileSets, items: 'tile sets' })),
  parts: required(list(partShape, { max: sizes.parts, items: 'parts' })),
  joints: withDefault(list(jointShape, { max: sizes.joints, items: 'joints' }), []),
  runs: optional(list(runShape, { max: sizes.runs, items: 'runs' })),
  ruleBook: optional(ruleBook),
});
