import type { Cabin, Joint, Part, Source, Specimen } from '../../src/cabin/cabin.ts';
import type { Conditions, Instrument, Reading } from '../../src/readings/reading.ts';

/** Invented: the smallest cabin that has a joint, made to order for one test. */

export const startNm = 400;
export const stepNm = 10;
export const nanometres = Array.from({ length: 31 }, (_, index) => startNm + stepNm * index);

/** A spectrum from a function of the wavelength, 400 to 700 nm in steps of 10 nm. */
export const spectrumOf = (reflectance: (nm: number) => number): number[] => nanometres.map(reflectance);

export interface SideOptions {
  readonly material?: string;
  readonly surface?: Source['surface'];
  readonly zone?: string;
  readonly curve?: readonly number[];
  readonly spots?: number;
  readonly conditions?: string;
  readonly readings?: readonly Reading[];
  readonly gloss60?: number | null;
  readonly glossSpots?: number;
  readonly glossConditions?: string;
  readonly sa?: number;
  readonly sal?: number;
  readonly textureSpots?: number;
  readonly textureConditions?: string;
  readonly grain?: string;
  readonly target?: Part['target'];
  readonly specimens?: readonly Specimen[];
}

export const conditionsList: readonly Conditions[] = [
  { id: 'annular', instrument: 'one', geometry: '45a:0', apertureMm: 12, uv: 'excluded' },
  { id: 'annular-two', instrument: 'two', geometry: '45a:0', apertureMm: 12, uv: 'excluded' },
  { id: 'sphere', instrument: 'one', geometry: 'di:8', apertureMm: 12, uv: 'excluded' },
  { id: 'gloss', instrument: 'meter' },
  { id: 'areal', instrument: 'profiler' },
  { id: 'areal-two', instrument: 'profiler-two' },
  { id: 'gloss-two', instrument: 'meter-two' },
];

export const instrumentList: readonly Instrument[] = [
  { id: 'one', name: 'Spectrophotometer one', kind: 'spectrophotometer', serial: '1', calibratedOn: '2026-01-01', calibrationDays: 365 },
  { id: 'two', name: 'Spectrophotometer two', kind: 'spectrophotometer', serial: '2', calibratedOn: '2026-01-01', calibrationDays: 365 },
  { id: 'meter', name: 'Glossmeter', kind: 'glossmeter', serial: '3', calibratedOn: '2026-01-01', calibrationDays: 365 },
  { id: 'profiler', name: 'Profiler', kind: 'areal profiler', serial: '4', calibratedOn: '2026-01-01', calibrationDays: 365 },
  { id: 'profiler-two', name: 'Profiler two', kind: 'areal profiler', serial: '5', calibratedOn: '2026-01-01', calibrationDays: 365 },
  { id: 'meter-two', name: 'Glossmeter two', kind: 'glossmeter', serial: '6', calibratedOn: '2026-01-01', calibrationDays: 365 },
];

/** Equal readings on every spot: the spread is then the assumed one, and the mean is the curve itself. */
export const spectra = (curve: readonly number[], spots = 5, conditions = 'annular'): Reading[] => Array.from({ length: spots }, (_, spot) => ({
  quantity: 'spectrum', spot: { name: `s${spot}` }, conditions, startNm, stepNm, values: [...curve], measuredAt: '2026-02-01',
}));

export const glosses = (gloss: number, spots = 5, angle: 20 | 60 | 85 = 60, conditions = 'gloss'): Reading[] => Array.from({ length: spots }, (_, spot) => ({
  quantity: 'gloss', spot: { name: `g${spot}` }, conditions, angle, gloss, measuredAt: '2026-02-01',
}));

const textures = (sa: number, { sal = 0.4, textureSpots = 3, textureConditions = 'areal' }: SideOptions): Reading[] => Array.from({ length: textureSpots }, (_, spot) => ({
  quantity: 'texture', spot: { name: `t${spot}` }, conditions: textureConditions, parameters: { saUm: sa, salMm: sal, str: 0.7 }, measuredAt: '2026-02-01',
}));

/** One part with one source and one specimen. */
export function partOf(id: string, name: string, options: SideOptions): Part {
  const readings: Reading[] = [
    ...(options.readings ?? spectra(options.curve ?? spectrumOf(() => 0.06), options.spots ?? 5, options.conditions ?? 'annular')),
    ...(options.gloss60 === null ? [] : glosses(options.gloss60 ?? 2, options.glossSpots ?? 5, 60, options.glossConditions)),
    ...(options.sa === undefined ? [] : textures(options.sa, options)),
  ];
  return {
    id, name, zone: options.zone ?? 'door', hand: 'none',
    ...(options.target === undefined ? {} : { target: options.target }),
    sources: [{
      id: `${id}-source`, supplier: 'maker', material: options.material ?? 'moulded', surface: options.surface ?? 'solid', status: 'approved',
      ...(options.grain === undefined ? {} : { grain: { id: options.grain } }),
      specimens: options.specimens ?? [{ id: `${id}-specimen`, kind: 'tool part', lot: { id: 'lot-1' }, producedOn: '2026-01-20', readings }],
    }],
  };
}

export function twoPartCabin(first: SideOptions, second: SideOptions, joint: Partial<Joint> = {}, more: Partial<Cabin> = {}): Cabin {
  return {
    format: 'adjoin-cabin', version: 1, id: 'two', name: 'Two parts', asOf: '2026-03-01',
    zones: [{ id: 'door', name: 'Door' }, { id: 'upper-dash', name: 'Upper dash' }],
    suppliers: [{ id: 'maker', name: 'An invented maker' }],
    instruments: instrumentList, conditions: conditionsList,
    parts: [partOf('a', 'Panel A', first), partOf('b', 'Panel B', second)],
    joints: [{ id: 'a-b', parts: ['a', 'b'], kind: 'gap', gapMm: 1, viewMm: 700, lengthMm: 300, ...joint }],
    ...more,
  };
}
