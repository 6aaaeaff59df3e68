import type { ArealParameters, CielabReading, DifferenceReading, GlossReading, Reading, SpectrumReading, Spot, TextureReading } from '../../readings/reading.ts';
import type { Schema } from '../schema/index.ts';
import { boolean, dateTime, name, number, object, oneOf, optional, refine, required, variant } from '../schema/index.ts';
import { contrastShape } from './contrast-shape.ts';
import { labDifferenceShape, labShape } from './lab-shape.ts';
import { reflectances } from './reflectances.ts';
import { addWavelengthFault } from './wavelengths.ts';

const placeOnPart = number({ min: -100_000, max: 100_000, unit: 'mm' });
export const spotShape: Schema<Spot> = object<Spot>('a spot', {
  name: required(name('the name of the spot')),
  xMm: optional(placeOnPart),
  yMm: optional(placeOnPart),
});

const common = {
  spot: required(spotShape),
  conditions: required(name('the id of the conditions')),
  rotationDeg: optional(number({ min: -360, max: 360, unit: 'degrees' })),
  averagedFrom: optional(number({ min: 1, max: 10_000, whole: true })),
  measuredAt: optional(dateTime()),
  file: optional(name('the id of a file')),
  row: optional(number({ min: 1, max: 1e9, whole: true })),
  outlier: optional(boolean()),
  colour: optional(name('the name of a colour of a pattern')),
};

const observer = oneOf([2, 10] as const);
const lightName = name('the name of a light');

const spectrumReading: Schema<SpectrumReading> = refine(
  object<SpectrumReading>('a spectrum', {
    quantity: required(oneOf(['spectrum'])),
    ...common,
    startNm: required(number({ unit: 'nm' })),
    stepNm: required(number({ unit: 'nm' })),
    values: required(reflectances()),
    bandpassCorrected: optional(boolean()),
  }),
  addWavelengthFault,
);

const cielabReading = object<CielabReading>('a CIELAB reading', {
  quantity: required(oneOf(['cielab'])),
  ...common,
  lab: required(labShape()),
  light: required(lightName),
  observer: required(observer),
});

const differenceReading = object<DifferenceReading>('a difference to a master', {
  quantity: required(oneOf(['difference'])),
  ...common,
  difference: required(labDifferenceShape()),
  light: required(lightName),
  observer: required(observer),
  master: required(name('the id of a master')),
});

/** Gloss units reach about 1000 to 2000 on mirrors at 20 degrees (ISO 2813 scale, black glass = 100). */
export const highestGloss = 2000;

const glossReading = object<GlossReading>('a gloss reading', {
  quantity: required(oneOf(['gloss'])),
  ...common,
  angle: required(oneOf([20, 60, 85] as const, 'unknown-gloss-angle')),
  gloss: required(number({ min: 0, max: highestGloss, unit: 'GU' })),
  haze: optional(number({ min: 0, max: highestGloss })),
  direction: optional(oneOf(['along', 'across'])),
});

const micrometres = number({ min: 0, max: 10_000, unit: 'µm' });
export const parametersShape = object<ArealParameters>('texture parameters', {
  saUm: optional(micrometres),
  sqUm: optional(micrometres),
  ssk: optional(number({ min: -1000, max: 1000 })),
  sku: optional(number({ min: 0, max: 1e6 })),
  spUm: optional(micrometres),
  svUm: optional(micrometres),
  szUm: optional(micrometres),
  salMm: optional(number({ above: 0, max: 1000, unit: 'mm' })),
  str: optional(number({ min: 0, max: 1 })),
  stdDeg: optional(number({ min: -180, max: 180, unit: 'degrees' })),
  sdq: optional(number({ min: 0, max: 1000 })),
  sdr: optional(number({ min: 0, max: 1e6 })),
  raUm: optional(micrometres),
  rzUm: optional(micrometres),
  rsmMm: optional(number({ above: 0, max: 1000, unit: 'mm' })),
  vdiClass: optional(number({ min: 0, max: 45 })),
});

const textureReading = refine(
  object<TextureReading>('a texture reading', {
    quantity: required(oneOf(['texture'])),
    ...common,
    parameters: required(parametersShape),
    visible: optional(contrastShape),
  }),
  (reading, faults) => {
    if (Object.keys(reading.parameters).length === 0 && reading.visible === undefined) faults.add('nothing-measured', {
      expected: 'at least one texture parameter, or a visible texture', found: 'none',
    });
  },
);

export const readingShape: Schema<Reading> = variant<Reading, 'quantity'>('a reading', 'quantity', 'unknown-quantity', {
  spectrum: spectrumReading,
  cielab: cielabReading,
  difference: differenceReading,
  gloss: glossReading,
  texture: textureReading,
});
