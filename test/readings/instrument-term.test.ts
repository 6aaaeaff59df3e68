import { describe, expect, test } from 'vitest';
import { instrumentCorrelation } from '../../src/readings/instrument-correlation.ts';
import type { MeasuredSide } from '../../src/readings/instrument-correlation.ts';
import { instrumentTerm, scalarInstrumentVariance } from '../../src/readings/instrument-term.ts';
import { differenceCovariance } from '../../src/readings/difference-covariance.ts';
import { measuredDays } from '../../src/readings/measured-side.ts';
import type { Instrument } from '../../src/readings/reading.ts';

const c: Instrument['agreement'] = { date: '2031-01-01', tiles: 12, covariance: [0.04, 0, 0, 0, 0.01, 0, 0, 0, 0.01] };
const one: Instrument = { id: 'one', name: 'Bench (invented)', kind: 'spectrophotometer', serial: '1', calibratedOn: '2031-01-10', calibrationDays: 30, agreement: c };
const two: Instrument = { ...one, id: 'two', serial: '2' };
const side = (more: Partial<MeasuredSide> = {}): MeasuredSide =>
  ({ instrument: one, geometry: '45a:0', apertureMm: 8, from: '2031-01-12', to: '2031-01-13', ...more });
const alike = { likeSurfaces: true, difference: 0.5 };

describe('instrumentCorrelation (levels 1, 0.5 and 0: assumption, no source)', () => {
  test('one session', () => expect(instrumentCorrelation(side(), side(), alike)).toEqual({ rho: 1, level: 'same session', doubts: [] }));
  test.each([
    ['unlike geometry', { geometry: 'di:8' }], ['unlike aperture', { apertureMm: 4 }], ['unlike calibration period', { from: '2031-02-20', to: '2031-02-20' }],
    ['unlike calibration period', { from: '2031-01-12', to: '2031-02-20' }], ['unlike calibration period', { from: '2031-01-02', to: '2031-01-03' }],
    ['calibration period unknown', { from: undefined, to: undefined }],
  ] as const)('%s: the same instrument only', (doubt, more) => {
    expect(instrumentCorrelation(side(), side(more), alike)).toEqual({ rho: 0.5, level: 'same instrument', doubts: [doubt] });
  });
  test('a large difference or unlike surfaces', () => {
    expect(instrumentCorrelation(side(), side(), { likeSurfaces: false, difference: 5 }).doubts).toEqual(['large difference', 'unlike surfaces']);
    expect(instrumentCorrelation(side(), side(), { likeSurfaces: true }).rho).toBe(1);
  });
  test('a geometry or aperture that is not stated, of colours alone', () => {
    for (const more of [{ geometry: undefined }, { apertureMm: undefined }]) {
      expect(instrumentCorrelation(side(more), side(more), alike)).toEqual({ rho: 0.5, level: 'same instrument', doubts: ['geometry or aperture unknown'] });
      expect(instrumentCorrelation(side(more), side(more), { likeSurfaces: true }).rho).toBe(1);
    }
  });
  test('no serial number', () => {
    const nameless = side({ instrument: { ...one, serial: undefined } });
    expect(instrumentCorrelation(nameless, nameless, alike).doubts).toEqual(['serial number unknown']);
  });
  test('different or unknown instruments', () => {
    expect(instrumentCorrelation(side(), side({ instrument: two }), alike)).toMatchObject({ rho: 0, level: 'different instruments' });
    expect(instrumentCorrelation(side(), side({ instrument: undefined }), alike)).toMatchObject({ rho: 0, level: 'unknown instrument' });
  });
  test('days of a set of readings; one without a date leaves them unknown', () => {
    const at = (measuredAt?: string) => ({ quantity: 'gloss' as const, angle: 60 as const, gloss: 2, conditions: 'g', spot: { name: 'a' }, measuredAt });
    expect(measuredDays([at('2031-03-02T08:00'), at('2031-03-01')])).toEqual({ from: '2031-03-01', to: '2031-03-02' });
    expect(measuredDays([at('2031-03-02'), at()])).toBeUndefined();
  });
});

describe('instrumentTerm', () => {
  const identity = Float64Array.from([1, 0, 0, 0, 1, 0, 0, 0, 1]);
  const diagonal = (first: MeasuredSide, second: MeasuredSide, firstCarrier = identity, secondCarrier = identity): number[] => {
    const { covariance } = instrumentTerm({
      first, second, correlation: instrumentCorrelation(first, second, alike), firstCarrier, secondCarrier, assumedSd: [0.3, 0.2, 0.1],
    });
    return [0, 4, 8].map((at) => Number(covariance[at].toFixed(12)));
  };
  test('2 (1 - rho) C for one instrument, by hand', () => {
    expect(diagonal(side(), side())).toEqual([0, 0, 0]);
    expect(diagonal(side(), side({ apertureMm: 4 }))).toEqual([0.04, 0.01, 0.01]);
  });
  test('C1 + C2 for two, C1 + C2 - 2 C12 where their agreement sets share something', () => {
    expect(diagonal(side(), side({ instrument: two }))).toEqual([0.08, 0.02, 0.02]);
    const sharing = { ...one, agreement: { ...c, shared: { two: [0.03, 0, 0, 0, 0, 0, 0, 0, 0] as const } } };
    expect(diagonal(side({ instrument: sharing }), side({ instrument: two }))).toEqual([0.02, 0.02, 0.02]);
    expect(diagonal(side({ instrument: two }), side({ instrument: sharing }))).toEqual([0.02, 0.02, 0.02]);
  });
  test('an instrument without an agreement set, or none on record, gets the assumed one and is named', () => {
    const bare = side({ instrument: { ...two, agreement: undefined } });
    expect(diagonal(side(), bare)).toEqual([0.13, 0.05, 0.02]);
    const unknown = side({ instrument: undefined });
    const term = instrumentTerm({
      first: side(), second: unknown, correlation: instrumentCorrelation(side(), unknown, alike), firstCarrier: identity, secondCarrier: identity, assumedSd: [0.3, 0.2, 0.1],
    });
    expect(term.assumedFor).toEqual(['']);
  });
  test('a shared deviation that shows unlike on the two sides does not cancel wholly', () => {
    const stretched = Float64Array.from([1.5, 0, 0, 0, 1, 0, 0, 0, 1]);
    // (1 - 1.5)^2 * 0.04 = 0.01.
    expect(diagonal(side(), side(), identity, stretched)).toEqual([0.01, 0, 0]);
  });
  test('one dimension', () => {
    expect(scalarInstrumentVariance(0.1, 0.1, { rho: 0.5, level: 'same instrument', doubts: [] })).toBeCloseTo(0.01, 15);
    expect(scalarInstrumentVariance(0.3, 0.4, { rho: 0, level: 'different instruments', doubts: [] })).toBeCloseTo(0.25, 15);
  });
});

test('covariance of a difference by hand: 0.09 / 3 + 0.04 / 4 + 0.02', () => {
  expect(differenceCovariance({ first: [0.09], second: [0.04], firstSpots: 3, secondSpots: 4, instrument: [0.02] })[0]).toBeCloseTo(0.06, 15);
});
