import { describe, expect, test } from 'vitest';
import { composePicture } from '../../../components/figures/surface/compose-picture.ts';
import type { LitSide } from '../../../components/figures/surface/lit-side.ts';
import type { StripFields } from '../../../components/figures/surface/strip-fields.ts';
import { openRows } from '../../../components/figures/surface/strip-layout.ts';
import type { StripLayout } from '../../../components/figures/surface/strip-layout.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';

const layout: StripLayout = { width: 300, height: 110, top: 50, bottom: 60, perMm: 10, lips: [5, 5] };
const side = (light: LitSide['light'], metal = false): LitSide => ({ light, alpha: 0.2, n: 1.5, metal });

/** Light of the sRGB steps, from the formula of IEC 61966-2-1. */
const linear = (step: number): number => (step / 255 <= 0.04045 ? step / 255 / 12.92 : ((step / 255 + 0.055) / 1.055) ** 2.4);

function means(pixels: Uint8ClampedArray, index: 0 | 1): number[] {
  const [first, end] = openRows(layout, index);
  const sums = [0, 0, 0];
  for (let at = first * layout.width; at < end * layout.width; at += 1) sums.forEach((_, channel) => { sums[channel]! += linear(pixels[4 * at + channel]!); });
  return sums.map((sum) => sum / ((end - first) * layout.width));
}

function fields(body: (index: number) => number, shine: (index: number) => number): StripFields {
  const size = layout.width * layout.height;
  return { width: layout.width, height: layout.height, body: Float32Array.from({ length: size }, (_, index) => body(index)), shine: Float32Array.from({ length: size }, (_, index) => shine(index)) };
}

const random = seededNumbers(4);
const kinds: readonly (readonly [string, StripFields])[] = [
  ['even light', fields(() => 1, () => 0)],
  ['a rough grain', fields(() => 0.6 + 0.8 * random(), () => 0.05 * random())],
  ['the image of a lamp', fields(() => 1, (index) => (index % 300 < 12 ? 40 : 0.001))],
  ['light that grows along the joint', fields((index) => 0.2 + (index % 300) / 150, (index) => (index % 300) / 3000)],
];
const lights = [[0.0048, 0.0045, 0.005], [0.04, 0.041, 0.045], [0.17, 0.02, 0.015], [0.58, 0.55, 0.48], [0.93, 0.94, 0.92]] as const;

describe.each(kinds)('%s', (_name, light) => {
  test.each(lights)('leaves %d %d %d as the mean of the open face', (...colour) => {
    for (const metal of [false, true]) {
      const { pixels } = composePicture(light, layout, [side(colour, metal), side(colour)], 0);
      for (const index of [0, 1] as const) {
        means(pixels, index).forEach((mean, channel) => {
          // A step of 8 bits is up to 0.9 % of white in light; the mean over the face has to be far nearer.
          expect(Math.abs(mean - colour[channel]!)).toBeLessThan(2e-5 + 1e-3 * colour[channel]!);
        });
      }
    }
  });
});

test('contrast is lowered only where lights would be beyond white', () => {
  const grain = kinds[1]![1];
  expect(composePicture(grain, layout, [side([0.1, 0.1, 0.1]), side([0.9, 0.9, 0.9])], 0).contrast[0]).toBe(1);
  const { contrast, pixels } = composePicture(grain, layout, [side([0.1, 0.1, 0.1]), side([0.9, 0.9, 0.9])], 0);
  expect(contrast[1]).toBeGreaterThan(0.1);
  expect(contrast[1]).toBeLessThan(1);
  const [first, end] = openRows(layout, 1);
  expect(Math.max(...pixels.subarray(4 * first * 300, 4 * end * 300))).toBe(255);
});

test('the shine of a metal has its colour, that of a lacquer is white', () => {
  const lamp = kinds[2]![1];
  const [metal, lacquer] = [true, false].map((isMetal) => composePicture(lamp, layout, [side([0.3, 0.2, 0.1], isMetal), side([0.3, 0.2, 0.1])], 0).pixels);
  const ratio = (pixels: Uint8ClampedArray): number => linear(pixels[0]!) / linear(pixels[2]!);
  expect(ratio(metal!)).toBeGreaterThan(2.5);
  expect(ratio(lacquer!)).toBeLessThan(1.5);
});

test('a side without colour is left clear, and the gap is dark', () => {
  const { pixels } = composePicture(kinds[0]![1], layout, [undefined, side([0.5, 0.5, 0.5])], 0);
  expect(pixels[3]).toBe(0);
  const gap = 4 * 55 * 300;
  expect(pixels[gap + 3]).toBe(255);
  expect(pixels[gap]).toBeLessThan(16);
  expect(pixels[4 * 80 * 300 + 3]).toBe(255);
});
