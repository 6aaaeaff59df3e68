import { describe, expect, test } from 'vitest';
import { contrastShape } from '../../src/cabin/shapes/contrast-shape.ts';
import { collectFaults } from '../../src/cabin/schema/index.ts';
import type { ContrastRecord, ContrastSpectrum, LuminanceMap } from '../../src/texture/index.ts';
import {
  contrastRecord, contrastSensitivity, contrastSpectrumSteps, defaultLamp, differenceVanishes, featuresApart, fieldAngle, lightKey, luminanceOf, renderHeightsSteps, runSteps,
  spectrumOfRecord, visibleDifference, visibleTexture,
} from '../../src/texture/index.ts';
import { grain, surfaceOf } from './support/surfaces.ts';

const viewing = { viewMm: 700, illuminanceLx: 2000, reflectance: 0.05 };
const at = (viewMm: number) => ({ ...viewing, viewMm });

function spectrumOf(map: LuminanceMap): ContrastSpectrum {
  const spectrum = runSteps(contrastSpectrumSteps(map));
  if (spectrum === undefined) throw new Error('no spectrum');
  return spectrum;
}
const lit = (map: Parameters<typeof renderHeightsSteps>[0]): ContrastSpectrum => spectrumOf(runSteps(renderHeightsSteps(map, defaultLamp)));
const photograph = (luminance: (x: number, y: number) => number): LuminanceMap => {
  const { width, height, spacingMm, values } = surfaceOf(400, 0.05, luminance);
  return { width, height, spacingMm, values: Float64Array.from(values), source: 'photograph' };
};
/** As a file keeps it. */
const kept = (record: ContrastRecord): ContrastRecord => JSON.parse(JSON.stringify(record)) as ContrastRecord;
const near = (value: number | undefined, expected: number | undefined, share: number): void => expect(Math.abs(value! / expected! - 1)).toBeLessThan(share);

describe('a record of contrast', () => {
  const first = lit(grain(512, 0.025, 0.6, 6, 21));
  const second = lit(grain(512, 0.025, 0.9, 7, 22));
  const [one, two] = [first, second].map((spectrum) => spectrumOfRecord(kept(contrastRecord(spectrum, { lamp: defaultLamp }))));

  test('tells of visible contrast, pitch and difference at any distance what the whole spectrum tells', () => {
    for (const viewMm of [300, 700, 1500, 3000]) {
      const [whole, short] = [visibleTexture(first, at(viewMm)), visibleTexture(one!, at(viewMm))];
      near(short.visibleContrast, whole.visibleContrast, 0.02);
      near(short.uncertainty, whole.uncertainty, 0.02);
      // A broad spectrum has its peak within a band, a quarter of an octave wide.
      near(short.pitchMm, whole.pitchMm, 2 ** 0.25 - 1);
      expect(Math.abs(short.directionality - whole.directionality)).toBeLessThan(0.02);
      const both = [at(viewMm), at(viewMm)] as const;
      near(visibleDifference(one!, two!, both).difference, visibleDifference(first, second, both).difference, 0.03);
    }
    const both = [viewing, viewing] as const;
    const [whole, short] = [differenceVanishes(first, second, both), differenceVanishes(one!, two!, both)];
    if (whole.kind !== 'at' || short.kind !== 'at') throw new Error('not at a distance');
    near(short.viewMm, whole.viewMm, 0.01);
  });

  test('of a grating keeps its threshold: contrast times sensitivity', () => {
    // Barten 2004, by the formula alone: 1.3 waves a millimetre, 2 % contrast.
    const spectrum = spectrumOf(photograph((x) => 1 + 0.02 * Math.sin(2 * Math.PI * 1.3 * x)));
    const short = spectrumOfRecord(kept(contrastRecord(spectrum, { capture: 'booth' })));
    const expected = 0.02 * contrastSensitivity(1.3 * 700 * Math.tan(Math.PI / 180), luminanceOf(2000, 0.05), fieldAngle(100, 700));
    near(visibleTexture(short, viewing).visibleContrast, expected, 0.02);
    near(visibleTexture(short, viewing).pitchMm, 1 / 1.3, 0.02);
  });

  test('is a valid part of a document, and short', () => {
    const record = contrastRecord(first, { lamp: defaultLamp });
    const faults = collectFaults();
    expect(contrastShape.read(kept(record), faults)).toEqual(kept(record));
    expect(faults.list()).toEqual([]);
    expect(JSON.stringify(record).length).toBeLessThan(6000);
    const flat = contrastRecord(spectrumOf(photograph(() => 3)), { capture: 'booth' });
    expect(contrastShape.read(kept(flat), collectFaults())).toEqual(kept(flat));
    expect(visibleTexture(spectrumOfRecord(flat), viewing).visibleContrast).toBe(0);
  });

  test('says in which light it may be compared', () => {
    const record = contrastRecord(first, { lamp: defaultLamp });
    expect(lightKey(record)).toBe(lightKey(contrastRecord(second, { lamp: { elevationDeg: 45, azimuthDeg: 45 } })));
    expect(lightKey(record)).not.toBe(lightKey(contrastRecord(first, { lamp: { elevationDeg: 30, azimuthDeg: 45 } })));
    const picture = spectrumOf(photograph((x) => 1 + 0.02 * Math.sin(6 * x)));
    expect(lightKey(contrastRecord(picture, { capture: 'booth' }))).not.toBe(lightKey(contrastRecord(picture, { capture: 'window' })));
    expect(lightKey(contrastRecord(picture, {}))).toBeUndefined();
  });
});

