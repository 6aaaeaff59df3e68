import { describe, expect, test } from 'vitest';
import { latticeVector } from '../../src/readings/lattice.ts';
import { quasiNormal } from '../../src/readings/quasi-normal.ts';
import { generator } from './support/simulation.ts';
import { latticeError, searchLattice } from './support/lattice-search.ts';

describe('the lattice', () => {
  test('is the one that the kept search finds', () => {
    expect(searchLattice(5)).toEqual(latticeVector.slice(0, 5));
  }, 20_000);

  test.each([[3, 9], [6, 10], [9, 12], [12, 11]])('in %i dimensions with 2^%i points beats most of 20 random vectors', (dimensions, m) => {
    const random = generator(dimensions);
    const others = Array.from({ length: 20 }, () => latticeError(Array.from({ length: dimensions }, () => 1 + 2 * Math.floor(random() * 2 ** (m - 1))), m));
    expect(latticeError(latticeVector.slice(0, dimensions), m)).toBeLessThan([...others].sort((p, q) => p - q)[5]);
  });
});

describe('quasiNormal', () => {
  test('comes in pairs z, -z', () => {
    const table = quasiNormal(5, 64, 3);
    for (let row = 0; row < 64; row += 2) for (let k = 0; k < 5; k++) expect(table[row * 5 + k]).toBe(-table[(row + 1) * 5 + k]);
  });

  test.each([[3, 1024], [12, 4096], [24, 4096], [40, 4096]])('%i columns of %i points have unit variance, no correlation and the normal quartiles', (dimension, points) => {
    const table = quasiNormal(dimension, points, 1);
    for (let i = 0; i < dimension; i++) {
      // Beyond the twelfth column 2048 random values: five standard errors, sqrt(96 / 2048) for the fourth moment.
      let fourth = 0;
      let below = 0;
      for (let row = 0; row < points; row++) {
        fourth += table[row * dimension + i] ** 4 / points;
        // First quartile of the standard normal: Abramowitz and Stegun, table 26.5.
        if (table[row * dimension + i] < -0.6744897501960817) below++;
      }
      expect(fourth).toBeGreaterThan(i < 12 ? 2.85 : 1.9);
      expect(fourth).toBeLessThan(i < 12 ? 3.15 : 4.1);
      expect(Math.abs(below / points - 0.25)).toBeLessThan(i < 12 ? 0.001 : 0.04);
      for (let j = 0; j <= i; j++) {
        // 2^11 points cannot keep all pairs of many columns apart; the widest axes come first and are the good ones.
        let product = 0;
        for (let row = 0; row < points; row++) product += (table[row * dimension + i] * table[row * dimension + j]) / points;
        expect(Math.abs(product - Number(i === j))).toBeLessThan(i < 9 ? 0.04 : 0.12);
      }
    }
  });

  test('the seed decides, and nothing else', () => {
    const table = [...quasiNormal(4, 128, 9)];
    for (let seed = 100; seed < 200; seed++) quasiNormal(4, 128, seed);
    expect([...quasiNormal(4, 128, 9)]).toEqual(table);
    expect([...quasiNormal(4, 128, 10)]).not.toEqual(table);
  });

  test.each([0, 2, 3, 1000, 65_536, NaN])('refuses %d points', (points) => {
    expect(() => quasiNormal(3, points, 1)).toThrow(RangeError);
  });

  test('is finite throughout, as is a table without columns', () => {
    expect(quasiNormal(32, 32_768, 5).every(Number.isFinite)).toBe(true);
    expect(quasiNormal(0, 64, 1)).toHaveLength(0);
  });
});
