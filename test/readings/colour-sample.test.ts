import { describe, expect, test } from 'vitest';
import { correctBandpass, lightByName, spectrumToLab } from '../../src/colour/index.ts';
import type { Light } from '../../src/colour/index.ts';
import { colourSample } from '../../src/readings/colour-sample.ts';
import { carriedCovariance, labCarrier } from '../../src/readings/lab-carrier.ts';
import { covarianceOfSd } from '../../src/readings/matrix3.ts';
import type { ColourReading } from '../../src/readings/reading.ts';
import { groupColourReadings } from '../../src/readings/reading-groups.ts';
import { pooledCovariance, sampleCovariance } from '../../src/readings/sample-covariance.ts';

const light = (name: string): Light => {
  const found = lightByName(name);
  if (found === undefined) throw new Error(`no light ${name}`);
  return found;
};
const judged = ['D65', 'A', 'FL11'].map((name) => ({ name, light: light(name), observer: 10 as const }));
const conditions = new Map([['c', { id: 'c', instrument: 'one', geometry: '45a:0' as const, apertureMm: 8 }]]);
const group = (readings: readonly ColourReading[]) => groupColourReadings(readings, conditions).groups[0];
const curve = (level: number, tilt: number): number[] => Array.from({ length: 31 }, (_, i) => level + tilt * (i / 30 - 0.5));
const spectrum = (spot: string, values: readonly number[], more: object = {}): ColourReading =>
  ({ quantity: 'spectrum', startNm: 400, stepNm: 10, values, conditions: 'c', spot: { name: spot }, ...more });
const cielab = (spot: string, lab: readonly [number, number, number], name = 'D65'): ColourReading =>
  ({ quantity: 'cielab', lab, light: name, observer: 10, conditions: 'c', spot: { name: spot } });

describe('spectra', () => {
  test('the mean is the colour of the mean spectrum; rotations and flashes of a spot are averaged first', () => {
    const sample = colourSample(group([
      spectrum('a', curve(0.2, 0)), spectrum('a', curve(0.24, 0), { rotationDeg: 90 }), spectrum('a', curve(0.28, 0), { rotationDeg: 90 }),
      spectrum('b', curve(0.3, 0), { averagedFrom: 3 }), spectrum('b', curve(0.34, 0)),
    ]), judged);
    // Spot a: (0.20 + (0.24 + 0.28) / 2) / 2 = 0.23; spot b: (3 * 0.30 + 0.34) / 4 = 0.31; mean 0.27.
    expect(sample?.spots).toBe(2);
    expect(sample?.spectrum?.values[7]).toBeCloseTo(0.27, 12);
    // An even reflectance of 0.27: L* = 116 * 0.27^(1/3) - 16 under every light (ISO/CIE 11664-4).
    sample?.means.forEach((lab) => {
      expect(lab?.[0]).toBeCloseTo(116 * Math.cbrt(0.27) - 16, 9);
      expect(lab?.[1]).toBeCloseTo(0, 9);
    });
    // Two spots: variance of L* is half the squared distance, the same under every light and fully shared between them.
    const distance = 116 * (Math.cbrt(0.31) - Math.cbrt(0.23));
    expect(sample?.covariance[0]).toBeCloseTo((distance * distance) / 2, 9);
    expect(sample?.covariance[3]).toBeCloseTo((distance * distance) / 2, 9);
  });

  test('one spot has no spread; bandpass is corrected only where a reading says that it is not', () => {
    const values = curve(0.3, 0.4).map((value, i) => value + 0.05 * Math.sin(i));
    const plain = colourSample(group([spectrum('a', values)]), judged);
    const corrected = colourSample(group([spectrum('a', values, { bandpassCorrected: false })]), judged);
    expect(plain?.covariance.every((entry) => entry === 0)).toBe(true);
    expect(plain?.means[1]).toEqual(spectrumToLab({ startNm: 400, stepNm: 10, values }, light('A'), 10));
    expect(corrected?.means[1]).toEqual(spectrumToLab({ startNm: 400, stepNm: 10, values: correctBandpass(values) }, light('A'), 10));
    expect(corrected?.means[1]).not.toEqual(plain?.means[1]);
  });

  test('several grids are never mixed: most spots, then the finer; spectra go before CIELAB', () => {
    const coarse = { quantity: 'spectrum', startNm: 400, stepNm: 20, values: Array.from({ length: 16 }, () => 0.5), conditions: 'c' } as const;
    const sample = colourSample(group([{ ...coarse, spot: { name: 'a' } }, { ...coarse, spot: { name: 'b' } }, spectrum('c', curve(0.2, 0)), cielab('d', [9, 9, 9])]), judged);
    expect(sample).toMatchObject({ basis: 'spectrum', spots: 2, unused: 2, spectrum: { stepNm: 20 } });
    expect(colourSample(group([{ ...coarse, spot: { name: 'a' } }, spectrum('c', curve(0.2, 0))]), judged)?.spectrum?.stepNm).toBe(10);
  });
});

