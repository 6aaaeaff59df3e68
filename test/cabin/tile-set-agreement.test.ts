import { describe, expect, it } from 'vitest';
import type { Cabin, TileSet } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { instrumentsWithAgreement, tileSetDate, tileSetStudy } from '../../src/cabin/tile-set-agreement.ts';
import type { Lab } from '../../src/quantities.ts';
import { instrumentTerm } from '../../src/readings/instrument-term.ts';
import type { Conditions, Instrument, Reading } from '../../src/readings/reading.ts';
import { smallCabin } from '../support/small-cabin.ts';

const instruments: readonly Instrument[] = [
  ...['a', 'b', 'c', 'ball'].map((id): Instrument => ({ id, name: `Instrument ${id} (invented)`, kind: 'spectrophotometer', serial: id })),
  { id: 'meter', name: 'Glossmeter (invented)', kind: 'glossmeter', agreement: { date: '2030-01-01', tiles: 4, glossSd: 0.3 } },
  { id: 'meter-two', name: 'Second glossmeter (invented)', kind: 'glossmeter' },
];
const conditions: readonly Conditions[] = [
  ...['a', 'b', 'c'].map((id): Conditions => ({ id: `on-${id}`, instrument: id, geometry: '45c:0', apertureMm: 12, uv: 'excluded' })),
  { id: 'on-ball', instrument: 'ball', geometry: 'di:8', apertureMm: 12, uv: 'excluded' },
  { id: 'on-meter', instrument: 'meter' }, { id: 'on-meter-two', instrument: 'meter-two' },
];
const truth: readonly Lab[] = [[30, 0, 0], [50, 20, 10], [70, -10, 30], [40, 5, -20]];
/** Deviations by instrument and tile, written down. */
const deviations: Readonly<Record<string, readonly Lab[]>> = {
  a: [[0, 0, 0], [0.1, 0, 0], [-0.1, 0.05, 0], [0, 0, 0.05]],
  b: [[0.2, 0, 0.1], [0.3, 0.1, 0], [0.2, 0, 0], [0.1, 0, -0.1]],
  c: [[-0.1, 0, 0], [0, 0, 0.1], [0.1, -0.1, 0], [-0.2, 0.1, 0]],
  ball: [[8, 0, 0], [5, 0, 0], [2, 0, 0], [6, 0, 0]],
};
const colour = (instrument: string, tile: number): Reading => {
  const [L, a, b] = truth[tile];
  const [dL, da, db] = deviations[instrument][tile];
  return { quantity: 'cielab', spot: { name: '1' }, conditions: `on-${instrument}`, lab: [L + dL, a + da, b + db], light: 'D65', observer: 10, measuredAt: `2031-02-0${tile + 1}` };
};
const gloss = (meter: string, value: number): Reading => ({ quantity: 'gloss', spot: { name: '1' }, conditions: `on-${meter}`, angle: 60, gloss: value });

const set: TileSet = {
  id: 'tiles', name: 'Shared tiles (invented)',
  tiles: truth.map((_, tile) => ({
    id: `t${tile}`,
    readings: [colour('a', tile), colour('b', tile), colour('c', tile), colour('ball', tile), gloss('meter', 10 * (tile + 1)), gloss('meter-two', 10 * (tile + 1) + (tile % 2 === 0 ? 0.2 : -0.4))],
  })),
};
const cabin: Cabin = { ...smallCabin(), asOf: '2031-03-01', instruments, conditions, masters: [], files: [], parts: [], joints: [], runs: [], tileSets: [set] };

