import { expect, test } from 'vitest';
import type { HeightMap, Lamp, LuminanceMap } from '../../src/texture/index.ts';
import {
  contrastSensitivity, contrastSpectrumSteps, cyclesPerDegree, differenceVanishes, fieldAngle, heightMap, luminanceOf, relativeContrastSensitivity,
  renderHeightsSteps, runSteps, textureVanishes, visibleDifference, visibleTexture,
} from '../../src/texture/index.ts';
import { grain, surfaceOf } from './support/surfaces.ts';

const viewing = { viewMm: 700, illuminanceLx: 2000, reflectance: 0.03 };
const lamp: Lamp = { elevationDeg: 45, azimuthDeg: 0 };
const spectrumOf = (map: LuminanceMap) => {
  const spectrum = runSteps(contrastSpectrumSteps(map));
  if (spectrum === undefined) throw new Error('no spectrum');
  return spectrum;
};
const lit = (map: HeightMap, under: Lamp = lamp) => spectrumOf(runSteps(renderHeightsSteps(map, under)));
const photograph = (points: number, spacing: number, luminance: (x: number, y: number) => number): LuminanceMap =>
  ({ ...surfaceOf(points, spacing, luminance), values: surfaceOf(points, spacing, luminance).values as Float64Array, source: 'photograph' });

test('luminance, frequency and field by hand', () => {
  // 2000 lx on 3 %: 19.1 cd/m2. 1 mm at 700 mm: 12.2 cycles a degree. 100 mm at 700 mm: 8.17 degrees, 30 mm: 2.455.
  expect(luminanceOf(2000, 0.03)).toBeCloseTo(19.1, 1);
  expect(cyclesPerDegree(1, 700)).toBeCloseTo(12.2, 1);
  expect(fieldAngle(100, 700)).toBeCloseTo(8.17, 2);
  expect(fieldAngle(30, 700)).toBeCloseTo(2.455, 3);
});

test('relative sensitivity of Mannos and Sakrison', () => {
  // Computed by another program: 0.98078 at 8 cycles a degree, largest (0.98088) at 7.891.
  expect(relativeContrastSensitivity(8)).toBeCloseTo(0.98078, 5);
  expect(relativeContrastSensitivity(7.891)).toBeCloseTo(0.98088, 5);
  for (const other of [7.8, 8]) expect(relativeContrastSensitivity(other)).toBeLessThan(relativeContrastSensitivity(7.891));
});

test('sensitivity falls at both ends and with darkness', () => {
  expect(contrastSensitivity(0, 100, 10)).toBe(0);
  expect(contrastSensitivity(60, 100, 10)).toBeLessThan(1.5);
  for (const frequency of [0.5, 4, 20]) {
    expect(contrastSensitivity(frequency, 5, 10)).toBeLessThan(contrastSensitivity(frequency, 50, 10));
    expect(contrastSensitivity(frequency, 50, 2)).toBeLessThan(contrastSensitivity(frequency, 50, 10));
  }
});

test('a photographed grating shows its contrast times the sensitivity; at its threshold it has 1', () => {
  for (const [perMm, amplitude] of [[1, 0.01], [2.5, 0.02], [0.8, 0.001]] as const) {
    const spectrum = spectrumOf(photograph(1000, 0.05, (x, y) => 40 * (1 + amplitude * Math.sin(2 * Math.PI * perMm * (0.6 * x + 0.8 * y)))));
    expect(spectrum.rmsContrast).toBeCloseTo(amplitude / Math.SQRT2, 4);
    const seen = visibleTexture(spectrum, viewing);
    const expected = amplitude * contrastSensitivity(perMm * 700 / 57.29, luminanceOf(2000, 0.03), fieldAngle(100, 700));
    expect(Math.abs(seen.visibleContrast / expected - 1)).toBeLessThan(0.01);
    expect(Math.abs(seen.pitchMm! * perMm - 1)).toBeLessThan(0.01);
    // Waves run towards (0.6, 0.8), 53.13 degrees; the lay is across. Directions are sorted into 15 degrees.
    expect(Math.abs(seen.directionDeg! - 143.13)).toBeLessThan(8);
    expect(seen.directionality).toBeGreaterThan(0.95);
    // The same everywhere: nothing is left to chance.
    expect(seen.uncertainty).toBeLessThan(0.01 * seen.visibleContrast);
  }
});