describe('a visible difference', () => {
  const both = [viewing, viewing] as const;
  const wave = (perMm: number, amplitude: number, turned = false) =>
    spectrumOf(photograph((x, y) => 1 + amplitude * Math.sin(2 * Math.PI * perMm * (turned ? y : x))));

  test('names what sets two textures apart: depth, pitch or direction', () => {
    const base = wave(1, 0.05);
    const named = (other: ContrastSpectrum) => featuresApart(visibleDifference(base, other, both));
    expect(named(wave(1, 0.08))).toEqual(['depth']);
    expect(named(wave(1, 0.05, true))).toEqual(['direction']);
    // Twice the pitch at the amplitude that the eye sees as strongly (sensitivity by Barten 2004, by the formula alone).
    const sensitivity = (perMm: number): number => contrastSensitivity(perMm * 700 * Math.tan(Math.PI / 180), luminanceOf(2000, 0.05), fieldAngle(100, 700));
    expect(named(wave(0.5, (0.05 * sensitivity(1)) / sensitivity(0.5)))).toEqual(['pitch']);
    // k times as strong in channels of its own: strength k - 1 of the first, pattern the root of 1 + k^2 - (k - 1)^2 = 2 k; equal near k = 3.7.
    expect(named(wave(0.5, (0.15 * sensitivity(1)) / sensitivity(0.5)))).toEqual(['pitch', 'depth']);
    expect(named(wave(0.5, (0.25 * sensitivity(1)) / sensitivity(0.5)))).toEqual(['depth', 'pitch']);
    expect(named(wave(1, 0.0501))).toEqual([]);
    expect(named(base)).toEqual([]);
  });

  test('of several fields of one grain settles: less is left to chance than of one', () => {
    const fields = [31, 32, 33, 34].map((seed) => lit(grain(400, 0.025, 0.6, 6, seed)));
    const others = [41, 42, 43, 44].map((seed) => lit(grain(400, 0.025, 0.6, 6, seed)));
    const single = visibleDifference(fields[0]!, others[0]!, both);
    const pooled = visibleDifference(fields, others, both);
    // Four independent fields have half the standard deviation of one.
    near(pooled.chance, single.chance / 2, 0.35);
    expect(visibleDifference(others, fields, both)).toEqual(pooled);
  });

  test('turned by a quarter, with the lamp turned too, looks the same', () => {
    const map = grain(320, 0.03, 0.5, 5, 51);
    const turned = surfaceOf(320, 0.03, (x, y) => map.values[Math.round(x / 0.03) * 320 + (319 - Math.round(y / 0.03))]!);
    const under = (azimuthDeg: number, surface: typeof map) => visibleTexture(spectrumOf(runSteps(renderHeightsSteps(surface, { elevationDeg: 45, azimuthDeg }))), viewing);
    // (x, y) goes to (319 - y, x): a lamp from 20 degrees is then one from 110.
    const [before, after] = [under(20, map), under(110, turned)];
    near(after.visibleContrast, before.visibleContrast, 0.01);
    near(after.pitchMm, before.pitchMm, 0.02);
  });

  test('sampled half as fine, a grain well above the spacing looks the same', () => {
    const map = grain(800, 0.02, 1, 6, 61);
    const coarse = surfaceOf(400, 0.04, (x, y) => map.values[2 * Math.round(y / 0.04) * 800 + 2 * Math.round(x / 0.04)]!);
    const [a, b] = [visibleTexture(lit(map), viewing), visibleTexture(lit(coarse), viewing)];
    near(b.visibleContrast, a.visibleContrast, 0.02);
    near(b.pitchMm, a.pitchMm, 0.05);
  });
});
