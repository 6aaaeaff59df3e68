import { describe, expect, it } from 'vitest';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { judgeCabin } from '../../../src/harmony/judge.ts';
import { cabinQuality } from '../../../src/harmony/quality/index.ts';
import type { CielabReading, Reading } from '../../../src/readings/reading.ts';
import { ruleBookById } from '../../../src/rules/index.ts';
import type { RuleBook } from '../../../src/rules/rule-book.ts';
import type { SideOptions } from '../../support/two-part-cabin.ts';
import { conditionsList, instrumentList, spectra, spectrumOf, twoPartCabin } from '../../support/two-part-cabin.ts';

const found = ruleBookById('ciede2000');
if (found === undefined) throw new Error('no default rule book');
// CIE76 makes the sums of these tests possible by hand: a standard deviation in L* is one in dE.
const book: RuleBook = { ...found, formula: 'cie76' };
const quality = (cabin: Cabin, options = {}) => cabinQuality(judgeCabin(cabin, book), options);

const lab = (spot: number, L: number, more: Partial<CielabReading> = {}): Reading =>
  ({ quantity: 'cielab', spot: { name: `s${spot}` }, conditions: 'annular', lab: [L, 0, 0], light: 'D65', observer: 10, measuredAt: '2026-02-01', ...more });
const withInstrument = (id: string, change: object): Cabin['instruments'] => instrumentList.map((instrument) => (instrument.id === id ? { ...instrument, ...change } : instrument));

describe('the quality of the specimens of a cabin', () => {
  // Spots at 30, 30.3, 29.7 in L*, each read twice 0.04 apart.
  const readings = [30, 30.3, 29.7].flatMap((L, spot) => [lab(spot, L - 0.02), lab(spot, L + 0.02)]);
  const side: SideOptions = { readings, gloss60: 2 };
  const cabin = twoPartCabin(side, { curve: spectrumOf(() => 0.06) });
  const { specimens } = quality(cabin);
  const [colour] = specimens[0].colour;

  it('are all there, with their place in the document', () => {
    expect(specimens.map(({ specimen, path, stands, part }) => [specimen, path, stands, part])).toEqual([
      ['a-specimen', 'parts[0].sources[0].specimens[0]', true, 'a'], ['b-specimen', 'parts[1].sources[0].specimens[0]', true, 'b'],
    ]);
  });

  it('take the limit of the strictest joint', () => {
    // Two moulded parts that match: 0.7 by the default book.
    expect(colour.forLimit).toMatchObject({ limit: 0.7, from: { kind: 'joint', id: 'a-b' }, spots: 3, goalShare: 0.16 });
    expect(specimens[0].gloss[0].forLimit).toMatchObject({ limit: 0.5, from: { kind: 'joint', id: 'a-b' } });
  });

  it('pool the spread of the spots as verdicts do and ask for the readings of ASTM E1345', () => {
    // Assumed variance of a moulded part in L* 0.15^2 worth 8 readings; sample 0.09 with 2 degrees of freedom: (8 x 0.0225 + 2 x 0.09) / 10 = 0.036.
    expect(colour.forLimit?.spotSd).toBeCloseTo(Math.sqrt(0.036), 10);
    expect(colour.forLimit?.standardError).toBeCloseTo(Math.sqrt(0.036 / 3), 10);
    // 0.036 / (0.16 x 0.7)^2 = 2.87.
    expect(colour.forLimit?.spotsNeeded).toBe(3);
    // 0.036 / (0.1 x 0.7)^2 = 7.35.
    expect(quality(cabin, { standardErrorShare: 0.1 }).specimens[0].colour[0].forLimit?.spotsNeeded).toBe(8);
  });

  it('tell the share of the limit that the gauge takes', () => {
    // A pair 0.04 apart has the variance 0.0008. The book assumes an agreement of its own for an instrument without one.
    const [assumedL] = book.assumed.agreementSd;
    expect(colour.gauge?.repeatability).toBeCloseTo(Math.sqrt(0.0008), 10);
    expect(colour.gauge?.instrument).toBeCloseTo(assumedL, 10);
    expect(colour.gauge?.share).toBeCloseTo(Math.hypot(assumedL, Math.sqrt(0.0008)) / 0.7, 10);
    expect(colour.gauge?.instrumentAssumed).toBe(true);
  });

  it('fall back on the limit of the material where the part has no joint to match', () => {
    const free = quality(twoPartCabin(side, {}, { intent: { colour: 'free', gloss: 'free', texture: 'free' } })).specimens[0];
    expect(free.colour[0].forLimit?.from).toEqual({ kind: 'material', id: 'moulded' });
    expect(free.gloss[0].forLimit?.from).toEqual({ kind: 'material', id: 'moulded' });
  });

  it('hold masters to the strictest limit of their parts', () => {
    const master = { id: 'm', kind: 'master' as const, readings: spectra(spectrumOf(() => 0.06)) };
    const held = quality({ ...twoPartCabin({ target: { master: 'm', colourLimit: 0.6 } }, { target: { master: 'm' } }), masters: [master] }).specimens[0];
    expect(held).toMatchObject({ specimen: 'm', path: 'masters[0]', stands: false });
    expect(held.colour[0].forLimit).toMatchObject({ limit: 0.6, from: { kind: 'master', id: 'm' } });
  });
});

