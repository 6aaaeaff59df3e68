import { specimenKinds } from '../cabin/cabin.ts';
import type { Schema } from '../cabin/schema/index.ts';
import { boolean, date, dateTime, jsonValue, list, name, number, object, oneOf, optional, patternText, record, refine, remark, required, variant, withDefault } from '../cabin/schema/index.ts';
import { contrastShape } from '../cabin/shapes/contrast-shape.ts';
import { labDifferenceShape, labShape } from '../cabin/shapes/lab-shape.ts';
import { highestGloss, parametersShape, spotShape } from '../cabin/shapes/reading-shape.ts';
import { highestReflectance, reflectances } from '../cabin/shapes/reflectances.ts';
import { lightShape } from '../cabin/shapes/register-shapes.ts';
import { addWavelengthFault } from '../cabin/shapes/wavelengths.ts';
import { geometries } from '../readings/reading.ts';
import type { FoundCielab, FoundConditions, FoundData, FoundDifference, FoundGloss, FoundSpectrum, FoundTexture, ReadingRecord, ReadingSet } from './reading-set.ts';
import { textureFields } from './column-names.ts';
import { partialGeometries } from './reading-set.ts';

const conditionsShape = object<FoundConditions>('conditions', {
  instrument: optional(name('the name of an instrument')),
  serial: optional(name()),
  calibratedOn: optional(date()),
  geometry: optional(oneOf([...geometries, ...partialGeometries])),
  apertureMm: optional(number({ above: 0, max: 1000, unit: 'mm' })),
  uv: optional(oneOf(['included', 'excluded', 'adjusted', 'unknown'] as const)),
  aspecularDeg: optional(number({ min: -90, max: 180, unit: 'degrees' })),
  backing: optional(name()),
  temperatureC: optional(number({ min: -60, max: 200, unit: '°C' })),
});

const values = reflectances();
const spectrumShape: Schema<FoundSpectrum> = refine(
  object<FoundSpectrum>('a spectrum', {
    quantity: required(oneOf(['spectrum'])),
    startNm: required(number({ unit: 'nm' })),
    stepNm: required(number({ unit: 'nm' })),
    values: required(list(number({ min: 0, max: 100 * highestReflectance }), { min: 2, max: 1000, items: 'reflectance factors' })),
    scaleUndeclared: optional(trueOnly()),
    bandpassCorrected: optional(boolean()),
  }),
  (spectrum, faults) => {
    addWavelengthFault(spectrum, faults);
    if (spectrum.scaleUndeclared === true) return;
    faults.path.push('values');
    values.read(spectrum.values, faults);
    faults.path.pop();
  },
);

function trueOnly(): Schema<true> {
  const either = boolean();
  return {
    ...either,
    expected: 'true',
    read: (value, faults) => (either.read(value, faults) === true ? true : undefined),
  };
}

const viewed = { light: optional(name('the name of a light')), observer: optional(oneOf([2, 10] as const)) };
const dataShape: Schema<FoundData> = variant<FoundData, 'quantity'>('data', 'quantity', 'unknown-quantity', {
  spectrum: spectrumShape,
  cielab: object<FoundCielab>('CIELAB values', { quantity: required(oneOf(['cielab'])), lab: required(labShape()), ...viewed }),
  difference: object<FoundDifference>('a difference', { quantity: required(oneOf(['difference'])), difference: required(labDifferenceShape()), ...viewed, master: optional(name('the name of a master')) }),
  gloss: object<FoundGloss>('gloss', {
    quantity: required(oneOf(['gloss'])),
    angle: required(oneOf([20, 60, 85] as const, 'unknown-gloss-angle')),
    gloss: required(number({ min: 0, max: highestGloss, unit: 'GU' })),
    haze: optional(number({ min: 0, max: highestGloss })),
    direction: optional(oneOf(['along', 'across'])),
  }),
  texture: refine(object<FoundTexture>('texture', { quantity: required(oneOf(['texture'])), parameters: required(parametersShape), visible: optional(contrastShape) }), ({ parameters, visible }, faults) => {
    if (visible === undefined && !textureFields.some((field) => parameters[field] !== undefined)) faults.add('nothing-measured', { expected: 'at least one texture parameter', found: 'none that is known' });
  }),
});

const recordShape: Schema<ReadingRecord> = object<ReadingRecord>('a reading', {
  id: optional(name()),
  part: optional(name()),
  source: optional(name()),
  supplier: optional(name()),
  specimen: required(name('the name of a specimen')),
  kind: optional(oneOf(specimenKinds)),
  lot: optional(name()),
  stage: optional(name()),
  spot: optional(spotShape),
  colour: optional(name()),
  rotationDeg: optional(number({ min: -360, max: 360, unit: 'degrees' })),
  averagedFrom: optional(number({ min: 1, max: 10_000, whole: true })),
  measuredAt: optional(dateTime()),
  conditions: required(number({ min: 0, max: 1e6, whole: true })),
  data: required(dataShape),
  labels: optional(record('labels', remark())),
  row: required(number({ min: 1, max: 1e9, whole: true })),
  line: optional(number({ min: 1, max: 1e9, whole: true })),
});

/** The tool's own JSON of readings. Questions are made anew from what the readings leave open, whatever the file says. */
export const readingSetShape: Schema<Omit<ReadingSet, 'questions'>> = refine(
  object<Omit<ReadingSet, 'questions'> & { readonly questions?: unknown }>('a set of readings', {
    format: required(oneOf(['adjoin-readings'], 'unknown-format')),
    version: required(oneOf([1], 'unknown-version')),
    reader: withDefault(name(), 'json'),
    file: optional(name()),
    sha256: optional(patternText(/^[\da-f]{64}$/u, 'bad-sha256', '64 small hexadecimal digits')),
    created: optional(dateTime()),
    conditions: withDefault(list(conditionsShape, { max: 100_000, items: 'conditions' }), []),
    records: withDefault(list(recordShape, { max: 1_000_000, items: 'readings' }), []),
    lights: withDefault(list(lightShape, { max: 1000, items: 'lights' }), []),
    questions: optional(jsonValue()),
  }),
  (set, faults) => {
    set.records.forEach((entry, index) => {
      if (entry.conditions < set.conditions.length) return;
      faults.add('unknown-conditions', { expected: `an index below ${set.conditions.length}`, found: String(entry.conditions) }, `records[${index}].conditions`);
    });
  },
);
