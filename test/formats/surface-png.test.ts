import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SurfaceOptions } from '../../src/formats/surface-file.ts';
import { linearLight } from '../../src/formats/surface-png.ts';
import { readSurface } from '../../src/formats/surface-reader.ts';
import { fourBytes, pngBytes, pngChunk } from './support/surface-files.ts';

const linear: SurfaceOptions = { mmPerPixel: 0.05, transfer: 'linear' };

function picture(bytes: Uint8Array, options: SurfaceOptions = linear) {
  const { value, issues } = readSurface(bytes, options);
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  if (value?.kind !== 'photograph') throw new Error('no picture');
  return { ...value.picture, issues };
}

const refusals = (bytes: Uint8Array, options: SurfaceOptions = linear) => {
  const { value, issues } = readSurface(bytes, options);
  expect(value).toBeUndefined();
  return issues;
};

const ramp = (count: number, largest: number): number[] => Array.from({ length: count }, (_, index) => 1 + ((index * 7919) % (largest - 1)));

test.each([[8, false], [16, false], [8, true], [16, true]])('%i bit, interlaced %s, all filters: point for point', (depth, interlaced) => {
  fc.assert(fc.property(fc.integer({ min: 1, max: 21 }), fc.integer({ min: 1, max: 21 }), (width, height) => {
    const largest = depth === 8 ? 255 : 65535;
    const values = ramp(width * height, largest);
    const read = picture(pngBytes({ width, height, depth, values, interlaced }));
    expect([read.width, read.height, read.spacingMm, read.source]).toEqual([width, height, [0.05, 0.05], 'photograph']);
    expect([...read.values]).toEqual(values.map((value) => expect.closeTo(value / largest, 12)));
  }), { numRuns: 40, seed: 2 });
});

test('transparent points are missing', () => {
  for (const depth of [8, 16]) {
    expect([...picture(pngBytes({ width: 3, height: 1, depth, values: [50, 60, 70], alpha: [255, 0, 9] })).values].map(Number.isNaN)).toEqual([false, true, false]);
  }
});

test('transfer curve of IEC 61966-2-1', () => {
  // IEC 61966-2-1: 0.5 is 0.21404 in light, the line ends at 0.04045, which is 0.0031308.
  expect(linearLight(0.5, 'srgb')).toBeCloseTo(0.21404, 5);
  expect(linearLight(0.04045, 'srgb')).toBeCloseTo(0.0031308, 7);
  expect(linearLight(1, 'srgb')).toBe(1);
  expect(linearLight(0.3, 'linear')).toBe(0.3);
  expect(picture(pngBytes({ width: 1, height: 1, depth: 8, values: [128] }), { ...linear, transfer: 'srgb' }).values[0]).toBeCloseTo(0.21586, 5);
});

test('what the file says of curve and scale is used where the user says nothing, and contradictions are named', () => {
  const one = { width: 2, height: 1, depth: 8, values: [128, 100] };
  const withGamma = (gamma: number) => pngBytes({ ...one, extra: [['gAMA', fourBytes(gamma)], ['pHYs', Uint8Array.of(...fourBytes(20000, 10000), 1)]] });
  const read = picture(withGamma(100000), {});
  expect(read.spacingMm).toEqual([0.05, 0.1]);
  expect(read.values[0]).toBeCloseTo(128 / 255, 12);
  expect(read.issues).toMatchObject([{ code: 'spacing-assumed', severity: 'note' }]);
  expect(picture(withGamma(45455), {}).values[0]).toBeCloseTo(0.21586, 5);
  expect(picture(withGamma(50000), { mmPerPixel: 1 }).issues).toMatchObject([{ code: 'transfer-assumed', severity: 'warning' }]);
  expect(picture(withGamma(45455), linear).issues).toMatchObject([{ code: 'transfer-assumed', severity: 'warning' }]);
  expect(picture(pngBytes({ ...one, extra: [['sRGB', Uint8Array.of(0)]] }), { mmPerPixel: 1 }).issues).toEqual([]);
  expect(picture(pngBytes(one), { mmPerPixel: 1 }).issues).toMatchObject([{ code: 'transfer-assumed' }]);
  expect(refusals(pngBytes(one), { transfer: 'linear' })).toMatchObject([{ code: 'spacing-undeclared' }]);
  expect(refusals(pngBytes(one), { transfer: 'linear', mmPerPixel: 0 })).toMatchObject([{ code: 'out-of-range' }]);
});

