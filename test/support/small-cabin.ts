import type { Cabin, Joint, Part, Source, Specimen } from '../../src/cabin/cabin.ts';
import type { GlossAngle, GlossReading, SpectrumReading } from '../../src/readings/reading.ts';

/** Invented: a cabin of six parts for tests, with every kind of reading, both hands, a master, decisions and a visual record. */

export const smallStartNm = 400;
export const smallStepNm = 10;
export const smallCount = 31;

/** A smooth reflectance curve: level, tilt over 400..700 nm, and a bump of a given height, centre and width (nm). */
export function smoothSpectrum(level: number, tilt = 0, bump = 0, centreNm = 550, widthNm = 40): number[] {
  return Array.from({ length: smallCount }, (_, index) => {
    const nm = smallStartNm + index * smallStepNm;
    const value = level + (tilt * (nm - 550)) / 150 + bump * Math.exp(-(((nm - centreNm) / widthNm) ** 2) / 2);
    return Math.round(value * 1e6) / 1e6;
  });
}

/** Spots of one specimen: the curve times 1 + a small fixed ripple for each spot, so that the spread is known and not zero. */
export function spectrumReadings(curve: readonly number[], spots: number, conditions = 'colour-a', ripple = 0.004): SpectrumReading[] {
  return Array.from({ length: spots }, (_, spot) => ({
    quantity: 'spectrum' as const,
    spot: { name: `s${spot + 1}`, xMm: 20 * spot, yMm: 10 },
    conditions,
    startNm: smallStartNm,
    stepNm: smallStepNm,
    values: curve.map((value) => Math.round(value * (1 + ripple * Math.sin(2.4 * (spot + 1))) * 1e6) / 1e6),
  }));
}

export function glossReadings(gloss: number, spots: number, angle: GlossAngle = 60, conditions = 'gloss-a'): GlossReading[] {
  return Array.from({ length: spots }, (_, spot) => ({
    quantity: 'gloss' as const,
    spot: { name: `g${spot + 1}` },
    conditions,
    angle,
    gloss: Math.round((gloss + 0.05 * Math.cos(3 * spot)) * 1000) / 1000,
  }));
}

export const smallCurves = {
  slate: smoothSpectrum(0.052, -0.003, 0.002, 470, 30),
  slateWarmer: smoothSpectrum(0.053, -0.002, 0.002, 480, 30),
  skin: smoothSpectrum(0.05, -0.0028, 0.002, 470, 30),
  black: smoothSpectrum(0.012, 0.0004),
  cloth: smoothSpectrum(0.075, 0.004, 0.006, 610, 35),
};

const plaque = (id: string, lot: string, producedOn: string, readings: Specimen['readings']): Specimen =>
  ({ id, kind: 'plaque', lot: { id: lot }, producedOn, phase: 'B', readings });

const source = (id: string, supplier: string, material: string, more: Partial<Source>): Source =>
  ({ id, supplier, material, surface: 'solid', status: 'approved', currency: 'EUR', specimens: [], ...more });

const box = (left: number, top: number, right: number, bottom: number): Part['outline'] =>
  [[left, top], [right, top], [right, bottom], [left, bottom]];

