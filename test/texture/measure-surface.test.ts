import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { HeightMap, MeasuredParameters, MeasureOptions } from '../../src/texture/index.ts';
import { heightMap, measureSurfaceSteps, measuredMask, runSteps, watchSteps } from '../../src/texture/index.ts';
import { grain, surfaceOf } from './support/surfaces.ts';

const measure = (map: HeightMap, options: MeasureOptions = { form: 'none' }) => runSteps(measureSurfaceSteps(map, options));
const wave = (x: number, period: number): number => Math.sin((2 * Math.PI * x) / period);

function near(value: number | undefined, expected: number, share: number): void {
  expect(value).toBeDefined();
  expect(Math.abs(value! / expected - 1)).toBeLessThan(share);
}

// ISO 25178-2 by its integrals over whole periods, by hand: amplitude A, period p.
test.each([[64, 8], [32, 16], [128, 4]])('a sine of %i points a period on 512 x 512, to 0.5 %%', (points, periods) => {
  const [A, spacing] = [4, 0.01];
  const p = points * spacing;
  expect(points * periods).toBe(512);
  const { parameters, strAtMost } = measure(surfaceOf(512, spacing, (x) => A * wave(x, p)));
  near(parameters.saUm, (2 * A) / Math.PI, 0.005);
  near(parameters.sqUm, A / Math.SQRT2, 0.005);
  expect(Math.abs(parameters.ssk!)).toBeLessThan(0.005);
  near(parameters.sku, 1.5, 0.005);
  near(parameters.szUm, 2 * A, 0.005);
  near(parameters.spUm, A, 0.005);
  near(parameters.svUm, A, 0.005);
  near(parameters.salMm, 0.2180 * p, 0.005);
  expect(parameters.str).toBe(0);
  expect(strAtMost).toBeLessThan(0.15);
  expect(parameters.stdDeg).toBeCloseTo(90, 3);
  const slope = ((2 * Math.PI * A) / 1000 / p) / Math.SQRT2;
  near(parameters.sdq, slope, 0.005);
  near(parameters.sdr, slope ** 2 / 2, 0.005);
  near(parameters.raUm, (2 * A) / Math.PI, 0.005);
  // A section is a fifth of the profile and must hold a period for both its peak and its pit.
  if (periods >= 5) near(parameters.rzUm, 2 * A, 0.005);
  near(parameters.rsmMm, p, 0.005);
});

test('an egg box of 64 points a period on 512 x 512, to 0.5 %', () => {
  const [A, p] = [4, 0.64];
  const { parameters } = measure(surfaceOf(512, 0.01, (x, y) => A * wave(x, p) * wave(y, p)));
  near(parameters.saUm, (4 * A) / Math.PI ** 2, 0.005);
  near(parameters.sqUm, A / 2, 0.005);
  expect(Math.abs(parameters.ssk!)).toBeLessThan(0.005);
  near(parameters.sku, 2.25, 0.005);
  near(parameters.salMm, 0.2180 * p, 0.005);
  near(parameters.str, 0.875, 0.005);
});

test('a tilted plane: 45 degrees has Sdr sqrt 2 - 1, and nothing is left of it after levelling', () => {
  const plane = surfaceOf(200, 0.01, (x) => 5000 + 1000 * x);
  near(measure(plane).parameters.sdr, Math.SQRT2 - 1, 1e-9);
  near(measure(plane).parameters.sdq, 1, 1e-9);
  const { parameters } = measure(plane, { form: 'plane' });
  expect(parameters.saUm).toBeLessThan(1e-9);
  expect(parameters.sqUm).toBeLessThan(1e-9);
  // Rounding has no shape.
  expect(parameters).not.toHaveProperty('ssk');
  expect(parameters).not.toHaveProperty('salMm');
});

