import type { Agreement, Conditions, Instrument } from '../../readings/reading.ts';
import { geometries } from '../../readings/reading.ts';
import type { Cap, Run, SourceFile, Supplier, UserLight, Zone } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { date, list, name, number, object, oneOf, optional, patternText, record, refine, remark, required } from '../schema/index.ts';
import { covariance, symmetricMatrix } from './covariance.ts';

const capShape = object<Cap>('a cap', {
  id: required(name('the id of the cap')),
  quantity: required(oneOf(['gloss', 'lightness'] as const)),
  max: required(number({ min: 0, max: 2000 })),
  angle: optional(oneOf([20, 60, 85] as const, 'unknown-gloss-angle')),
  basis: required(remark()),
  caution: optional(remark()),
});

export const zoneShape: Schema<Zone> = object<Zone>('a zone', {
  id: required(name('the id of the zone')),
  name: required(name('the name of the zone')),
  caps: optional(list(capShape, { max: 100, items: 'caps' })),
});

export const supplierShape: Schema<Supplier> = object<Supplier>('a supplier', {
  id: required(name('the id of the supplier')),
  name: required(name('the name of the supplier')),
  setupCost: optional(number({ min: 0, max: 1e12 })),
});

const agreementShape = object<Agreement>('an agreement', {
  date: required(date()),
  tiles: required(number({ min: 1, max: 10_000, whole: true })),
  covariance: optional(covariance()),
  glossSd: optional(number({ min: 0, max: 100, unit: 'GU' })),
  textureRelativeSd: optional(number({ min: 0, max: 1 })),
  shared: optional(record('an object of covariances by instrument', symmetricMatrix())),
});

export const instrumentShape: Schema<Instrument> = object<Instrument>('an instrument', {
  id: required(name('the id of the instrument')),
  name: required(name('the name of the instrument')),
  kind: required(oneOf(['spectrophotometer', 'colorimeter', 'glossmeter', 'areal profiler'] as const)),
  serial: optional(name()),
  calibratedOn: optional(date()),
  calibrationDays: optional(number({ min: 1, max: 36_500, whole: true, unit: 'days' })),
  agreement: optional(agreementShape),
  note: optional(remark()),
});

export const conditionsShape: Schema<Conditions> = object<Conditions>('the conditions of readings', {
  id: required(name('the id of the conditions')),
  instrument: required(name('the id of an instrument')),
  geometry: optional(oneOf(geometries)),
  apertureMm: optional(number({ above: 0, max: 1000, unit: 'mm' })),
  uv: optional(oneOf(['included', 'excluded', 'adjusted', 'unknown'] as const)),
  aspecularDeg: optional(number({ min: -90, max: 180, unit: 'degrees' })),
  backing: optional(name()),
  temperatureC: optional(number({ min: -60, max: 200, unit: '°C' })),
});

export const fileShape: Schema<SourceFile> = object<SourceFile>('a file', {
  id: required(name('the id of the file')),
  name: required(name('the name of the file')),
  sha256: required(patternText(/^[\da-f]{64}$/u, 'bad-sha256', '64 small hexadecimal digits')),
});

const power = list(number({ min: 0, max: 1e12 }), { min: 2, max: 2000, items: 'powers' });

export const lightShape: Schema<UserLight> = refine(
  object<UserLight>('a light', {
    id: required(name('the id of the light')),
    name: required(name('the name of the light')),
    startNm: required(number({ min: 200, max: 500, unit: 'nm' })),
    stepNm: required(number({ above: 0, max: 100, unit: 'nm' })),
    values: required(power),
  }),
  (light, faults) => {
    const endNm = light.startNm + light.stepNm * (light.values.length - 1);
    faults.path.push('values');
    if (endNm > 2500) faults.add('wavelength-out-of-range', { expected: 'a last wavelength of at most 2500 nm', found: `${endNm} nm` });
    if (light.startNm > 420 || endNm < 680) {
      faults.add('wavelengths-missing', {
        expected: 'powers from 420 nm or below to 680 nm or above', found: `${light.startNm} to ${endNm} nm`,
      });
    }
    if (light.values.every((value) => value === 0)) faults.add('light-without-power', {
      expected: 'a power above zero somewhere', found: 'zeros only',
    });
    faults.path.pop();
  },
);

export const runShape: Schema<Run> = object<Run>('a run', {
  id: required(name('the id of the run')),
  name: optional(name('the name of the run')),
  parts: required(list(name('the id of a part'), { min: 2, max: 1000, items: 'parts' })),
});