test('a flat field takes out the fall of light', () => {
  const light = [200, 100, 50, 200];
  const part = light.map((value) => value / 2);
  const even = picture(pngBytes({ width: 4, height: 1, depth: 8, values: part }), { ...linear, flatField: pngBytes({ width: 4, height: 1, depth: 8, values: light }) });
  for (const value of even.values) expect(value).toBeCloseTo(even.values[0]!, 12);
  expect(refusals(pngBytes({ width: 4, height: 1, depth: 8, values: part }), { ...linear, flatField: pngBytes({ width: 2, height: 2, depth: 8, values: light }) })).toMatchObject([{ code: 'flat-field-size' }]);
  const dark = picture(pngBytes({ width: 2, height: 1, depth: 8, values: [9, 9] }), { ...linear, flatField: pngBytes({ width: 2, height: 1, depth: 8, values: [0, 9] }) });
  expect(dark.values[0]).toBeNaN();
});

test('clipped pictures are named', () => {
  expect(picture(pngBytes({ width: 4, height: 1, depth: 8, values: [255, 255, 3, 0] })).issues).toMatchObject([{ code: 'clipped', severity: 'warning' }]);
});

test('what is not a grey picture of 8 or 16 bit is refused', () => {
  const base = { width: 2, height: 2, depth: 8, values: [1, 2, 3, 4] };
  expect(refusals(pngBytes({ ...base, colour: 2 }))).toMatchObject([{ code: 'not-grey', found: 'colour of 8 bit' }]);
  expect(refusals(pngBytes({ ...base, depth: 4 }))).toMatchObject([{ code: 'not-grey' }]);
  expect(refusals(pngBytes({ ...base, width: 100000, height: 100000, raw: new Uint8Array(9) }))).toMatchObject([{ code: 'file-too-large' }]);
  expect(refusals(pngBytes({ ...base, width: 0, raw: new Uint8Array(9) }))).toMatchObject([{ code: 'out-of-range' }]);
  expect(refusals(pngBytes({ ...base, raw: Uint8Array.of(0, 1, 2, 9, 3, 4) }))).toMatchObject([{ code: 'unknown-type', path: 'rows[1]' }]);
  expect(refusals(pngBytes({ ...base, raw: Uint8Array.of(0, 1, 2) }))).toMatchObject([{ code: 'missing-data', path: 'IDAT' }]);
  // A small picture with a large content is unpacked no further than its size.
  expect(refusals(pngBytes({ ...base, raw: new Uint8Array(20_000_000) }))).toMatchObject([{ code: 'extra-data', path: 'IDAT' }]);
});

test('damage is found', () => {
  const bytes = pngBytes({ width: 5, height: 5, depth: 8, values: ramp(25, 255) });
  expect(refusals(bytes.slice(0, bytes.length - 12))).toMatchObject([{ code: 'missing-data', path: 'IEND' }]);
  const flipped = bytes.slice();
  flipped[50]! ^= 1;
  expect(refusals(flipped)).toMatchObject([{ code: 'bad-checksum' }]);
  const start = bytes.slice(0, 8);
  expect(refusals(Uint8Array.from([...start, ...pngChunk('IEND', new Uint8Array())]))).toMatchObject([{ code: 'missing-part', path: 'IHDR' }]);
  fc.assert(fc.property(fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 6 }), (edits) => {
    const edited = bytes.slice();
    for (const [place, byte] of edits) edited[8 + (place % (edited.length - 8))] = byte;
    const { value, issues } = readSurface(edited, linear);
    expect(value !== undefined || issues.length > 0).toBe(true);
  }), { numRuns: 300, seed: 6 });
});