test('form by least squares: a bowl goes with second order, not with a plane, missing points or not', () => {
  const bowl = (x: number, y: number): number => 300 + 12 * x - 7 * y + 3 * x * x + 2 * x * y - 4 * y * y;
  const map = surfaceOf(120, 0.05, (x, y) => ((x * 20) % 7 < 1 && y > 2 ? NaN : bowl(x, y)));
  expect(map.missing).toBeGreaterThan(500);
  expect(measure(map, { form: 'plane' }).parameters.sqUm).toBeGreaterThan(1);
  expect(measure(map, { form: 'second-order' }).parameters.sqUm).toBeLessThan(1e-9);
  // The part of the surface that is no form stays: a fine wave is near orthogonal to it.
  const both = surfaceOf(256, 0.05, (x, y) => bowl(x, y) + 2 * wave(x, 0.4));
  near(measure(both, { form: 'second-order' }).parameters.sqUm, Math.SQRT2, 0.005);
});

test('form of too few points takes what they determine', () => {
  const line = heightMap(5, 1, [1, 1], Float64Array.from([1, 2, 3, 4, 5]));
  expect(measure(line, { form: 'plane' }).parameters.sqUm).toBeLessThan(1e-12);
  const point = heightMap(1, 1, [1, 1], Float64Array.from([7]));
  expect(measure(point, { form: 'second-order' }).parameters.sqUm).toBe(0);
  const nothing = heightMap(2, 2, [1, 1], new Float64Array(4).fill(NaN));
  expect(measure(nothing).parameters).toEqual({});
});

/** What a turn by a quarter does to a map. */
function turned({ width, height, spacingMm, values }: HeightMap): HeightMap {
  const result = new Float64Array(values.length);
  for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) result[x * height + (height - 1 - y)] = values[y * width + x]!;
  return heightMap(height, width, [spacingMm[1], spacingMm[0]], result);
}

const sizes = ['saUm', 'sqUm', 'ssk', 'sku', 'spUm', 'svUm', 'szUm', 'salMm', 'str', 'sdq', 'sdr'] as const satisfies readonly (keyof MeasuredParameters)[];

test('turned by a quarter: all parameters stay, the lay turns', () => {
  const map = surfaceOf(240, 0.02, (x, y) => 3 * wave(x, 0.8) * wave(y, 1.6) + wave(x + y, 1.2));
  const options = { form: 'second-order', lFilterMm: 1.5, sFilterMm: 0.1 } as const;
  const [before, after] = [measure(map, options).parameters, measure(turned(map), options).parameters];
  // The L-filter of 75 points is applied on a coarser grid that begins at one end: to 3e-4 of the heights.
  for (const key of sizes) near(after[key], before[key]!, 1e-4);
  const turn = Math.abs(after.stdDeg! - before.stdDeg!);
  expect(Math.abs(turn - 90)).toBeLessThan(0.01);
});

test('turned by 45 degrees on a repeating field: sizes stay, the lay turns by 45', () => {
  const straight = measure(surfaceOf(512, 0.01, (x) => 3 * wave(x, 5.12 / 14))).parameters;
  // (10, 10) waves a field are as long as 14.14 along x.
  const oblique = measure(surfaceOf(512, 0.01, (x, y) => 3 * wave(x + y, 5.12 / 10))).parameters;
  near(oblique.saUm, straight.saUm!, 0.005);
  near(oblique.sdq, straight.sdq! * (Math.hypot(10, 10) / 14), 0.005);
  near(oblique.salMm, straight.salMm! * (14 / Math.hypot(10, 10)), 0.005);
  expect(oblique.stdDeg).toBeCloseTo(135, 1);
});

