import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { correctBandpass } from '../../src/colour/index.ts';
import { workedBandpass } from '../../src/colour/published/interpolation.ts';

test('worked values (ASTM E2729-16, a = 0.083, from the measured values only; independent program, 5 decimals)', () => {
  const corrected = correctBandpass(workedBandpass.measured);
  corrected.forEach((value, i) => expect(Math.abs(value - workedBandpass.corrected[i]!)).toBeLessThan(5.001e-6));
});

test('undoes a triangular passband as wide as the interval, on a curve that bends slowly', () => {
  // The passband itself, integrated numerically over +-10 nm: an independent model of the instrument.
  const truth = (nm: number) => 0.4 + 0.3 * Math.sin((nm - 400) / 45);
  const measured = Array.from({ length: 31 }, (_, i) => {
    let [sum, weight] = [0, 0];
    for (let offset = -9.95; offset < 10; offset += 0.1) {
      sum += (1 - Math.abs(offset) / 10) * truth(400 + 10 * i + offset);
      weight += 1 - Math.abs(offset) / 10;
    }
    return sum / weight;
  });
  const error = (values: readonly number[]) => Math.max(...values.slice(1, -1).map((value, i) => Math.abs(value - truth(410 + 10 * i))));
  expect(error(correctBandpass(measured))).toBeLessThan(error(measured) / 50);
});

test('a straight line inside stays as it is, and the order of the values does not matter', () => {
  const values = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 40 });
  fc.assert(fc.property(values, (measured) => {
    const there = correctBandpass(measured);
    const back = correctBandpass(measured.toReversed()).toReversed();
    there.forEach((value, i) => expect(value).toBeCloseTo(back[i]!, 14));
    // The correction moves power between neighbours and keeps the total.
    expect(there.reduce((sum, value) => sum + value, 0)).toBeCloseTo(measured.reduce((sum, value) => sum + value, 0), 12);
  }));
  expect(correctBandpass([0.1, 0.2, 0.3, 0.4]).slice(1, 3)).toEqual([expect.closeTo(0.2, 15), expect.closeTo(0.3, 15)]);
});

test('one value and none', () => {
  expect(correctBandpass([0.3])).toEqual([0.3]);
  expect(correctBandpass([])).toEqual([]);
});
