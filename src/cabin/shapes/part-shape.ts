import type { Part, Target } from '../cabin.ts';
import { hands } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { boolean, list, name, number, object, oneOf, optional, remark, required } from '../schema/index.ts';
import { mapPoints } from './map-points.ts';
import { partMendShape } from './planning-shape.ts';
import { sourceShape } from './source-shape.ts';

const targetShape = object<Target>('a target', {
  master: required(name('the id of a master')),
  colourLimit: optional(number({ above: 0, max: 1000 })),
  glossLimit: optional(number({ above: 0, max: 2000, unit: 'GU' })),
});

export const partShape: Schema<Part> = object<Part>('a part', {
  id: required(name('the id of the part')),
  name: required(name('the name of the part')),
  partNumber: optional(name()),
  revision: optional(name()),
  zone: required(name('the id of a zone')),
  outline: optional(mapPoints()),
  hand: optional(oneOf(hands)),
  mirrorOf: optional(name('the id of a part')),
  module: optional(name('the name of a module')),
  frozen: optional(boolean()),
  mend: optional(partMendShape),
  visibility: optional(number({ min: 0, max: 1, hint: 'The weight is a part of 1, not per cent.' })),
  flatAreaMm: optional(number({ above: 0, max: 1e6, unit: 'mm' })),
  curvatureRadiusMm: optional(number({ above: 0, max: 1e9, unit: 'mm' })),
  target: optional(targetShape),
  source: optional(name('the id of a source')),
  sources: required(list(sourceShape, { min: 1, max: 200, items: 'sources' })),
  note: optional(remark()),
});
