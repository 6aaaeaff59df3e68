import { lusolve } from 'mathjs';
import { expect, test } from 'vitest';
import type { Lab } from '../../src/quantities.ts';
import { labJacobian, lightByName, smoothestChange, spectrumToLab, weightsOf } from '../../src/colour/index.ts';
import { factoriseCurvature, solveCurvature } from '../../src/colour/curvature.ts';
import { analyticSpectra } from '../../src/colour/published/metamerism.ts';
import { independentLab } from '../support/independent-colorimetry.ts';
import { seededNumbers, smoothReflectance } from '../support/seeded-numbers.ts';

const light = lightByName('D65')!;
const { wave } = analyticSpectra;

/** D2'D2 + ridge I, written out from the second differences. */
function curvatureMatrix(count: number, ridge: number): number[][] {
  const differences = Array.from({ length: Math.max(0, count - 2) }, (_, row) =>
    Array.from({ length: count }, (__, i) => (i === row || i === row + 2 ? 1 : i === row + 1 ? -2 : 0)));
  return Array.from({ length: count }, (_, i) => Array.from({ length: count }, (__, j) =>
    differences.reduce((sum, row) => sum + row[i]! * row[j]!, i === j ? ridge : 0)));
}

const addTo = (values: readonly number[], change: ArrayLike<number>, share = 1) => values.map((value, i) => value + share * change[i]!);

test('the Jacobian is that of finite differences on an independent computation', () => {
  const curve = smoothReflectance(seededNumbers(5));
  const values = Array.from({ length: 31 }, (_, i) => curve(400 + 10 * i));
  const jacobian = labJacobian(values, weightsOf({ startNm: 400, stepNm: 10, values }, light, 10));
  for (const band of [0, 7, 15, 22, 30]) {
    const at = (step: number) => independentLab(values.with(band, values[band]! + step), { startNm: 400, stepNm: 10, count: 31 }, 'D65', 10);
    for (const axis of [0, 1, 2]) {
      expect(jacobian[axis * 31 + band]).toBeCloseTo((at(1e-5)[axis]! - at(-1e-5)[axis]!) / 2e-5, 3);
    }
  }
});

test.each([3, 4, 5, 31, 81])('banded factors of %i values solve the same system as mathjs', (count) => {
  const random = seededNumbers(count);
  const ridge = 1e-3;
  const rightHandSide = Array.from({ length: count }, () => random() - 0.5);
  const expected = (lusolve(curvatureMatrix(count, ridge), rightHandSide) as number[][]).map(([value]) => value!);
  solveCurvature(factoriseCurvature(count, ridge), rightHandSide).forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 7));
});

test('the change is the solution of the bordered (Karush-Kuhn-Tucker) system', () => {
  const dLab: Lab = [0.4, -0.3, 0.2];
  const jacobian = labJacobian(wave.values, weightsOf(wave, light, 10));
  const rows = [0, 1, 2].map((axis) => Array.from(jacobian.slice(axis * 31, axis * 31 + 31)));
  const system = [
    ...curvatureMatrix(31, 1e-6).map((row, i) => [...row, ...rows.map((each) => each[i]!)]),
    ...rows.map((row) => [...row, 0, 0, 0]),
  ];
  const solution = (lusolve(system, [...Array.from({ length: 31 }, () => 0), ...dLab]) as number[][]).map(([value]) => value!);
  smoothestChange(wave, light, 10, dLab).forEach((value, i) => expect(value).toBeCloseTo(solution[i]!, 8));
});

test.each([
  ['10 nm', wave],
  ['20 nm', { startNm: 400, stepNm: 20, values: wave.values.filter((_, i) => i % 2 === 0) }],
  ['1 nm', { startNm: 380, stepNm: 1, values: Array.from({ length: 401 }, (_, i) => 0.2 + 0.1 * Math.sin(i / 60)) }],
] as const)('moves CIELAB of %s data by what was asked for, to first order', (_, spectrum) => {
  const dLab: Lab = [0.5, -0.2, 0.3];
  const change = smoothestChange(spectrum, light, 10, dLab);
  const start = spectrumToLab(spectrum, light, 10);
  const error = (share: number) => {
    const moved = spectrumToLab({ ...spectrum, values: addTo(spectrum.values, change, share) }, light, 10);
    return Math.hypot(...moved.map((value, i) => value - start[i]! - share * dLab[i]!));
  };
  expect(error(0.001)).toBeLessThan(1e-7);
  // The error of a first-order law falls with the square of the step.
  expect(error(1) / error(0.1)).toBeGreaterThan(80);
  expect(error(1) / error(0.1)).toBeLessThan(120);
});

test('a grey moved in lightness alone stays nearly grey, and no change is asked by no difference', () => {
  const grey = { startNm: 400, stepNm: 10, values: Array.from({ length: 31 }, () => 0.2) };
  const change = smoothestChange(grey, light, 10, [1, 0, 0]);
  const [low, high] = [Math.min(...change), Math.max(...change)];
  expect(low).toBeGreaterThan(0);
  expect((high - low) / high).toBeLessThan(0.02);
  expect(Array.from(smoothestChange(grey, light, 10, [0, 0, 0])).every((value) => value === 0)).toBe(true);
});

test('fewer than three bands cannot carry three conditions', () => {
  expect(Array.from(smoothestChange({ startNm: 500, stepNm: 10, values: [0.2, 0.3] }, light, 10, [1, 0, 0]))).toEqual([NaN, NaN]);
});
