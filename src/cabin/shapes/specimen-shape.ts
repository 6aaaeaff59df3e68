import type { Exposure, Lot, Specimen } from '../cabin.ts';
import { specimenKinds } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { date, list, name, number, object, oneOf, optional, refine, remark, required, withDefault } from '../schema/index.ts';
import { readingShape } from './reading-shape.ts';

const lotShape = object<Lot>('a lot', {
  id: required(name('the id of the lot')),
  resin: optional(name()),
  paint: optional(name()),
  dye: optional(name()),
  hide: optional(name()),
  roll: optional(name()),
});

const exposureShape = object<Exposure>('an exposure', {
  stage: required(name('the name of the stage')),
  method: optional(name()),
  doseKjPerM2: optional(number({ min: 0, max: 1e9, unit: 'kJ/m²' })),
  hours: optional(number({ min: 0, max: 1e6, unit: 'h' })),
});

export const specimenShape: Schema<Specimen> = refine(
  object<Specimen>('a specimen', {
    id: required(name('the id of the specimen')),
    kind: required(oneOf(specimenKinds)),
    lot: optional(lotShape),
    tool: optional(name()),
    cavity: optional(name()),
    producedOn: optional(date()),
    phase: optional(name()),
    exposure: optional(exposureShape),
    parentMaster: optional(name('the id of a master')),
    issue: optional(name()),
    expires: optional(date()),
    remeasureOn: optional(date()),
    note: optional(remark()),
    readings: withDefault(list(readingShape, { max: 10_000, items: 'readings' }), []),
  }),
  ({ producedOn, expires }, faults) => {
    if (producedOn !== undefined && expires !== undefined && expires < producedOn) {
      faults.path.push('expires');
      faults.add('expires-before-date', { expected: `a day not before ${producedOn}`, found: expires });
      faults.path.pop();
    }
  },
);