test('a rendered ripple: contrast is slope over the tangent of the lamp, and nothing where the light runs along it', () => {
  const ripple = surfaceOf(800, 0.025, (x) => 0.5 * Math.sin(2 * Math.PI * x));
  const slope = 2 * Math.PI * 0.0005;
  for (const elevationDeg of [30, 45, 70]) {
    const spectrum = lit(ripple, { elevationDeg, azimuthDeg: 0 });
    // Lambert: (sin e - s cos e) / sin e for small slopes s.
    const expected = slope / Math.tan((elevationDeg * Math.PI) / 180) / Math.SQRT2;
    expect(Math.abs(spectrum.rmsContrast / expected - 1)).toBeLessThan(0.005);
    expect(spectrum.meanLuminance).toBeCloseTo(1, 4);
  }
  expect(lit(ripple, { elevationDeg: 45, azimuthDeg: 90 }).rmsContrast).toBeLessThan(slope / 500);
  const half = lit(ripple, { ...lamp, ambientShare: 0.5 });
  expect(Math.abs(half.rmsContrast / (slope / 2 / Math.SQRT2) - 1)).toBeLessThan(0.005);
});

test('points finer than the eye needs are averaged without harm', () => {
  const height = (x: number): number => 0.5 * Math.sin((2 * Math.PI * x) / 0.5);
  const [fine, coarse] = [lit(surfaceOf(1600, 0.005, height)), lit(surfaceOf(400, 0.02, height))];
  const [a, b] = [visibleTexture(fine, viewing), visibleTexture(coarse, viewing)];
  expect(Math.abs(a.visibleContrast / b.visibleContrast - 1)).toBeLessThan(0.01);
});

test('an even surface shows nothing, darkness has no spectrum, missing points none of their own', () => {
  const seen = visibleTexture(spectrumOf(photograph(64, 0.1, () => 3)), viewing);
  expect(seen).toMatchObject({ visibleContrast: 0, directionality: 0 });
  expect(seen).not.toHaveProperty('pitchMm');
  expect(runSteps(contrastSpectrumSteps(photograph(64, 0.1, () => 0)))).toBeUndefined();
  expect(runSteps(contrastSpectrumSteps(photograph(12, 0.1, () => 1)))).toBeUndefined();
  const grating = (x: number): number => 1 + 0.05 * Math.sin(2 * Math.PI * x);
  const whole = photograph(400, 0.1, grating);
  const holed = { ...whole, values: whole.values.map((value, index) => ((index * 7919) % 20 === 0 ? NaN : value)) };
  const [a, b] = [visibleTexture(spectrumOf(whole), viewing), visibleTexture(spectrumOf(holed), viewing)];
  expect(Math.abs(b.visibleContrast / a.visibleContrast - 1)).toBeLessThan(0.05);
});

test('a texture vanishes where its contrast times the sensitivity is one', () => {
  const spectrum = spectrumOf(photograph(1000, 0.05, (x) => 1 + 0.02 * Math.sin(2 * Math.PI * x)));
  const gone = textureVanishes(spectrum, viewing);
  if (gone.kind !== 'at') throw new Error(gone.kind);
  const sensitivity = contrastSensitivity(gone.viewMm / 57.29, luminanceOf(2000, 0.03), fieldAngle(100, gone.viewMm));
  expect(Math.abs(0.02 * sensitivity - 1)).toBeLessThan(0.02);
  expect(textureVanishes(spectrumOf(photograph(64, 0.1, () => 1)), viewing)).toEqual({ kind: 'never seen' });
  expect(textureVanishes(spectrumOf(photograph(500, 20, (x) => 1 + 0.9 * Math.sin(x / 30))), viewing)).toMatchObject({ kind: 'beyond' });
});

