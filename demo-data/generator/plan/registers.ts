import type { Supplier, UserLight, Zone } from '../../../src/cabin/cabin.ts';
import type { Lab } from '../../../src/quantities.ts';
import type { Conditions, Instrument } from '../../../src/readings/reading.ts';
import type { Grid } from '../physics/grid.ts';
import type { SessionName } from './types.ts';

export const suppliers: readonly Supplier[] = [
  { id: 'brennhalt', name: 'Brennhalt Skins', setupCost: 18000 },
  { id: 'orvandel', name: 'Orvandel Mouldings', setupCost: 24000 },
  { id: 'tulvering', name: 'Tulvering Plastics', setupCost: 21000 },
  { id: 'quillmoor', name: 'Quillmoor Weaving', setupCost: 9000 },
  { id: 'haddesk', name: 'Haddesk Hides', setupCost: 12000 },
  { id: 'sundvale', name: 'Sundvale Lacquer Line', setupCost: 30000 },
  { id: 'kestemoor', name: 'Kestemoor Surfaces', setupCost: 27000 },
  { id: 'pallendine', name: 'Pallendine Floor Goods', setupCost: 8000 },
  { id: 'ostrelund', name: 'Ostrelund Roof Linings', setupCost: 11000 },
];

const noCaution = 'Set by the demo; the responsible engineer decides.';

export const zones: readonly Zone[] = [
  { id: 'roof', name: 'Roof and pillars' },
  { id: 'upper-dash', name: 'Upper dash' },
  { id: 'dash', name: 'Instrument panel' },
  { id: 'console', name: 'Centre console' },
  { id: 'door-left', name: 'Door, left' },
  { id: 'door-right', name: 'Door, right' },
  { id: 'seats', name: 'Seats' },
  {
    id: 'floor',
    name: 'Floor and sills',
    caps: [{ id: 'floor-lightness', quantity: 'lightness', max: 80, basis: 'common practice, no source', caution: noCaution }],
  },
];

export const instruments: readonly Instrument[] = [
  {
    id: 'sp-1',
    name: 'Spectrophotometer 1, laboratory, 45:0',
    kind: 'spectrophotometer',
    serial: 'INV-4501',
    calibratedOn: '2026-04-07',
    calibrationDays: 365,
    agreement: {
      date: '2026-04-09',
      tiles: 12,
      covariance: [0.01, 0.001, -0.001, 0.001, 0.0025, 0.0005, -0.001, 0.0005, 0.0036],
      shared: { 'sp-2': [0.002, 0, 0, 0, 0.0005, 0, 0, 0, 0.0005] },
    },
  },
  {
    id: 'sp-2',
    name: 'Spectrophotometer 2, goods-in, 45:0',
    kind: 'spectrophotometer',
    serial: 'INV-4517',
    calibratedOn: '2026-03-16',
    calibrationDays: 365,
    agreement: {
      date: '2026-04-09',
      tiles: 12,
      covariance: [0.0625, 0.002, -0.004, 0.002, 0.0064, 0.001, -0.004, 0.001, 0.01],
      shared: { 'sp-1': [0.002, 0, 0, 0, 0.0005, 0, 0, 0, 0.0005] },
    },
  },
  {
    id: 'sp-3',
    name: 'Spectrophotometer 3, sphere',
    kind: 'spectrophotometer',
    serial: 'INV-0812',
    calibratedOn: '2026-02-24',
    calibrationDays: 365,
    agreement: { date: '2026-04-09', tiles: 12, covariance: [0.0196, 0.001, 0, 0.001, 0.0049, 0, 0, 0, 0.0064] },
  },
  {
    id: 'co-1',
    name: 'Colorimeter at the supplier of the grille',
    kind: 'colorimeter',
    serial: 'INV-0033',
    calibratedOn: '2026-03-30',
    calibrationDays: 365,
    note: 'Reports CIELAB for D65 and the 10 degree observer only.',
  },
  {
    id: 'gl-1',
    name: 'Glossmeter, three angles',
    kind: 'glossmeter',
    serial: 'INV-2060',
    calibratedOn: '2026-04-07',
    calibrationDays: 365,
    agreement: { date: '2026-04-09', tiles: 5, glossSd: 0.1 },
  },
  {
    id: 'ap-1',
    name: 'Areal profiler',
    kind: 'areal profiler',
    serial: 'INV-7725',
    calibratedOn: '2026-01-20',
    calibrationDays: 365,
    agreement: { date: '2026-01-21', tiles: 3, textureRelativeSd: 0.03 },
  },
];