export const smallParts: readonly Part[] = [
  {
    id: 'dash-upper', name: 'Dash upper', partNumber: 'X-100', revision: 'a', zone: 'dash', outline: box(0, 0, 1400, 200), visibility: 1,
    sources: [source('skin', 'ferrow', 'soft-skin', {
      grain: { id: 'pebble', depthUm: 120, vdiClass: 30 }, share: 1, piecePrice: 41.5, leadWeeks: 8,
      specimens: [plaque('du-1', 'lot-11', '2031-02-10', [
        ...spectrumReadings(smallCurves.skin, 5),
        ...glossReadings(1.6, 5),
        {
          quantity: 'texture', spot: { name: 't1' }, conditions: 'texture-a',
          parameters: { saUm: 14.2, sqUm: 17.9, salMm: 0.41, str: 0.72, vdiClass: 30 },
        },
      ])],
    })],
  },
  {
    id: 'dash-lower', name: 'Dash lower', zone: 'dash', outline: box(0, 203, 1400, 400), flatAreaMm: 150,
    target: { master: 'm-slate', colourLimit: 0.8 }, source: 'ppx',
    sources: [
      source('ppx', 'ferrow', 'moulded', {
        grain: { id: 'pebble', depthUm: 110 }, piecePrice: 12, toolCost: 90000, tool: 'T1', cavities: 2,
        volumePrices: [{ fromVolume: 1000, piecePrice: 12 }, { fromVolume: 20000, piecePrice: 10.5 }],
        standsBy: { new: 'dl-2' },
        specimens: [
          plaque('dl-1', 'lot-20', '2031-01-12', [...spectrumReadings(smallCurves.slate, 5), ...glossReadings(1.9, 5)]),
          { ...plaque('dl-2', 'lot-21', '2031-02-20', [...spectrumReadings(smallCurves.slate, 5), ...glossReadings(1.9, 5)]), kind: 'tool part', tool: 'T1', cavity: '1' },
          {
            ...plaque('dl-3', 'lot-21', '2031-02-20', spectrumReadings(smallCurves.slateWarmer, 3)),
            exposure: { stage: 'light-exposed', method: 'xenon arc', doseKjPerM2: 601, hours: 300 },
          },
        ],
      }),
      source('alt', 'quill', 'moulded', {
        status: 'candidate', piecePrice: 10.8, leadWeeks: 14,
        specimens: [plaque('dl-4', 'lot-30', '2031-02-25', [
          { quantity: 'cielab', spot: { name: 's1' }, conditions: 'colour-b', lab: [27.4, -0.4, -1.6], light: 'D65', observer: 10, averagedFrom: 3 },
          { quantity: 'cielab', spot: { name: 's2' }, conditions: 'colour-b', lab: [27.5, -0.4, -1.5], light: 'D65', observer: 10, averagedFrom: 3 },
        ])],
      }),
    ],
  },
  {
    id: 'door-left', name: 'Door left', zone: 'doors', outline: box(-650, 100, -6, 600), hand: 'left', target: { master: 'm-slate' },
    sources: [source('ppx', 'quill', 'moulded', {
      grain: { id: 'pebble', depthUm: 110 },
      specimens: [plaque('do-1', 'lot-40', '2031-02-18', [...spectrumReadings(smallCurves.slateWarmer, 5), ...glossReadings(2.3, 5)])],
    })],
  },
  {
    id: 'door-right', name: 'Door right', zone: 'doors', outline: box(1406, 100, 2050, 600), hand: 'right', mirrorOf: 'door-left',
    sources: [source('ppx', 'quill', 'moulded', { grain: { id: 'pebble', depthUm: 110 } })],
  },
  {
    id: 'console', name: 'Console lid', zone: 'console', outline: box(600, 404, 800, 900), module: 'console-set',
    sources: [source('black', 'quill', 'gloss-black', {
      specimens: [plaque('co-1', 'lot-50', '2031-02-01', [
        ...spectrumReadings(smallCurves.black, 5), ...glossReadings(84, 3, 20), ...glossReadings(90, 3, 60),
      ])],
    })],
  },
  {
    id: 'console-side', name: 'Console side', zone: 'console', outline: box(806, 404, 1300, 900), module: 'console-set', frozen: true,
    sources: [source('cloth', 'quill', 'textile', {
      surface: 'melange',
      specimens: [
        plaque('cs-1', 'lot-60', '2031-01-30', spectrumReadings(smallCurves.cloth, 8, 'colour-a', 0.012)),
        plaque('cs-2', 'lot-61', '2031-01-20', [
          { quantity: 'difference', spot: { name: 's1' }, conditions: 'colour-b', difference: [0.4, 0.1, -0.2], light: 'D65', observer: 10, master: 'm-cloth' },
        ]),
      ],
    })],
  },
];

export const smallJoints: readonly Joint[] = [
  {
    id: 'j1', parts: ['dash-upper', 'dash-lower'], kind: 'edge', gapMm: 0, lengthMm: 1400, viewMm: 700, reference: 'dash-upper', weight: 2,
    proposals: [{ id: 'p1', date: '2031-02-28', shifts: [{ part: 'dash-lower', dL: 0.4, dGloss: -0.2 }], viewMm: 800, note: 'Tried with the booth open.' }],
  },
  {
    id: 'j2', parts: ['dash-lower', 'door-left'], kind: 'gap', gapMm: 6, lengthMm: 200, viewMm: 800, tiltDeg: 15,
    visualRecords: [{
      date: '2031-02-27', light: 'D65', illuminanceLx: 1500, observers: { count: 3, roles: ['design quality', 'supplier quality'] }, result: 'acceptable',
      rating: { scale: 'ISO 105-A02', grade: 4 }, note: 'Seen at 45 degrees.',
    }],
    decisions: [{
      id: 'd1', check: 'colour', reason: 'Grain of the tool is corrected in phase C.', role: 'design quality', date: '2031-02-28', expires: '2031-06-30', value: 1.4, light: 'D65',
    }],
  },
  { id: 'j3', parts: ['dash-lower', 'door-right'], kind: 'gap', gapMm: 6, lengthMm: 200, viewMm: 800, intent: { colour: 'match', gloss: 'match', texture: 'match' } },
  { id: 'j4', parts: ['dash-lower', 'console'], kind: 'gap', gapMm: 4, lengthMm: 200, viewMm: 700, intent: { colour: 'contrast', gloss: 'free', texture: 'free' } },
  { id: 'j5', parts: ['door-left', 'door-right'], kind: 'sightline', viewMm: 900 },
  { id: 'j6', parts: ['console', 'console-side'], kind: 'seam', gapMm: 2, viewMm: 700, intent: { colour: 'tone-step' }, path: [[803, 404], [803, 900]] },
];

