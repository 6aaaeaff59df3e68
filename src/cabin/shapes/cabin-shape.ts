import type { Cabin } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { date, describeValue, jsonObject, list, name, number, object, oneOf, optional, plain, remark, required, withDefault } from '../schema/index.ts';
import { jointShape } from './joint-shape.ts';
import { partShape } from './part-shape.ts';
import { conditionsShape, fileShape, instrumentShape, lightShape, runShape, supplierShape, zoneShape } from './register-shapes.ts';
import { specimenShape } from './specimen-shape.ts';

const ruleBookName = name('the id of a rule book');
const ruleBookObject = jsonObject();
const ruleBook = plain<string | object>('the id of a rule book, or a rule book', (value, faults) => {
  if (typeof value === 'string') return ruleBookName.read(value, faults);
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return ruleBookObject.read(value, faults);
  faults.add('wrong-type', { expected: 'the id of a rule book, or a rule book', found: describeValue(value) });
  return undefined;
});

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
  zones: withDefault(list(zoneShape, { max: 1000, items: 'zones' }), []),
  suppliers: withDefault(list(supplierShape, { max: 5000, items: 'suppliers' }), []),
  instruments: withDefault(list(instrumentShape, { max: 1000, items: 'instruments' }), []),
  conditions: withDefault(list(conditionsShape, { max: 10_000, items: 'conditions' }), []),
  files: optional(list(fileShape, { max: 10_000, items: 'files' })),
  lights: optional(list(lightShape, { max: 200, items: 'lights' })),
  masters: optional(list(specimenShape, { max: 5000, items: 'masters' })),
  parts: required(list(partShape, { max: 5000, items: 'parts' })),
  joints: withDefault(list(jointShape, { max: 20_000, items: 'joints' }), []),
  runs: optional(list(runShape, { max: 1000, items: 'runs' })),
  ruleBook: optional(ruleBook),
});