describe('the quality of the instruments of a cabin', () => {
  const cabin = twoPartCabin({}, {});

  it('warns of an agreement above a quarter of a limit', () => {
    // 0.2 of 0.7 is 29 %; 0.17 is 24 %.
    const large = quality({ ...cabin, instruments: withInstrument('one', { agreement: { date: '2026-01-10', tiles: 12, covariance: [0.04, 0, 0, 0, 0.0001, 0, 0, 0, 0.0001] } }) });
    expect(large.issues.filter(({ path }) => path === 'instruments[0]').map(({ code, severity }) => [code, severity])).toEqual([['agreement-large', 'warning']]);
    expect(large.instruments[0]).toMatchObject({ exceeds: true, specimens: 2, agreement: { state: 'measured', ageDays: 50, tiles: 12 } });
    expect(large.instruments[0].worst?.gauge.instrumentShare).toBeCloseTo(0.2 / 0.7, 10);
    const small = quality({ ...cabin, instruments: withInstrument('one', { agreement: { date: '2026-01-10', tiles: 12, covariance: [0.0289, 0, 0, 0, 0.0001, 0, 0, 0, 0.0001] } }) });
    expect(small.instruments[0].exceeds).toBe(false);
    expect(small.issues.filter(({ path }) => path === 'instruments[0]')).toEqual([]);
  });

  it('tells the age of the calibration on the day of the judgement', () => {
    // 1 January to 1 March 2026: 31 + 28 days.
    expect(quality(cabin).instruments[0].calibration).toEqual({ state: 'in date', on: '2026-01-01', ageDays: 59, intervalDays: 365 });
    expect(quality({ ...cabin, instruments: withInstrument('one', { calibrationDays: 58 }) }).instruments[0].calibration.state).toBe('due');
    expect(quality({ ...cabin, instruments: withInstrument('one', { calibratedOn: undefined }) }).instruments[0].calibration).toEqual({ state: 'not stated' });
  });

  it('warns of an agreement that is older than the calibration', () => {
    const old = quality({ ...cabin, instruments: withInstrument('one', { agreement: { date: '2025-12-01', tiles: 12, covariance: [0.001, 0, 0, 0, 0.001, 0, 0, 0, 0.001] } }) });
    expect(old.issues.find(({ path }) => path === 'instruments[0]')?.code).toBe('agreement-before-calibration');
  });

  it('notes an assumed agreement for instruments that measured something, and only for them', () => {
    expect(quality(cabin).issues.filter(({ code }) => code === 'agreement-assumed').map(({ path }) => path)).toEqual(['instruments[0]', 'instruments[2]']);
    expect(conditionsList.some(({ instrument }) => instrument === 'two')).toBe(true);
  });
});

describe('readings that stand out', () => {
  it('are noted once for a spot and stay in the verdict', () => {
    const readings = [0, 1, 2, 3, 4].flatMap((spot) => [0, 90, 180, 270].map((rotationDeg) => lab(spot, spot === 2 ? 33 : 30 + 0.05 * spot, { rotationDeg })));
    const cabin = twoPartCabin({ readings }, {});
    const { issues } = quality(cabin);
    const suggested = issues.filter(({ code }) => code === 'outlier-suggested');
    expect(suggested).toHaveLength(1);
    expect(suggested[0]).toMatchObject({ severity: 'note', path: 'parts[0].sources[0].specimens[0]' });
    expect(suggested[0].found).toContain('spot s2');
    expect(judgeCabin(cabin, book).judgement.joints[0].judgedOn[0].spots).toBe(5);
  });
});