describe('a tile set of the cabin', () => {
  const study = tileSetStudy(cabin, set);

  it('compares instruments of one class of geometry only', () => {
    expect(study.colour.map(({ geometryClass, instruments: own, pairs }) => [geometryClass, own.map(({ instrument }) => instrument), pairs.length]))
      .toEqual([['45:0', ['a', 'b', 'c'], 3], ['di:8', [], 0]]);
  });

  it('tells deviations from the mean of all, tile by tile and on average', () => {
    const [, b] = study.colour[0].instruments;
    // First tile: mean of 0, 0.2, -0.1 is 0.1 / 3; of b*: 0.1 / 3.
    expect(b.tiles[0].deviation).toEqual([expect.closeTo(0.2 - 0.1 / 3, 10), expect.closeTo(0, 10), expect.closeTo(0.1 - 0.1 / 3, 10)]);
    // L* of b: 0.8 in all; of all three: 0 + 0.8 - 0.2 = 0.6, a third of it 0.2.
    expect(b.mean[0]).toBeCloseTo((0.8 - 0.2) / 4, 10);
    const pair = study.colour[0].pairs[0];
    expect([pair.first, pair.second]).toEqual(['a', 'b']);
    expect(pair.mean[0]).toBeCloseTo(0.8 / 4, 10);
    // L* differences 0.2, 0.2, 0.3, 0.1: sum of squares 0.18.
    expect(pair.covarianceOfDifference[0]).toBeCloseTo(0.18 / 4, 10);
  });

  it('tells the gloss agreement of two meters as half of their differences', () => {
    // Differences 0.2, -0.4, 0.2, -0.4: (0.04 + 0.16) x 2 / 4 = 0.1; half of it.
    expect(study.gloss[0]).toMatchObject({ angle: 60, tiles: ['t0', 't1', 't2', 't3'] });
    for (const { sd } of study.gloss[0].instruments) expect(sd).toBeCloseTo(Math.sqrt(0.05), 10);
  });

  it('leaves out tiles that one instrument did not read, and an instrument with fewer than three', () => {
    const without = (instrument: string, from: number): TileSet => ({
      ...set, tiles: set.tiles.map((tile, index) => ({ ...tile, readings: tile.readings.filter((reading) => reading.conditions !== `on-${instrument}` || index < from) })),
    });
    expect(tileSetStudy(cabin, without('c', 3)).colour[0]).toMatchObject({ tiles: ['t0', 't1', 't2'], tilesLeftOut: ['t3'], instrumentsLeftOut: [] });
    expect(tileSetStudy(cabin, without('c', 2)).colour[0]).toMatchObject({ tiles: ['t0', 't1', 't2', 't3'], tilesLeftOut: [], instrumentsLeftOut: ['c'] });
  });
});

describe('agreement stored in the cabin', () => {
  const stored = instrumentsWithAgreement(cabin, set);
  const byId = new Map(stored.map((instrument) => [instrument.id, instrument]));

  it('is dated by the last reading and makes a valid cabin', () => {
    expect(tileSetDate(cabin, set)).toBe('2031-02-04');
    const { value, issues } = restoreCabin(JSON.parse(JSON.stringify({ ...cabin, instruments: stored })));
    expect(issues.filter(({ code }) => code !== 'nothing-to-judge')).toEqual([]);
    expect(value?.instruments).toEqual(stored);
  });

  it('leaves instruments alone that nobody was compared with', () => {
    expect(byId.get('ball')).toBe(instruments[3]);
  });

  it('replaces what was measured anew', () => {
    expect(byId.get('meter')?.agreement).toMatchObject({ tiles: 4, date: '2031-02-04' });
    expect(byId.get('meter')?.agreement?.glossSd).toBeCloseTo(Math.sqrt(0.05), 10);
    expect(Object.keys(byId.get('a')?.agreement?.shared ?? {}).sort()).toEqual(['b', 'c']);
  });

  it('enters a verdict as the covariance of the difference that was seen on the tiles', () => {
    const side = (id: string) => ({ instrument: byId.get(id), geometry: '45c:0' as const });
    const identity = Float64Array.from([1, 0, 0, 0, 1, 0, 0, 0, 1]);
    const term = instrumentTerm({
      first: side('a'), second: side('b'), correlation: { rho: 0, level: 'different instruments', doubts: [] },
      firstCarrier: identity, secondCarrier: identity, assumedSd: [1, 1, 1],
    });
    expect(term).toMatchObject({ assumedFor: [], shared: true });
    // By hand from the deviations: L* 0.18 / 4; a* differences 0, 0.1, -0.05, 0: 0.0125 / 4; b* 0.1, 0, 0, -0.15: 0.0325 / 4.
    expect([term.covariance[0], term.covariance[4], term.covariance[8]]).toEqual([expect.closeTo(0.045, 10), expect.closeTo(0.003125, 10), expect.closeTo(0.008125, 10)]);
  });

  it('takes back what an instrument shared with one that was compared anew', () => {
    const old: Cabin = {
      ...cabin,
      instruments: instruments.map((instrument) => (instrument.id === 'ball'
        ? { ...instrument, agreement: { date: '2030-01-01', tiles: 12, covariance: [1, 0, 0, 0, 1, 0, 0, 0, 1], shared: { a: [0.1, 0, 0, 0, 0.1, 0, 0, 0, 0.1] } } } : instrument)),
    };
    expect(instrumentsWithAgreement(old, set)[3].agreement).toEqual({ date: '2030-01-01', tiles: 12, covariance: [1, 0, 0, 0, 1, 0, 0, 0, 1] });
  });
});