test('heights and lengths scale as their units', () => {
  fc.assert(fc.property(fc.double({ min: 0.1, max: 50, noNaN: true }), fc.double({ min: 0.2, max: 5, noNaN: true }), (high, wide) => {
    const shape = (x: number, y: number): number => wave(x, 0.4) * wave(y, 0.8) + 0.3 * wave(x, 0.2) ** 2;
    const one = measure(surfaceOf(64, 0.025, shape)).parameters;
    const other = measure(surfaceOf(64, 0.025 * wide, (x, y) => high * shape(x / wide, y / wide))).parameters;
    for (const key of ['saUm', 'sqUm', 'spUm', 'svUm', 'szUm', 'raUm', 'rzUm'] as const) near(other[key], high * one[key]!, 1e-9);
    for (const key of ['sku', 'str'] as const) near(other[key], one[key]!, 1e-6);
    expect(other.ssk).toBeCloseTo(one.ssk!, 9);
    for (const key of ['salMm', 'rsmMm'] as const) near(other[key], wide * one[key]!, 1e-6);
    near(other.sdq, (one.sdq! * high) / wide, 1e-9);
  }), { numRuns: 15, seed: 5 });
});

test('turning the surface over swaps peaks and pits', () => {
  const map = surfaceOf(100, 0.02, (x, y) => wave(x, 0.4) ** 2 * wave(y, 0.5));
  const [up, down] = [measure(map).parameters, measure(heightMap(100, 100, [0.02, 0.02], map.values.map((z) => -z) as Float64Array)).parameters];
  near(down.spUm, up.svUm!, 1e-9);
  expect(down.ssk).toBeCloseTo(-up.ssk!, 9);
  near(down.salMm, up.salMm!, 1e-9);
});

test('sampled half as fine, the parameters stay', () => {
  const shape = (x: number, y: number): number => 4 * wave(x, 0.64) * wave(y, 0.32) + wave(x + y, 0.64);
  const [fine, coarse] = [measure(surfaceOf(512, 0.01, shape)).parameters, measure(surfaceOf(256, 0.02, shape)).parameters];
  for (const key of ['saUm', 'sqUm', 'sku', 'salMm', 'str', 'sdq', 'sdr', 'rsmMm'] as const) near(coarse[key], fine[key]!, 0.005);
});

test('a large field is sampled for Sal and Str without harm, short correlation or long', () => {
  const long = measure(surfaceOf(1500, 0.01, (x, y) => 4 * wave(x, 1.5) * wave(y, 3)));
  near(long.parameters.salMm, 0.2180 * 1.5, 0.005);
  near(long.parameters.str, 0.5, 0.05);
  const short = measure(surfaceOf(1536, 0.01, (x, y) => 4 * wave(x, 0.16) * wave(y, 0.16)));
  near(short.parameters.salMm, 0.2180 * 0.16, 0.005);
});

test('missing points at random change little and are counted', () => {
  const whole = grain(256, 0.02, 0.3, 10, 11);
  const values = whole.values.map((z, index) => ((index * 7919) % 10 === 0 ? NaN : z)) as Float64Array;
  const holed = heightMap(256, 256, [0.02, 0.02], values);
  expect(holed.missing).toBe(Math.ceil((256 * 256) / 10));
  expect(measuredMask(holed).filter((bit) => bit === 0)).toHaveLength(holed.missing);
  const [a, b] = [measure(whole).parameters, measure(holed)];
  for (const key of ['saUm', 'sqUm', 'sku', 'salMm', 'str'] as const) near(b.parameters[key], a[key]!, 0.02);
  expect(b.issues.map(({ code }) => code)).toContain('many-missing-points');
});

test('profiles bridge a few missing points and leave out gappy rows', () => {
  const shape = (x: number): number => 3 * wave(x, 0.64);
  const some = surfaceOf(256, 0.01, (x, y) => (Math.round(x * 100 + y * 3700) % 23 === 0 ? NaN : shape(x)));
  expect(some.missing).toBeGreaterThan(2000);
  near(measure(some).parameters.raUm, 6 / Math.PI, 0.005);
  near(measure(some).parameters.rsmMm, 0.64, 0.005);
  const many = surfaceOf(256, 0.01, (x) => (x < 0.4 ? NaN : shape(x)));
  expect(measure(many).profiles).toBeUndefined();
  expect(measure(many).parameters).not.toHaveProperty('raUm');
  near(measure(many).parameters.sqUm, 3 / Math.SQRT2, 0.05);
});