describe('CIELAB and differences', () => {
  test('count under their own light and observer only', () => {
    const sample = colourSample(group([cielab('a', [40, 1, 2]), cielab('b', [41, 1, 4])]), judged);
    expect(sample).toMatchObject({ basis: 'cielab', spots: 2, means: [[40.5, 1, 3], undefined, undefined], spectrum: undefined });
    // Sample covariance by hand: L* 0.5, b* 2, together 1; nothing elsewhere.
    expect([0, 2, 20, 40].map((at) => sample?.covariance[at])).toEqual([0.5, 1, 2, 0]);
    expect(colourSample(group([cielab('a', [40, 1, 2], 'F99')]), judged)).toBeUndefined();
  });
  test('two lights on the same spots vary together', () => {
    const sample = colourSample(group([cielab('a', [40, 0, 0]), cielab('a', [42, 0, 0], 'A'), cielab('b', [41, 0, 0]), cielab('b', [43, 0, 0], 'A')]), judged);
    expect(sample?.covariance[3]).toBe(0.5);
    const apart = colourSample(group([cielab('a', [40, 0, 0]), cielab('b', [41, 0, 0]), cielab('c', [42, 0, 0], 'A'), cielab('d', [43, 0, 0], 'A')]), judged);
    expect([apart?.covariance[0], apart?.covariance[3], apart?.covariance[30]]).toEqual([0.5, 0, 0.5]);
  });
  test('a difference adds to its master, which must be known under that light', () => {
    const difference: ColourReading = { quantity: 'difference', difference: [0.5, -0.1, 0.2], master: 'm', light: 'D65', observer: 10, conditions: 'c', spot: { name: 'a' } };
    const found = colourSample(group([difference]), judged, (id, name) => (id === 'm' && name === 'D65' ? [30, 1, -1] : undefined));
    expect(found?.basis).toBe('difference');
    [30.5, 0.9, -0.8].forEach((value, i) => expect(found?.means[0]?.[i]).toBeCloseTo(value, 12));
    expect(colourSample(group([difference]), judged)).toBeUndefined();
  });
});

describe('pooled covariance', () => {
  test('by hand: (8 * 0.04 + 2 * 0.10) / 10 = 0.052 for three spots; one spot gives the assumption', () => {
    expect(pooledCovariance([0.04], [0.1], 3, 8)[0]).toBeCloseTo(0.052, 15);
    expect(pooledCovariance([0.04], [NaN], 1, 8)[0]).toBe(0.04);
  });
  test('sample covariance by hand', () => {
    expect([...sampleCovariance([[1, 2], [3, 2], [5, 8]])]).toEqual([4, 6, 6, 12]);
    expect([...sampleCovariance([[1, 2]])]).toEqual([0, 0, 0, 0]);
  });
});

describe('labCarrier', () => {
  const grey = { spectrum: { startNm: 400, stepNm: 10, values: curve(0.2, 0) }, lights: judged };
  test('is the identity under D65 and without a spectrum', () => {
    expect([...labCarrier(grey).subarray(0, 9)]).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1]);
    expect([...labCarrier({ ...grey, spectrum: undefined }).subarray(9, 18)]).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1]);
  });
  test('lightness of a grey is carried nearly whole; every deviation keeps its order of size', () => {
    const carrier = labCarrier(grey);
    for (const at of [9, 18]) {
      expect(carrier[at]).toBeCloseTo(1, 1);
      for (let k = 0; k < 9; k++) expect(Math.abs(carrier[at + k])).toBeLessThan(2.5);
    }
  });
  test('a covariance is carried as P C P\', symmetric and the given one under D65', () => {
    const carried = carriedCovariance(covarianceOfSd([0.1, 0.2, 0.3]), labCarrier(grey));
    expect([carried[0], carried[10], carried[20]].map((value) => Number(value.toFixed(12)))).toEqual([0.01, 0.04, 0.09]);
    for (let i = 0; i < 9; i++) for (let j = 0; j < 9; j++) expect(carried[9 * i + j]).toBeCloseTo(carried[9 * j + i], 12);
  });
});
