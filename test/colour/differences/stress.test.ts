import { expect, test } from 'vitest';
import { visualDifference } from '../../../src/colour/power-function.ts';
import { stress } from '../../../src/colour/stress.ts';

test('STRESS is 0 for proportional lists, the same both ways, and free of scale', () => {
  expect(stress([1, 2, 3], [2, 4, 6])).toBeCloseTo(0, 12);
  const [computed, perceived] = [[0.4, 1.1, 2.3, 0.9], [0.5, 1.0, 1.9, 1.3]];
  expect(stress(perceived, computed)).toBeCloseTo(stress(computed, perceived), 12);
  expect(stress(computed.map((value) => 7 * value), perceived)).toBeCloseTo(stress(computed, perceived), 12);
  // Closed form of the least-squares residual: sqrt(1 - cos^2) of the angle between the lists.
  const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  const cosine = dot(computed, perceived) / Math.sqrt(dot(computed, computed) * dot(perceived, perceived));
  expect(stress(computed, perceived)).toBeCloseTo(Math.sqrt(1 - cosine * cosine) , 12);
});

test('lists of unlike length are refused', () => {
  expect(() => stress([1], [1, 2])).toThrow(RangeError);
});

test('formulas with no published power have no visual difference', () => {
  expect(visualDifference({ name: 'din99o' }, 1)).toBeUndefined();
  expect(visualDifference({ name: 'cie94Textile' }, 1)).toBeUndefined();
  // Huang et al. 2015: CIE76 1.26 dE^0.55.
  expect(visualDifference({ name: 'cie76' }, 1)).toBe(1.26);
});
