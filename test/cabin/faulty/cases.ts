/** The faulty cabins: what is changed in the valid base, and what must be said of it. Written by hand; nothing here comes from the reader under test. */

export interface ExpectedIssue {
  readonly code: string;
  readonly path?: string;
  readonly line?: number;
  readonly column?: number;
}

export interface DocumentCase {
  readonly name: string;
  /** Nodes of the base that are replaced; `undefined` takes a node out. */
  readonly set?: Readonly<Record<string, unknown>>;
  /** A change of the text, after the nodes were replaced. */
  readonly text?: (text: string) => string;
  readonly issues: readonly ExpectedIssue[];
}

const reading = 'parts[0].sources[0].specimens[0].readings';
const spectrum = `${reading}[0]`;
const gloss = `${reading}[1]`;
const one = (code: string, path?: string): readonly ExpectedIssue[] => [path === undefined ? { code } : { code, path }];
const node = (name: string, path: string, value: unknown, code: string, at = path): DocumentCase => ({ name, set: { [path]: value }, issues: one(code, at) });

const texture = 'parts[3].sources[0].specimens[0].readings[2]';
const visibleTexture = {
  source: 'rendered', lamp: { elevationDeg: 45, azimuthDeg: 45, ambientShare: 0 }, rmsContrast: 0.05, meanLuminance: 0.99, tileMm: 8,
  bands: [{ perMm: 1, energy: Array(12).fill(1e-4) }, { perMm: 1.2, energy: Array(12).fill(1e-4) }],
  scatter: [{ octave: 0, directions: [0.01, 0.02, 0.01, 0.02] }],
};
/** One member of a visible texture changed. */
const visible = (name: string, path: string, value: unknown, code: string): DocumentCase =>
  ({ name, set: { [`${texture}.visible`]: visibleTexture, [`${texture}.visible.${path}`]: value }, issues: one(code, `${texture}.visible.${path}`) });

const replaced = (from: string, to: string) => (text: string): string => {
  if (!text.includes(from)) throw new Error(`the base has no ${from}`);
  return text.replace(from, () => to);
};

const percentValues = [5.1, 5.2, 5.2, 5.3, 5.2, 5.2, 5.1, 5.1, 5, 5, 4.9, 4.9, 4.9, 4.9, 4.8, 4.8];
const sixteen = percentValues.map((value) => value / 100);

const tileReading = { quantity: 'cielab', spot: { name: 's1' }, conditions: 'colour-b', lab: [50, 0, 0], light: 'D65', observer: 10 };
const tileSets = (tiles: unknown, more: readonly unknown[] = []): unknown => [{ id: 'set', name: 'Shared tiles (invented)', tiles }, ...more];