test('filters leave what lies between them', () => {
  const map = surfaceOf(600, 0.01, (x, y) => 20 * wave(x + 0.75, 3) + 4 * wave(y, 0.5) + wave(x, 0.05));
  const { parameters } = measure(map, { form: 'none', sFilterMm: 0.1, lFilterMm: 1 });
  // ISO 16610-61: of 0.5 mm 2^-0.04 passes the S-filter and 1 - 2^-4 the L-filter; of 0.05 mm 2^-4; of 3 mm 1 - 2^-0.111.
  const kept = Math.hypot(4 * 2 ** -0.04 * (1 - 2 ** -4), 2 ** -4, 20 * (1 - 2 ** (-1 / 9))) / Math.SQRT2;
  near(parameters.sqUm, kept, 0.03);
});

test('profiles: a triangle wave has Ra A / 2, and small ripples are no elements of RSm', () => {
  const triangle = (x: number): number => Math.abs((((x / 0.5) % 1) + 1) % 1 - 0.5) * 4 - 1;
  const { parameters, profiles } = measure(surfaceOf(500, 0.01, (x) => 10 * triangle(x) + 0.3 * wave(x, 0.05)), { form: 'none', lFilterMm: 2.5 });
  // ISO 16610-61: of 0.5 mm the L-filter of 2.5 mm takes 2^-25.
  near(parameters.raUm, 5, 0.01);
  near(parameters.rsmMm, 0.5, 0.01);
  expect(profiles).toMatchObject({ axis: 'x', sections: 2, sectionMm: 2.5, profiles: 500 });
});

test('the class of VDI 3400 is given to tools alone', () => {
  const map = surfaceOf(512, 0.01, (x) => (Math.PI / 2) * 3.15 * wave(x, 1.28));
  expect(measure(map).parameters).not.toHaveProperty('vdiClass');
  // VDI 3400: Ra 3.15 um is class 30.
  expect(measure(map, { form: 'none', of: 'tool' }).parameters.vdiClass).toBeCloseTo(30, 1);
});

test('cautions name what the field cannot carry', () => {
  const codes = (map: HeightMap, options: MeasureOptions): string[] => measure(map, options).issues.map(({ code }) => code);
  const map = surfaceOf(64, 0.01, (x, y) => wave(x, 0.08) * wave(y, 0.08));
  expect(codes(map, { form: 'none' })).toEqual([]);
  expect(codes(map, { form: 'none', sFilterMm: 0.02 })).toEqual(['filter-too-fine']);
  expect(codes(map, { form: 'none', lFilterMm: 1 })).toEqual(['field-too-small']);
  expect(codes(map, { form: 'none', sFilterMm: 0.3, lFilterMm: 0.2 })).toContain('filters-crossed');
  expect(codes(surfaceOf(64, 0.01, (x) => wave(x, 1.28)), { form: 'none' })).toContain('field-too-small');
});

test('progress never goes back, and a stop stops', async () => {
  const map = surfaceOf(300, 0.01, (x, y) => wave(x, 0.3) * wave(y, 0.2));
  const shares: number[] = [];
  let pauses = 0;
  const whole = await watchSteps(measureSurfaceSteps(map, { sFilterMm: 0.05, lFilterMm: 0.8 }), {
    progress: (share) => shares.push(share), pause: async () => { pauses += 1; },
  });
  expect(whole.parameters).toEqual(measure(map, { sFilterMm: 0.05, lFilterMm: 0.8 }).parameters);
  expect(shares.length).toBeGreaterThan(10);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  expect(pauses).toBe(shares.length);
  const signal = { aborted: false };
  await expect(watchSteps(measureSurfaceSteps(map), { signal, progress: () => { signal.aborted = true; } })).rejects.toThrow(expect.objectContaining({ name: 'AbortError' }));
});
