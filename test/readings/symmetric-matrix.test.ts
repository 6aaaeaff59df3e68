import { eigs } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { principalFactor, symmetricEigen } from '../../src/readings/symmetric-matrix.ts';
import { generator } from './support/simulation.ts';

function gram(n: number, rank: number, seed: number): Float64Array {
  const random = generator(seed);
  const rows = Array.from({ length: n }, () => Array.from({ length: rank }, () => 2 * random() - 1));
  return Float64Array.from({ length: n * n }, (_, at) => rows[Math.floor(at / n)].reduce((sum, x, k) => sum + x * rows[at % n][k], 0));
}

describe('symmetricEigen', () => {
  test.each([[3, 3, 1], [3, 1, 2], [6, 4, 3], [12, 12, 4], [24, 7, 5]])('%i x %i of rank %i: values of mathjs, orthonormal vectors', (n, rank, seed) => {
    const matrix = gram(n, rank, seed);
    const { values, vectors } = symmetricEigen(matrix, n);
    const rows = Array.from({ length: n }, (_, i) => Array.from(matrix.subarray(i * n, (i + 1) * n)));
    const expected = (eigs(rows, { eigenvectors: false }).values as number[]).map(Number).sort((p, q) => q - p);
    expected.forEach((value, i) => expect(values[i]).toBeCloseTo(value, 8));
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) {
      let dot = 0;
      let rebuilt = 0;
      for (let k = 0; k < n; k++) {
        dot += vectors[k * n + i] * vectors[k * n + j];
        rebuilt += vectors[i * n + k] * values[k] * vectors[j * n + k];
      }
      expect(dot).toBeCloseTo(Number(i === j), 10);
      expect(rebuilt).toBeCloseTo(matrix[i * n + j], 10);
    }
  });

  test('the zero matrix has zero values', () => {
    expect([...symmetricEigen(new Float64Array(9), 3).values]).toEqual([0, 0, 0]);
  });
});

describe('principalFactor', () => {
  test.each([[3, 3], [3, 2], [3, 1], [12, 5], [24, 9]])('of %i dimensions finds the rank %i and gives the covariance back', (n, rank) => {
    const covariance = gram(n, rank, 10 * n + rank);
    const found = principalFactor(covariance, n);
    expect(found.rank).toBe(rank);
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) {
      let entry = 0;
      for (let k = 0; k < rank; k++) entry += found.factor[i * rank + k] * found.factor[j * rank + k];
      expect(entry).toBeCloseTo(covariance[i * n + j], 8);
    }
  });

  test('no variance, no column', () => {
    expect(principalFactor(new Float64Array(9), 3).rank).toBe(0);
  });
});
