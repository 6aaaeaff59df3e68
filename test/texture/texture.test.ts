import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareTexture, raOfVdiClass, vdiClassOfRa, verifyTexture, type ComparableTexture } from '../../src/texture/index.ts';

const limits = { ratio: [0.8, 1.25], strDifference: 0.2, vdiClass: 1 } as const;
const surface: ComparableTexture = { saUm: 10, salMm: 0.4, str: 0.7, vdiClass: 30 };

test('all published and derived values are met', () => {
  const rows = verifyTexture();
  expect(rows).toHaveLength(13 + 6 + 18);
  expect(rows.filter((row) => !row.ok)).toEqual([]);
});

test('classes and Ra', () => {
  // VDI 3400: class 0 is 0.1 um and 20 classes are a factor of 10; three classes a factor of 1.41.
  expect(vdiClassOfRa(0.1)).toBeCloseTo(0, 12);
  expect(vdiClassOfRa(10)).toBeCloseTo(40, 12);
  expect(raOfVdiClass(20)).toBeCloseTo(1, 12);
  expect(raOfVdiClass(33) / raOfVdiClass(30)).toBeCloseTo(1.41, 2);
  expect(vdiClassOfRa(raOfVdiClass(27.3))).toBeCloseTo(27.3, 10);
  for (const none of [0, -1, NaN]) expect(vdiClassOfRa(none)).toBeNaN();
});

test('each criterion against its limit, a value on the limit within', () => {
  const on = compareTexture(surface, { saUm: 12.5, salMm: 0.5, str: 0.9, vdiClass: 31 }, limits);
  expect(on.missing).toEqual([]);
  expect(on.criteria.map(({ name, limit, within }) => [name, limit, within])).toEqual([
    ['Sa ratio', 1.25, true], ['Sal ratio', 1.25, true], ['Str difference', 0.2, true], ['VDI 3400 class difference', 1, true],
  ]);
  const over = compareTexture(surface, { saUm: 12.6, salMm: 0.51, str: 0.91, vdiClass: 31.1 }, limits);
  expect(over.criteria.map(({ within }) => within)).toEqual([false, false, false, false]);
  expect(over.criteria[0]!.value).toBeCloseTo(1.26, 12);
  const under = compareTexture(surface, { saUm: 7.9, salMm: 0.31, str: 0.49, vdiClass: 28.9 }, limits);
  expect(under.criteria.map(({ within }) => within)).toEqual([false, false, false, false]);
});

test('the stricter end of an uneven ratio decides, whichever way it is asked', () => {
  const uneven = { ...limits, ratio: [0.9, 1.25] } as const;
  for (const [a, b] of [[10, 11.2], [11.2, 10]] as const) {
    const [criterion] = compareTexture({ saUm: a }, { saUm: b }, uneven).criteria;
    expect(criterion).toMatchObject({ name: 'Sa ratio', within: false });
    expect(criterion!.limit).toBeCloseTo(1 / 0.9, 12);
  }
});

test('what is absent or unusable is missing, never within', () => {
  expect(compareTexture({}, surface, limits)).toEqual({
    criteria: [], missing: ['Sa ratio', 'Sal ratio', 'Str difference', 'VDI 3400 class difference'],
  });
  expect(compareTexture({ saUm: 0, salMm: NaN, str: Infinity, vdiClass: NaN }, surface, limits).criteria).toEqual([]);
  expect(compareTexture({ saUm: 10 }, surface, limits).missing).toEqual(['Sal ratio', 'Str difference', 'VDI 3400 class difference']);
});

test('swapping the surfaces changes nothing', () => {
  const positive = fc.double({ min: 0.01, max: 100, noNaN: true });
  const texture = fc.record({ saUm: positive, salMm: positive, str: fc.double({ min: 0, max: 1, noNaN: true }), vdiClass: fc.integer({ min: 0, max: 45 }) },
    { requiredKeys: [] });
  fc.assert(fc.property(texture, texture, (a, b) => {
    expect(compareTexture(b, a, limits)).toEqual(compareTexture(a, b, limits));
  }));
});