export const documentCases: readonly DocumentCase[] = [
  // Text that is no document.
  { name: 'empty', text: () => '', issues: [{ code: 'empty-file', line: 1, column: 1 }] },
  { name: 'not-json', text: () => 'id,400,410\ndoor,0.1,0.2\n', issues: [{ code: 'json-syntax', line: 1, column: 1 }] },
  { name: 'cut-short', text: (text) => text.slice(0, 900), issues: one('json-syntax') },
  { name: 'trailing-comma', text: replaced('"adjoin-cabin",\n  "version": 1', '"adjoin-cabin",\n  "version": 1,,'), issues: [{ code: 'json-syntax', line: 3, column: 16 }] },
  { name: 'comment', text: replaced('"version": 1', '// one\n  "version": 1'), issues: [{ code: 'json-syntax', line: 3, column: 3 }] },
  { name: 'single-quotes', text: replaced('"adjoin-cabin"', "'adjoin-cabin'"), issues: [{ code: 'json-syntax', line: 2, column: 13 }] },
  { name: 'nan-literal', text: replaced('"gapMm": 6', '"gapMm": NaN'), issues: one('json-syntax') },
  { name: 'text-after-end', text: (text) => `${text}{}`, issues: one('json-syntax') },
  { name: 'duplicate-key', text: replaced('"version": 1', '"version": 1,\n  "version": 1'), issues: [{ code: 'duplicate-key', path: 'version', line: 4, column: 3 }] },
  { name: 'proto-key', text: replaced('"version": 1', '"version": 1,\n  "__proto__": {"asOf": "2031-01-01"}'), issues: [{ code: 'forbidden-key', path: '__proto__', line: 4, column: 3 }] },
  { name: 'proto-key-escaped', text: replaced('"version": 1', '"version": 1,\n  "\\u005f_proto__": {}'), issues: [{ code: 'forbidden-key', path: '__proto__', line: 4, column: 3 }] },
  { name: 'too-deep', text: replaced('"version": 1', `"version": 1,\n  "note": ${'['.repeat(3000)}${']'.repeat(3000)}`), issues: one('too-deep', `note${'[0]'.repeat(63)}`) },
  { name: 'json-null', text: () => 'null\n', issues: one('wrong-type') },
  { name: 'json-list', text: () => '[]\n', issues: one('wrong-type') },
  // Format and version.
  node('format-unknown', 'format', 'some-other-document', 'unknown-format'),
  node('format-missing', 'format', undefined, 'unknown-format'),
  node('version-newer', 'version', 7, 'newer-version'),
  node('version-text', 'version', '1', 'unknown-version'),
  node('version-zero', 'version', 0, 'unknown-version'),
  // Types and ranges.
  node('id-missing', 'id', undefined, 'missing-field'),
  node('name-empty', 'name', ' ', 'empty-text'),
  node('as-of-missing', 'asOf', undefined, 'missing-field'),
  node('as-of-no-day', 'asOf', '2031-02-29', 'bad-date'),
  node('as-of-other-order', 'asOf', '01.03.2031', 'bad-date'),
  node('produced-on-no-month', 'parts[0].sources[0].specimens[0].producedOn', '2031-13-01', 'bad-date'),
  node('measured-at-no-hour', `${spectrum}.measuredAt`, '2031-02-01T25:00', 'bad-date'),
  node('name-with-control-character', 'parts[0].name', 'Dash\u0007lower', 'control-character'),
  node('name-with-turned-writing', 'parts[0].name', 'Dash \u202erewol', 'control-character'),
  node('note-too-long', 'note', 'x'.repeat(10_001), 'text-too-long'),
  node('id-blank-at-end', 'zones[0].id', 'dash ', 'blank-at-end'),
  node('parts-no-list', 'parts', {}, 'wrong-type'),
  node('parts-missing', 'parts', undefined, 'missing-field'),
  {
    name: 'part-null', set: { 'parts[1]': null },
    issues: [
      { code: 'wrong-type', path: 'parts[1]' }, { code: 'unknown-part', path: 'parts[2].mirrorOf' },
      { code: 'unknown-part', path: 'joints[0].parts[1]' }, { code: 'unknown-part', path: 'runs[0].parts[0]' },
    ],
  },
  node('part-without-sources', 'parts[1].sources', [], 'too-few'),
  node('visibility-per-cent', 'parts[0].visibility', 80, 'out-of-range'),
  node('visibility-negative', 'parts[0].visibility', -0.1, 'negative'),
  { name: 'hand-unknown', set: { 'parts[1].hand': 'lefft' }, issues: [{ code: 'unknown-value', path: 'parts[1].hand' }, { code: 'mirror-hand', path: 'parts[2].mirrorOf' }] },
  node('surface-unknown', 'parts[0].sources[0].surface', 'shiny', 'unknown-value'),
  node('status-number', 'parts[0].sources[0].status', 3, 'wrong-type'),
  node('currency-sign', 'parts[0].sources[0].currency', '€', 'bad-currency'),
  node('cavities-half', 'parts[0].sources[0].cavities', 1.5, 'not-whole'),
  node('price-as-text', 'parts[0].sources[0].piecePrice', '12,50', 'wrong-type'),
  node('duty-per-cent-negative', 'parts[0].sources[0].dutyShare', -0.1, 'negative'),
  node('reach-of-three', 'planning', { reach: { moulded: { L: 1, a: 1, b: 1 } } }, 'missing-field', 'planning.reach.moulded.gloss'),
  node('reach-negative', 'parts[0].mend', { reach: { L: -1, a: 1, b: 1, gloss: 0 } }, 'negative', 'parts[0].mend.reach.L'),
  node('mend-cost-text', 'parts[0].mend', { cost: 'dear' }, 'wrong-type', 'parts[0].mend.cost'),
  node('plan-time-zero', 'planning', { timeLimitS: 0 }, 'out-of-range', 'planning.timeLimitS'),
  node('rate-of-no-currency', 'planning', { currency: 'EUR', rates: { dollars: 0.9 } }, 'bad-currency', 'planning.rates.dollars'),
  node('rate-zero', 'planning', { currency: 'EUR', rates: { USD: 0 } }, 'out-of-range', 'planning.rates.USD'),
  node('kind-of-joint-unknown', 'joints[0].kind', 'glued', 'unknown-value'),
  node('intent-unknown', 'joints[0].intent', { colour: 'mach' }, 'unknown-value', 'joints[0].intent.colour'),
  node('gap-negative', 'joints[0].gapMm', -2, 'negative'),
  { name: 'gap-overflow', text: replaced('"gapMm": 6', '"gapMm": 1e999'), issues: one('not-finite', 'joints[0].gapMm') },
  node('joint-of-three', 'joints[0].parts', ['dash-lower', 'door-left', 'console'], 'wrong-length'),
  node('view-zero', 'joints[0].viewMm', 0, 'out-of-range'),
  node('outline-two-points', 'parts[0].outline', [[0, 0], [10, 10]], 'outline-too-short'),
  node('outline-point-text', 'parts[0].outline[1][0]', 'wide', 'wrong-type'),
  { name: 'outline-point-overflow', text: replaced('[0, 203]', '[-1e999, 203]'), issues: one('not-finite', 'parts[0].outline[0][0]') },
  node('sha256-short', 'files[0].sha256', 'abc', 'bad-sha256'),
  node('volume-prices-falling', 'parts[0].sources[0].volumePrices', [{ fromVolume: 2000, piecePrice: 1 }, { fromVolume: 1000, piecePrice: 2 }], 'not-rising', 'parts[0].sources[0].volumePrices[1].fromVolume'),
  node('too-many-outline-points', 'parts[0].outline', Array.from({ length: 5001 }, () => [0, 0]), 'too-many'),
  // Readings.
  node('reflectance-per-cent', `${spectrum}.values`, percentValues, 'reflectance-percent', `${spectrum}.values[0]`),
  node('reflectance-negative', `${spectrum}.values[3]`, -0.01, 'negative'),
  { name: 'reflectance-overflow', set: { [`${spectrum}.values[2]`]: 0.123456 }, text: replaced('0.123456', '1e999'), issues: one('not-finite', `${spectrum}.values[2]`) },
  node('reflectance-null', `${spectrum}.values[5]`, null, 'wrong-type'),
  node('reflectance-text', `${spectrum}.values[5]`, '0.05', 'wrong-type'),
  node('wavelengths-start-missing', `${spectrum}.startNm`, undefined, 'missing-field'),
  node('wavelengths-in-metres', `${spectrum}.startNm`, 4e-7, 'wavelength-out-of-range'),
  node('wavelengths-step-zero', `${spectrum}.stepNm`, 0, 'wavelength-step'),
  node('wavelengths-step-wide', `${spectrum}.stepNm`, 50, 'wavelength-step'),
  node('wavelengths-too-few', `${spectrum}.values`, sixteen.slice(0, 8), 'wavelengths-missing'),
  node('spectra-unequal', `${reading}[2].values`, [...sixteen, 0.05], 'unequal-spectra'),
  node('quantity-unknown', `${spectrum}.quantity`, 'spectral', 'unknown-quantity'),
  node('gloss-angle-45', `${gloss}.angle`, 45, 'unknown-gloss-angle'),
  node('gloss-negative', `${gloss}.gloss`, -1, 'negative'),
  node('gloss-too-high', `${gloss}.gloss`, 2001, 'out-of-range'),
  node('lab-of-two', 'parts[0].sources[1].specimens[0].readings[0].lab', [27, -0.4], 'wrong-length'),
  node('lightness-negative', 'parts[0].sources[1].specimens[0].readings[0].lab[0]', -3, 'negative'),
  node('observer-five', 'parts[0].sources[1].specimens[0].readings[0].observer', 5, 'unknown-value'),
  node('reading-light-unknown', 'parts[0].sources[1].specimens[0].readings[0].light', 'D66', 'unknown-light'),
  node('conditions-unknown', `${spectrum}.conditions`, 'colour-z', 'unknown-conditions'),
  node('reading-file-unknown', `${spectrum}.file`, 'f9', 'unknown-file'),
  node('difference-master-unknown', 'parts[1].sources[0].specimens[1].readings[0].master', 'm-slat', 'unknown-master'),
  node('difference-to-plaque', 'parts[1].sources[0].specimens[1].readings[0].master', 'dl-1', 'not-a-master'),
  visible('visible-lamp-missing', 'lamp', undefined, 'missing-field'),
  visible('visible-lamp-below', 'lamp.elevationDeg', -5, 'negative'),
  visible('visible-source-unknown', 'source', 'drawing', 'unknown-value'),
  visible('visible-energy-of-eleven', 'bands[0].energy', Array(11).fill(1e-4), 'too-few'),
  visible('visible-energy-negative', 'bands[1].energy[3]', -1e-4, 'negative'),
  visible('visible-frequency-zero', 'bands[0].perMm', 0, 'out-of-range'),
  visible('visible-bands-falling', 'bands[1].perMm', 0.5, 'not-rising'),
  visible('visible-octave-half', 'scatter[0].octave', 0.5, 'not-whole'),
  visible('visible-scatter-of-three', 'scatter[0].directions', [0.1, 0.1, 0.1], 'too-few'),
  node('haze-negative', `${gloss}.haze`, -2, 'negative'),
  node('refractive-index-below-one', 'parts[0].sources[0].refractiveIndex', 0.9, 'out-of-range'),
  node('polymer-empty', 'parts[0].sources[0].polymer', '', 'empty-text'),
  node('texture-empty', `${texture}.parameters`, {}, 'nothing-measured', texture),
  // Names that lead nowhere, or to the wrong place.
  node('zone-unknown', 'parts[0].zone', 'dahs', 'unknown-zone'),
  node('supplier-unknown', 'parts[0].sources[0].supplier', 'ferow', 'unknown-supplier'),
  node('instrument-unknown', 'conditions[0].instrument', 'spectro-z', 'unknown-instrument'),
  node('source-unknown', 'parts[0].source', 'ppy', 'unknown-source'),
  node('target-master-unknown', 'parts[0].target.master', 'm-blue', 'unknown-master'),
  node('stands-by-unknown', 'parts[0].sources[0].standsBy', { new: 'zz' }, 'unknown-specimen', 'parts[0].sources[0].standsBy.new'),
  node('stands-by-other-stage', 'parts[0].sources[0].standsBy', { 'heat aged': 'dl-1' }, 'stands-by-stage', 'parts[0].sources[0].standsBy["heat aged"]'),
  { name: 'stands-by-boundary-sample', set: { 'parts[0].sources[0].specimens[0].kind': 'boundary sample', 'parts[0].sources[0].standsBy': { new: 'dl-1' } }, issues: one('stands-by-kind', 'parts[0].sources[0].standsBy.new') },
  node('mirror-unknown', 'parts[2].mirrorOf', 'door-lef', 'unknown-part'),
  node('mirror-same-hand', 'parts[2].hand', 'left', 'mirror-hand', 'parts[2].mirrorOf'),
  { name: 'mirror-cycle', set: { 'parts[1].mirrorOf': 'door-right' }, issues: [{ code: 'mirror-cycle', path: 'parts[1].mirrorOf' }, { code: 'mirror-cycle', path: 'parts[2].mirrorOf' }] },
  { name: 'mirror-taken', set: { 'parts[3].mirrorOf': 'door-left', 'parts[3].hand': 'right' }, issues: one('mirror-taken', 'parts[3].mirrorOf') },
  { name: 'mirror-chain', set: { 'parts[3].mirrorOf': 'door-right', 'parts[3].hand': 'left' }, issues: one('mirror-chain', 'parts[3].mirrorOf') },
  node('joint-part-unknown', 'joints[0].parts[1]', 'door-lft', 'unknown-part'),
  node('joint-with-itself', 'joints[0].parts', ['dash-lower', 'dash-lower'], 'joint-with-itself'),
  node('joint-twice', 'joints[1].parts', ['door-left', 'dash-lower'], 'duplicate-joint'),
  node('joint-reference-elsewhere', 'joints[0].reference', 'console', 'reference-not-of-joint'),
  node('run-part-unknown', 'runs[0].parts[0]', 'roof', 'unknown-part'),
  node('run-part-twice', 'runs[0].parts', ['door-left', 'dash-lower', 'door-left'], 'part-twice-in-run', 'runs[0].parts[2]'),
  node('decision-light-unknown', 'joints[0].decisions[0].light', 'FL99', 'unknown-light'),
  node('decision-expired-before-made', 'joints[0].decisions[0].expires', '2031-02-27', 'expires-before-date'),
  node('proposal-of-nothing', 'joints[0].proposals', [{ id: 'p1', date: '2031-02-28' }], 'nothing-proposed', 'joints[0].proposals[0]'),
  node('proposal-of-other-part', 'joints[0].proposals', [{ id: 'p1', date: '2031-02-28', shifts: [{ part: 'console', dL: 1 }] }], 'proposal-not-of-joint', 'joints[0].proposals[0].shifts[0].part'),
  node('proposal-part-twice', 'joints[0].proposals', [{ id: 'p1', date: '2031-02-28', shifts: [{ part: 'door-left', dL: 1 }, { part: 'door-left', da: 1 }] }], 'part-twice-in-proposal', 'joints[0].proposals[0].shifts[1].part'),
  node('proposal-shift-too-large', 'joints[0].proposals', [{ id: 'p1', date: '2031-02-28', shifts: [{ part: 'door-left', dL: 51 }] }], 'out-of-range', 'joints[0].proposals[0].shifts[0].dL'),
  node('proposal-gap-text', 'joints[0].proposals', [{ id: 'p1', date: '2031-02-28', gapMm: '4' }], 'wrong-type', 'joints[0].proposals[0].gapMm'),
  node('proposal-view-zero', 'joints[0].proposals', [{ id: 'p1', date: '2031-02-28', viewMm: 0 }], 'out-of-range', 'joints[0].proposals[0].viewMm'),
  node('proposal-without-date', 'joints[0].proposals', [{ id: 'p1', gapMm: 4 }], 'missing-field', 'joints[0].proposals[0].date'),
  node('proposal-id-twice', 'joints[0].proposals', [{ id: 'p1', date: '2031-02-28', gapMm: 4 }, { id: 'p1', date: '2031-02-28', gapMm: 3 }], 'duplicate-id', 'joints[0].proposals[1].id'),
  node('decision-check-unknown', 'joints[0].decisions[0].check', 'color', 'unknown-value'),
  node('visual-grade', 'joints[0].visualRecords[0].rating.grade', 4.2, 'out-of-range'),
  node('observers-none', 'joints[0].visualRecords[0].observers.count', 0, 'out-of-range'),
  {
    name: 'master-of-other-kind', set: { 'masters[0].kind': 'plaque' },
    issues: ['masters[0].kind', 'parts[0].target.master', 'parts[1].target.master', 'parts[1].sources[0].specimens[1].readings[0].master'].map((path) => ({ code: 'not-a-master', path })),
  },
  { name: 'master-cycle', set: { 'masters[0].parentMaster': 'm-slate' }, issues: one('master-cycle', 'masters[0].parentMaster') },
  node('master-without-values', 'masters[0].readings', [], 'master-without-values', 'parts[1].sources[0].specimens[1].readings[0].master'),
  // Ids that are there already.
  { name: 'part-id-twice', set: { 'parts[3].id': 'door-left' }, issues: [{ code: 'duplicate-id', path: 'parts[3].id' }, { code: 'unknown-part', path: 'joints[2].parts[1]' }] },
  node('joint-id-twice', 'joints[1].id', 'j2', 'duplicate-id'),
  {
    name: 'zone-id-twice', set: { 'zones[1].id': 'dash' },
    issues: [{ code: 'duplicate-id', path: 'zones[1].id' }, { code: 'unknown-zone', path: 'parts[1].zone' }, { code: 'unknown-zone', path: 'parts[2].zone' }],
  },
  node('specimen-id-twice', 'parts[3].sources[0].specimens[0].id', 'dl-1', 'duplicate-id'),
  node('source-id-twice', 'parts[0].sources[1].id', 'ppx', 'duplicate-id'),
  node('light-id-built-in', 'lights[0].id', 'D65', 'light-name-taken'),
  // Sums and matrices.
  node('shares-over-one', 'parts[0].sources[1].share', 0.6, 'shares-over-one', 'parts[0].sources'),
  node('area-shares', 'parts[3].sources[0].namedColours', [{ name: 'dark', areaShare: 0.5 }, { name: 'light', areaShare: 0.4 }], 'area-shares'),
  node('colour-of-no-source', 'parts[0].sources[0].specimens[0].readings[0].colour', 'lime', 'unknown-colour'),
  node('covariance-not-symmetric', 'instruments[0].agreement.covariance', [0.01, 0.001, 0, 0, 0.004, 0, 0, 0, 0.005], 'covariance-not-symmetric'),
  node('covariance-not-positive', 'instruments[0].agreement.covariance', [0.01, 0.02, 0, 0.02, 0.01, 0, 0, 0, 0.01], 'covariance-not-positive'),
  node('covariance-of-eight', 'instruments[0].agreement.covariance', [1, 0, 0, 0, 1, 0, 0, 0], 'wrong-length'),
  node('shared-covariance-too-large', 'instruments[0].agreement.shared', { 'spectro-b': [0.5, 0, 0, 0, 0.5, 0, 0, 0, 0.5] }, 'shared-too-large', 'instruments[0].agreement.shared["spectro-b"]'),
  node('shared-covariance-unknown', 'instruments[0].agreement.shared', { 'spectro-z': [0, 0, 0, 0, 0, 0, 0, 0, 0] }, 'unknown-instrument', 'instruments[0].agreement.shared["spectro-z"]'),
  node('light-without-power', 'lights[0].values', [0, 0, 0, 0, 0, 0, 0, 0, 0], 'light-without-power'),
  node('light-too-narrow', 'lights[0].values', [1, 2, 3], 'wavelengths-missing'),
  node('specimen-expires-early', 'masters[0].expires', '2030-05-31', 'expires-before-date'),
  node('rule-book-number', 'ruleBook', 4, 'wrong-type'),
  { name: 'unknown-field-overflow', set: { extra: { deep: [123.25] } }, text: replaced('123.25', '1e999'), issues: one('not-finite', 'extra.deep[0]') },
  // Tile sets.
  node('tile-set-without-tiles', 'tileSets', tileSets([]), 'too-few', 'tileSets[0].tiles'),
  node('tile-set-id-twice', 'tileSets', tileSets([{ id: 't1', readings: [tileReading] }], [{ id: 'set', name: 'Others', tiles: [{ id: 't1', readings: [] }] }]), 'duplicate-id', 'tileSets[1].id'),
  node('tile-id-twice', 'tileSets', tileSets([{ id: 't1', readings: [tileReading] }, { id: 't1', readings: [] }]), 'duplicate-id', 'tileSets[0].tiles[1].id'),
  node('tile-difference', 'tileSets', tileSets([{ id: 't1', readings: [
    { quantity: 'difference', spot: { name: 's1' }, conditions: 'colour-b', difference: [0.1, 0, 0], light: 'D65', observer: 10, master: 'm-slate' },
  ] }]), 'tile-difference', 'tileSets[0].tiles[0].readings[0].quantity'),
  node('tile-conditions-unknown', 'tileSets', tileSets([{ id: 't1', readings: [{ ...tileReading, conditions: 'colour-z' }] }]), 'unknown-conditions', 'tileSets[0].tiles[0].readings[0].conditions'),
  node('tile-light-unknown', 'tileSets', tileSets([{ id: 't1', readings: [{ ...tileReading, light: 'D66' }] }]), 'unknown-light', 'tileSets[0].tiles[0].readings[0].light'),
  // Several at once: all are listed.
  {
    name: 'many-faults',
    set: { asOf: 'soon', 'parts[0].zone': 'roof', [`${spectrum}.values[0]`]: 40, 'joints[0].parts[0]': 'nothing', 'conditions[0].instrument': 'none', [`${gloss}.angle`]: 75 },
    issues: [
      { code: 'bad-date', path: 'asOf' }, { code: 'unknown-zone', path: 'parts[0].zone' }, { code: 'reflectance-percent', path: `${spectrum}.values[0]` },
      { code: 'unknown-part', path: 'joints[0].parts[0]' }, { code: 'unknown-instrument', path: 'conditions[0].instrument' }, { code: 'unknown-gloss-angle', path: `${gloss}.angle` },
    ],
  },
];
