import { expect, test } from 'vitest';
import type { Lab } from '../../src/quantities.ts';
import { lightByName, reachingChange } from '../../src/colour/index.ts';
import { independentLab } from '../support/independent-colorimetry.ts';
import { seededNumbers, smoothReflectance } from '../support/seeded-numbers.ts';

const light = lightByName('D65')!;
const layout = { startNm: 400, stepNm: 10, count: 31 };

test.each([[1, 0, 0], [5, -2, 3], [-8, 0, 0], [0, 6, -6]] as const)('moves a curve by dL* %f, da* %f, db* %f in full, by an independent computation', (...dLab: [number, number, number]) => {
  for (const seed of [1, 2, 3, 4]) {
    const curve = smoothReflectance(seededNumbers(seed));
    const values = Array.from({ length: 31 }, (_, i) => 0.05 + curve(400 + 10 * i));
    const change = reachingChange({ startNm: 400, stepNm: 10, values }, light, 10, dLab as Lab);
    const [before, after] = [values, values.map((value, band) => value + change[band]!)].map((each) => independentLab(each, layout, 'D65', 10));
    dLab.forEach((asked, axis) => expect(after![axis]! - before![axis]!).toBeCloseTo(asked, 3));
  }
});

test('no reflectance falls below what something can have, and nothing asked is nothing changed', () => {
  const values = Array.from({ length: 31 }, () => 0.02);
  const change = reachingChange({ startNm: 400, stepNm: 10, values }, light, 10, [-40, 0, 0]);
  for (const [band, value] of values.entries()) expect(value + change[band]!).toBeGreaterThanOrEqual(0.0005 - 1e-12);
  expect(Array.from(reachingChange({ startNm: 400, stepNm: 10, values }, light, 10, [0, 0, 0])).every((value) => value === 0)).toBe(true);
});
