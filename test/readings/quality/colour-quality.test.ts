import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import { lightByName } from '../../../src/colour/index.ts';
import type { JudgedLight } from '../../../src/readings/colour-sample.ts';
import { colourQuality } from '../../../src/readings/quality/colour-quality.ts';
import { repeatability } from '../../../src/readings/quality/repeatability.ts';
import { glossQualities, textureQualities } from '../../../src/readings/quality/surface-quality.ts';
import type { Lab } from '../../../src/quantities.ts';
import type { CielabReading, Conditions, GlossReading, Reading } from '../../../src/readings/reading.ts';
import { groupColourReadings } from '../../../src/readings/reading-groups.ts';

const conditions = new Map<string, Conditions>([
  ['c', { id: 'c', instrument: 'one', geometry: '45c:0', apertureMm: 12, uv: 'excluded' }],
  ['g', { id: 'g', instrument: 'meter' }], ['h', { id: 'h', instrument: 'other meter' }], ['t', { id: 't', instrument: 'profiler' }],
]);
const light: JudgedLight = { name: 'D65', light: lightByName('D65') ?? (() => { throw new Error('no D65'); })(), observer: 10 };
const lab = (spot: number, value: Lab, more: Partial<CielabReading> = {}): CielabReading =>
  ({ quantity: 'cielab', spot: { name: `s${spot}` }, conditions: 'c', lab: value, light: 'D65', observer: 10, ...more });
const quality = (readings: readonly Reading[]) =>
  colourQuality(groupColourReadings(readings, conditions).groups[0], light, [0.1, 0.05, 0.05], { name: 'ciede2000' });

const colours: readonly Lab[] = [[25.1, 0.2, -1.1], [25.3, 0.25, -1.2], [24.9, 0.15, -1], [25.2, 0.3, -1.15], [25, 0.1, -1.05]];

describe('repeatability', () => {
  it('is the mean difference of the readings from their mean, with CIEDE2000 of culori', () => {
    const formula = differenceCiede2000();
    const point = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b });
    // Mean by hand: 125.5 / 5, 1 / 5, -5.5 / 5.
    const expected = colours.map((colour) => formula(point([25.1, 0.2, -1.1]), point(colour)));
    const found = repeatability(colours);
    expect(found.mcdm).toBeCloseTo(expected.reduce((sum, value) => sum + value, 0) / 5, 9);
    expect(found.largest).toBeCloseTo(Math.max(...expected), 9);
    // Squares of L* about 25.1: 0, .04, .04, .01, .01: 0.1 / 4; of a*: 0, .0025, .0025, .01, .01: 0.025 / 4.
    expect(found.sd[0]).toBeCloseTo(Math.sqrt(0.025), 10);
    expect(found.sd[1]).toBeCloseTo(Math.sqrt(0.00625), 10);
  });
});

describe('the quality of colour readings', () => {
  it('separates spots from flashes', () => {
    // Every spot twice, 0.02 apart in L*: variance of a pair 0.0002; means of the spots as in `colours`.
    const found = quality(colours.flatMap(([L, a, b], spot) => [lab(spot, [L - 0.01, a, b]), lab(spot, [L + 0.01, a, b])]));
    expect(found).toMatchObject({ readings: 10, spots: 5, rotations: 1, basis: 'cielab', light: 'D65' });
    expect(found?.repeatCovariance?.[0]).toBeCloseTo(0.0002, 10);
    expect(found?.components[0].flash?.variance).toBeCloseTo(0.0002, 10);
    expect(found?.components[0].spot?.variance).toBeCloseTo(0.025 - 0.0001, 10);
    expect(found?.spotSd[0]).toBeCloseTo(Math.sqrt(0.025), 10);
    expect(found?.outliers).toEqual([]);
  });

  it('points out the reading that stands out and leaves it in', () => {
    const readings = [...colours.map((colour, spot) => lab(spot, colour)), lab(9, [25.1, 3, -1.1])];
    const found = quality(readings);
    expect(found?.readings).toBe(6);
    expect(found?.outliers.map(({ reading, axisName }) => [reading, axisName])).toEqual([[readings[5], 'a*']]);
    const marked = quality([...readings.slice(0, 5), { ...readings[5], outlier: true }]);
    expect(marked?.readings).toBe(5);
    expect(marked?.outliers).toEqual([]);
  });

  it('knows no repeatability where no place was read twice', () => {
    const found = quality(colours.map((colour, spot) => lab(spot, colour)));
    expect(found?.repeatCovariance).toBeUndefined();
    expect(found?.components.every(({ flashHidden }) => flashHidden)).toBe(true);
  });

  it('is undefined under a light that the readings say nothing about', () => {
    expect(quality(colours.map((colour, spot) => lab(spot, colour, { light: 'A' })))).toBeUndefined();
  });
});

describe('the quality of gloss and texture readings', () => {
  const gloss = (spot: number, value: number, direction: 'along' | 'across', more: Partial<GlossReading> = {}): GlossReading =>
    ({ quantity: 'gloss', spot: { name: `s${spot}` }, conditions: 'g', angle: 60, gloss: value, direction, ...more });

  it('takes along and across the grain as two rotations', () => {
    const found = glossQualities([0, 0.1, -0.1, 0.2, -0.2].flatMap((shift, spot) => [gloss(spot, 2.2 + shift, 'along'), gloss(spot, 1.8 + shift, 'across')]), conditions, 0.1);
    expect(found).toHaveLength(1);
    // Both directions 0.4 apart on every spot: variance of two means 0.08, nothing left over; spots: 0.1 / 4.
    expect(found[0].components).toMatchObject({ design: 'spots by rotations', flashHidden: true });
    expect(found[0].components.rotation?.variance).toBeCloseTo(0.08, 10);
    expect(found[0].components.spot?.variance).toBeCloseTo(0.025, 10);
    expect(found[0].components.spotByRotation?.variance).toBeCloseTo(0, 10);
    expect(found[0]).toMatchObject({ angle: 60, instrument: 'meter', spots: 5, readings: 10, outliers: [] });
    expect(found[0].mean).toBeCloseTo(2, 10);
  });

  it('keeps to one instrument and to one angle', () => {
    const readings = [gloss(1, 2, 'along'), gloss(2, 2.1, 'along'), gloss(3, 9, 'along', { conditions: 'h' }), gloss(1, 80, 'along', { angle: 20 })];
    expect(glossQualities(readings, conditions, 0.1).map(({ angle, instrument, readings: count }) => [angle, instrument, count]))
      .toEqual([[20, 'meter', 1], [60, 'meter', 2]]);
  });

  it('takes sizes of texture by their logarithm', () => {
    const readings: Reading[] = [10, 11, 12.1].map((saUm, spot) => ({ quantity: 'texture', spot: { name: `s${spot}` }, conditions: 't', parameters: { saUm, str: 0.7 } }));
    const found = textureQualities(readings, conditions, 0.05);
    expect(found.map(({ parameter, relative }) => [parameter, relative])).toEqual([['saUm', true], ['str', false]]);
    // Steps of 10 % each: the sd of the logarithm is ln 1.1.
    expect(found[0].sd).toBeCloseTo(Math.log(1.1), 10);
    expect(found[1].sd).toBeCloseTo(0, 12);
  });
});
