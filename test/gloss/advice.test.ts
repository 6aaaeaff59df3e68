import { expect, test } from 'vitest';
import { adviseAngle, assessHaze, indexShare, logarithmicHaze, specularCue } from '../../src/gloss/index.ts';

test('angle by level: ASTM D523 for smooth surfaces, 60 degrees for grains', () => {
  expect(adviseAngle(85, false)).toMatchObject({ angle: 20 });
  expect(adviseAngle(70, false)).toMatchObject({ angle: 60 });
  expect(adviseAngle(10, false)).toMatchObject({ angle: 60 });
  expect(adviseAngle(3, false)).toMatchObject({ angle: 85 });
  expect(adviseAngle(2, true)).toMatchObject({ angle: 60, formal: 85 });
  expect(adviseAngle(85, true)).toMatchObject({ angle: 60, formal: 20 });
  for (const unknown of [undefined, NaN, -1]) expect(adviseAngle(unknown, false)).toMatchObject({ angle: 60 });
});

test('index alone: PMMA against PC at equal smoothness', () => {
  // Gloss of mirrors at 60 degrees (table of Fresnel values): 87.47 and 103.62.
  const share = indexShare(1.49, 1.59, 5, 60, 0.5);
  expect(share.ratio).toBeCloseTo(103.62 / 87.47, 3);
  expect(share.difference).toBeCloseTo(5 * (103.62 / 87.47 - 1), 3);
  expect(share.caution).toContain('0.92 GU at 60°');
  expect(indexShare(1.5, 1.5, 5, 60, 0.5)).toEqual({ difference: 0, ratio: 1 });
  expect(indexShare(1.49, 1.59, 0.2, 60, 0.5).caution).toBeUndefined();
  expect(indexShare(1.49, 1.59, 5, 60).caution).toBeUndefined();
});

test('sphere cue: the ceiling is the reflectance at 8 degrees', () => {
  // rho(8) of n = 1.5 is 0.040006, of 1.567 it is 0.048795 (Fresnel, computed by another program).
  expect(specularCue(8.0, 4.0).ceiling).toBeCloseTo(4.0006, 4);
  expect(specularCue(4.8795, 0, 1.567).share).toBeCloseTo(1, 4);
  expect(specularCue(5, 5).share).toBe(0);
  expect(specularCue(5, 5.2).share).toBeLessThan(0);
});

test('haze only of smooth non-metallic high gloss', () => {
  const black = { gloss20: 84, gloss60: 91, grained: false, metallic: false };
  // ASTM D4039: 91 - 84.
  expect(assessHaze(black)).toMatchObject({ applicable: true, index: 7 });
  for (const other of [{ ...black, grained: true }, { ...black, metallic: true }, { ...black, gloss20: undefined }, { ...black, gloss60: undefined },
    { ...black, gloss60: 70 }, { ...black, gloss60: NaN }]) {
    expect(assessHaze(other)).toMatchObject({ applicable: false });
  }
});

test('logarithmic haze', () => {
  // 1285 log10(2) at H = 20, by hand.
  expect(logarithmicHaze(20)).toBeCloseTo(386.82, 1);
  expect(logarithmicHaze(0)).toBe(0);
});
