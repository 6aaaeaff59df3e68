import { converter, differenceCiede2000, formatHex } from 'culori';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Lab, Xyz } from '../../src/quantities.ts';
import {
  displayColour, displayWhite, encodeRgb, inDisplayGamut, labToLch, labToXyz, lightByName, mapToGamut, whitePoint, xyzToLab, xyzToLinearRgb,
} from '../../src/colour/index.ts';

const channels = (css: string) => css.replace(/^color\(\S+ /, '').replace(')', '').split(' ').map(Number);
const far = (a: readonly number[], b: readonly number[]) => Math.max(...a.map((value, i) => Math.abs(value - b[i]!)));
const part = fc.double({ min: 0, max: 1, noNaN: true });
const rgb = fc.tuple(part, part, part);
const toXyz = converter('xyz65');

/** XYZ of encoded sRGB by culori, a general colour library. */
function xyzOf([r, g, b]: readonly [number, number, number]): Xyz {
  const { x, y, z } = toXyz({ mode: 'rgb', r, g, b });
  return [100 * x, 100 * y, 100 * z];
}

test('matrices of the published primaries (IEC 61966-2-1:1999; CSS Color Module Level 4 prints them to 6 digits and more)', () => {
  const unit: Xyz[] = [[100, 0, 0], [0, 100, 0], [0, 0, 100]];
  const columns = (gamut: 'srgb' | 'display-p3') => unit.map((xyz) => xyzToLinearRgb(xyz, gamut));
  // CSS Color Module Level 4, section 18: XYZ to linear-light sRGB and display-p3.
  expect(far(columns('srgb').flat(), [3.2409699, -0.9692436, 0.0556301, -1.5373832, 1.8759675, -0.203977, -0.4986108, 0.0415551, 1.0569715])).toBeLessThan(1e-4);
  expect(far(columns('display-p3').flat(), [2.4934969, -0.829489, 0.0358458, -0.9313836, 1.762664, -0.0761724, -0.4027108, 0.0236247, 0.9568845])).toBeLessThan(1e-4);
});

test('colours inside sRGB come out as culori has them, in both gamuts', () => {
  const toP3 = converter('p3');
  fc.assert(fc.property(rgb, (colour) => {
    const [r, g, b] = colour;
    const xyz = xyzOf(colour);
    const inSrgb = displayColour(xyz, displayWhite, 'srgb');
    const p3 = toP3({ mode: 'rgb', r, g, b });
    const inP3 = displayColour(xyz, displayWhite, 'display-p3');
    // A colour on the border may be called outside by rounding; it is then shown with an error that nobody sees.
    return far(channels(inSrgb.css), colour) < 2e-4 && inSrgb.error < 0.01
      && far(channels(inP3.css), [p3.r, p3.g, p3.b]) < 2e-4 && inP3.error < 0.01;
  }));
});

test('hexadecimal notation of colours on 8 bit steps is that of culori', () => {
  const step = fc.integer({ min: 0, max: 255 }).map((value) => value / 255);
  fc.assert(fc.property(fc.tuple(step, step, step), (colour) => {
    const [r, g, b] = colour;
    return displayColour(xyzOf(colour), displayWhite, 'srgb').hex === formatHex({ mode: 'rgb', r, g, b });
  }));
});

test('the white of any light is the white of the display, black is black', () => {
  for (const name of ['D65', 'A', 'FL11', 'LED-B1', 'P2300']) for (const observer of [2, 10] as const) {
    const white = whitePoint(lightByName(name)!, observer);
    for (const gamut of ['srgb', 'display-p3'] as const) {
      expect(displayColour(white, white, gamut)).toEqual({ css: `color(${gamut} 1 1 1)`, hex: '#ffffff', inGamut: true, error: 0 });
      expect(displayColour([0, 0, 0], white, gamut)).toEqual({ css: `color(${gamut} 0 0 0)`, hex: '#000000', inGamut: true, error: 0 });
    }
  }
});

const strong: Lab[] = [[50, 120, 0], [60, -110, 60], [30, 40, -110], [85, 10, 130], [70, -60, -60], [20, 5, 60]];

test.each(strong)('L* %d, a* %d, b* %d lies outside sRGB and is mapped along its hue', (...lab) => {
  const mapped = mapToGamut(lab, 'srgb');
  expect(inDisplayGamut(lab, 'srgb')).toBe(false);
  expect(inDisplayGamut(mapped, 'srgb')).toBe(true);
  expect(mapped[0]).toBe(lab[0]);
  expect(labToLch(mapped)[2]).toBeCloseTo(labToLch(lab)[2], 9);
  // Any more chroma would be outside.
  expect(inDisplayGamut([mapped[0], mapped[1] * 1.001, mapped[2] * 1.001], 'srgb')).toBe(false);
});

test.each(strong)('the error of L* %d, a* %d, b* %d is the CIEDE2000 of culori between the true and the shown colour', (...lab) => {
  const white = whitePoint(lightByName('D65')!, 2);
  const shown = displayColour(labToXyz(lab, displayWhite), displayWhite, 'srgb');
  const [r, g, b] = channels(shown.css);
  const back = xyzToLab(xyzOf([r!, g!, b!]), displayWhite);
  const difference = differenceCiede2000()({ mode: 'lab65', l: lab[0], a: lab[1], b: lab[2] }, { mode: 'lab65', l: back[0], a: back[1], b: back[2] });
  expect(shown.inGamut).toBe(false);
  expect(shown.error).toBeGreaterThan(1);
  expect(shown.error).toBeCloseTo(difference, 1);
  expect(displayColour(labToXyz(lab, white), white, 'srgb').inGamut).toBe(false);
});

test('Display P3 holds colours that sRGB does not, and the sRGB fallback is the mapped colour', () => {
  const xyz = labToXyz([55, 85, 60], displayWhite);
  const wide = displayColour(xyz, displayWhite, 'display-p3');
  const narrow = displayColour(xyz, displayWhite, 'srgb');
  expect([wide.inGamut, narrow.inGamut]).toEqual([true, false]);
  expect(wide.hex).toBe(narrow.hex);
  expect(wide.error).toBe(0);
});

test('brighter than white is white, and says so', () => {
  const glow = displayColour([114, 120, 130.7], displayWhite, 'srgb');
  expect(glow).toMatchObject({ hex: '#ffffff', inGamut: false });
  expect(glow.error).toBeGreaterThan(1);
});

test('transfer function of sRGB (IEC 61966-2-1:1999): ends, junction and middle grey', () => {
  expect([0, -0.5].map(encodeRgb)).toEqual([0, 0]);
  [1, 2].forEach((value) => expect(encodeRgb(value)).toBeCloseTo(1, 15));
  expect(encodeRgb(0.0031308)).toBeCloseTo(0.04045, 5);
  // 0.214041 is the linear value of encoded 0.5: ((0.5 + 0.055) / 1.055)^2.4.
  expect(encodeRgb(((0.5 + 0.055) / 1.055) ** 2.4)).toBeCloseTo(0.5, 12);
});

test('values that are not finite give black, out of gamut, with an error of NaN', () => {
  const values = [-1, 0, 1, Infinity, -Infinity, NaN];
  for (const x of values) for (const y of values) for (const z of values) {
    const shown = displayColour([x, y, z], displayWhite, 'srgb');
    expect(shown.hex).toMatch(/^#[0-9a-f]{6}$/);
    expect(channels(shown.css).every((channel) => channel >= 0 && channel <= 1)).toBe(true);
    if (![x, y, z].every(Number.isFinite)) expect(shown).toEqual({ css: 'color(srgb 0 0 0)', hex: '#000000', inGamut: false, error: NaN });
  }
});