const fortyFive = { geometry: '45c:0', apertureMm: 16, uv: 'excluded', temperatureC: 23 } as const;

export const conditions: readonly Conditions[] = [
  { id: 'lab-45', instrument: 'sp-1', ...fortyFive },
  { id: 'goods-in-45', instrument: 'sp-2', ...fortyFive },
  { id: 'sphere-included', instrument: 'sp-3', ...fortyFive, geometry: 'di:8' },
  { id: 'sphere-excluded', instrument: 'sp-3', ...fortyFive, geometry: 'de:8' },
  { id: 'tri-filter-45', instrument: 'co-1', ...fortyFive },
  { id: 'gloss', instrument: 'gl-1', temperatureC: 23 },
  { id: 'areal', instrument: 'ap-1', temperatureC: 21 },
];

/** A measuring session: instrument conditions, wavelengths, and what the instrument adds to every colour. */
export interface Session {
  readonly conditions: string;
  readonly grid: Grid;
  /** Systematic deviation in L*, a*, b*: a draw from the agreement covariance that was fixed once. */
  readonly deviation: Lab;
  readonly measuredOn: string;
  readonly file: string;
}

const ten: Grid = { startNm: 400, stepNm: 10, count: 31 };
const twenty: Grid = { startNm: 400, stepNm: 20, count: 16 };
const wide: Grid = { startNm: 360, stepNm: 10, count: 43 };

export const sessions: Readonly<Record<SessionName | 'sphere-excluded', Session>> = {
  house: { conditions: 'lab-45', grid: ten, deviation: [0.06, -0.02, 0.03], measuredOn: '2026-05-05', file: 'lab-2026-05' },
  yard: { conditions: 'goods-in-45', grid: twenty, deviation: [-0.17, 0.05, -0.06], measuredOn: '2026-05-06', file: 'goods-in-2026-05' },
  'carpet-line': {
    conditions: 'goods-in-45',
    grid: twenty,
    deviation: [-0.17, 0.05, -0.06],
    measuredOn: '2026-05-07',
    file: 'floor-2026-05',
  },
  sphere: { conditions: 'sphere-included', grid: wide, deviation: [0.09, 0.03, -0.02], measuredOn: '2026-05-08', file: 'sphere-2026-05' },
  'sphere-excluded': {
    conditions: 'sphere-excluded',
    grid: wide,
    deviation: [0.09, 0.03, -0.02],
    measuredOn: '2026-05-08',
    file: 'sphere-2026-05',
  },
  'tri-filter': { conditions: 'tri-filter-45', grid: ten, deviation: [0.1, -0.03, 0.05], measuredOn: '2026-04-28', file: 'grille-2026-04' },
};

/** A warm cabin lamp of the demo: a blue chip and a broad phosphor, as two skewed bells. Invented, relative power. */
export const ambientLight: UserLight = {
  id: 'cabin-ambient',
  name: 'Cabin ambient, warm (invented)',
  startNm: 380,
  stepNm: 5,
  values: Array.from({ length: 81 }, (_, index) => {
    const nm = 380 + 5 * index;
    const chip = 0.38 * Math.exp(-(((nm - 452) / (nm < 452 ? 13 : 17)) ** 2));
    const phosphor = Math.exp(-(((nm - 612) / (nm < 612 ? 72 : 92)) ** 2));
    return Math.round((chip + phosphor) * 10000) / 100;
  }),
};