/** A valid cabin; fields given replace those of the base as they are. */
export function smallCabin(changes: Partial<Cabin> = {}): Cabin {
  return {
    format: 'adjoin-cabin',
    version: 1,
    id: 'small',
    name: 'Small cabin for tests',
    trimLevel: 'Base',
    colourway: 'Slate',
    phase: 'B',
    revision: '3',
    asOf: '2031-03-01',
    stage: 'new',
    volume: 20000,
    zones: [
      { id: 'dash', name: 'Dash', caps: [{ id: 'dash-gloss', quantity: 'gloss', max: 2, angle: 60, basis: 'common practice, no source' }] },
      { id: 'doors', name: 'Doors' },
      { id: 'console', name: 'Console' },
    ],
    suppliers: [{ id: 'ferrow', name: 'Ferrow (invented)' }, { id: 'quill', name: 'Quill (invented)', setupCost: 5000 }],
    instruments: [
      {
        id: 'spectro-a', name: 'Bench one (invented)', kind: 'spectrophotometer', serial: 'A-1', calibratedOn: '2031-02-01', calibrationDays: 365,
        agreement: {
          date: '2031-01-15', tiles: 12, covariance: [0.01, 0, 0, 0, 0.004, 0.001, 0, 0.001, 0.005],
          shared: { 'spectro-b': [0.004, 0, 0, 0, 0.001, 0, 0, 0, 0.001] },
        },
      },
      {
        id: 'spectro-b', name: 'Hand held two (invented)', kind: 'spectrophotometer', serial: 'B-7', calibratedOn: '2031-02-01',
        agreement: { date: '2031-01-15', tiles: 12, covariance: [0.02, 0, 0, 0, 0.006, 0, 0, 0, 0.008] },
      },
      { id: 'glossmeter-a', name: 'Gloss one (invented)', kind: 'glossmeter', agreement: { date: '2031-01-15', tiles: 6, glossSd: 0.1 } },
      { id: 'profiler-a', name: 'Surface one (invented)', kind: 'areal profiler', agreement: { date: '2031-01-15', tiles: 3, textureRelativeSd: 0.05 } },
    ],
    conditions: [
      { id: 'colour-a', instrument: 'spectro-a', geometry: '45c:0', apertureMm: 8, uv: 'excluded' },
      { id: 'colour-b', instrument: 'spectro-b', geometry: '45c:0', apertureMm: 6, uv: 'unknown', temperatureC: 23 },
      { id: 'gloss-a', instrument: 'glossmeter-a' },
      { id: 'texture-a', instrument: 'profiler-a' },
    ],
    files: [{ id: 'f1', name: 'invented.csv', sha256: 'b1946ac92492d2347c6235b4d2611184b1946ac92492d2347c6235b4d2611184' }],
    lights: [{ id: 'cabin-ambient', name: 'Cabin ambient (invented)', startNm: 380, stepNm: 50, values: [4, 20, 60, 90, 100, 80, 40, 20, 6] }],
    masters: [
      { id: 'm-slate', kind: 'master', issue: '2', producedOn: '2030-06-01', expires: '2032-06-01', readings: [...spectrumReadings(smallCurves.slate, 5), ...glossReadings(1.8, 5)] },
      { id: 'm-cloth', kind: 'master', parentMaster: 'm-slate', readings: spectrumReadings(smallCurves.cloth, 5, 'colour-b', 0.008) },
    ],
    parts: smallParts,
    joints: smallJoints,
    runs: [{ id: 'r1', name: 'Round the front', parts: ['door-left', 'dash-lower', 'door-right'] }],
    ruleBook: 'ciede2000',
    ...changes,
  };
}