/** Strength of a grain for the eye scales with its depth at these small slopes, so its depth can be set for a wanted contrast. */
function grainSeenAs(visibleContrast: number, sizeMm: number, seed: number) {
  const trial = visibleTexture(lit(grain(800, 0.025, sizeMm, 1, seed)), viewing);
  return lit(grain(800, 0.025, sizeMm, visibleContrast / trial.visibleContrast, seed));
}

test('one grain on two fields is one grain; depth and pitch are told apart', () => {
  const both = [viewing, viewing] as const;
  const first = grainSeenAs(10, 0.8, 1);
  const again = lit(grain(800, 0.025, 0.8, 1, 2));
  const unit = visibleTexture(lit(grain(800, 0.025, 0.8, 1, 1)), viewing).visibleContrast;
  const same = lit(grain(800, 0.025, 0.8, 10 / unit, 2));
  const deeper = lit(grain(800, 0.025, 0.8, 14 / unit, 3));
  const coarser = grainSeenAs(10, 1.6, 4);
  expect(visibleTexture(first, viewing).visibleContrast).toBeCloseTo(10, 0);
  expect(visibleTexture(again, viewing).visibleContrast).toBeLessThan(visibleTexture(same, viewing).visibleContrast);

  const alike = visibleDifference(first, same, both);
  expect(alike.difference).toBeLessThan(1);
  const depth = visibleDifference(first, deeper, both);
  expect(depth.difference).toBeGreaterThan(3);
  expect(depth.strength).toBeGreaterThan(3 * depth.pattern);
  const pitch = visibleDifference(first, coarser, both);
  expect(pitch.difference).toBeGreaterThan(3);
  expect(pitch.pattern).toBeGreaterThan(3 * pitch.strength);
  // Pitch: twice the size, twice the pitch. Depth: the pitch stays.
  const pitchOf = (spectrum: typeof first): number => visibleTexture(spectrum, viewing).pitchMm!;
  expect(pitchOf(coarser) / pitchOf(first)).toBeGreaterThan(1.4);
  expect(Math.abs(pitchOf(deeper) / pitchOf(first) - 1)).toBeLessThan(0.2);

  // The order of the two does not matter, and a texture does not differ from itself.
  expect(visibleDifference(coarser, first, both).difference).toBeCloseTo(pitch.difference, 9);
  expect(visibleDifference(first, first, both)).toMatchObject({ difference: 0, strength: 0, pattern: 0 });

  const gone = differenceVanishes(first, deeper, both);
  if (gone.kind !== 'at') throw new Error(gone.kind);
  expect(gone.viewMm).toBeGreaterThan(700);
  const at = (viewMm: number): number => visibleDifference(first, deeper, [{ ...viewing, viewMm }, { ...viewing, viewMm }]).difference;
  expect(at(gone.viewMm)).toBeCloseTo(1, 1);
  expect(at(1.2 * gone.viewMm)).toBeLessThan(1);
});

test('a lay turned by 90 degrees is another pattern of the same strength', () => {
  const wave = (at: number): number => 2 * Math.sin(2 * Math.PI * at);
  const under: Lamp = { elevationDeg: 45, azimuthDeg: 45 };
  const [a, b] = [lit(surfaceOf(400, 0.05, (x) => wave(x)), under), lit(surfaceOf(400, 0.05, (_, y) => wave(y)), under)];
  const { difference, strength, pattern } = visibleDifference(a, b, [viewing, viewing]);
  expect(strength).toBeLessThan(0.01 * difference);
  expect(pattern).toBeGreaterThan(1);
});

test('form and empty maps', () => {
  const flat = heightMap(64, 64, [0.1, 0.1], new Float64Array(64 * 64).fill(5));
  expect(visibleTexture(lit(flat), viewing).visibleContrast).toBe(0);
});
