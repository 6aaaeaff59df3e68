import { erf } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Lab, Matrix3 } from '../../src/quantities.ts';
import { ellipsoidProbability } from '../../src/readings/ellipsoid-probability.ts';
import { imhofUpper } from './support/imhof.ts';
import { generator } from './support/simulation.ts';

const identity: Matrix3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];
const diagonal = (x: number, y: number, z: number): Matrix3 => [x, 0, 0, 0, y, 0, 0, 0, z];
const phi = (z: number): number => 0.5 * (1 + erf(z / Math.SQRT2));
const density = (z: number): number => Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
/** Noncentral chi distribution with three degrees of freedom in closed form (N. L. Johnson, S. Kotz, Continuous Univariate Distributions 2, ch. 29). */
const noncentralChi3 = (r: number, delta: number): number => (delta === 0
  ? erf(r / Math.SQRT2) - 2 * r * density(r)
  : phi(r - delta) - phi(-r - delta) - (density(r - delta) - density(r + delta)) / delta);

describe('ellipsoidProbability', () => {
  test('the worked pair of two covariances: upper tails by Imhof 0.016606 and 0.016565', () => {
    // Computed by Imhof's inversion, confirmed by 4e6 draws; recomputed by the next test.
    expect(1 - ellipsoidProbability([0.3, -0.1, 0.2], [0.04, 0.01, 0.006, 0.01, 0.0225, 0.004, 0.006, 0.004, 0.01], identity, 0.8)).toBeCloseTo(0.016606, 6);
    expect(1 - ellipsoidProbability([0.3, -0.1, 0.2], diagonal(0.04, 0.01, 0.0225), identity, 0.8)).toBeCloseTo(0.016565, 6);
  });

  test('agrees with Imhof on 6 seeded diagonal cases to 1e-6', () => {
    const random = generator(8);
    for (let i = 0; i < 6; i++) {
      const sd = [0.1 + random(), 0.1 + random(), 0.1 + random()];
      const mean: Lab = [random() - 0.5, random() - 0.5, random() - 0.5];
      const limit = 0.2 + 2 * random();
      const expected = imhofUpper(sd.map((s) => s * s), mean.map((m, k) => m / sd[k]), limit * limit);
      const got = 1 - ellipsoidProbability(mean, diagonal(sd[0] ** 2, sd[1] ** 2, sd[2] ** 2), identity, limit);
      expect(Math.abs(got - expected)).toBeLessThan(1e-6);
    }
  }, 30_000);

  test.each([0, 0.25, 0.5, 1, 2, 5, 10])('isotropic noise, distance %d sd: the closed noncentral chi law', (delta) => {
    for (const r of [0.1, 0.5, 1, 1.5382, 2.7955, 5, 9]) {
      expect(ellipsoidProbability([0.6 * delta * 0.2, 0, 0.8 * delta * 0.2], diagonal(0.04, 0.04, 0.04), identity, r * 0.2)).toBeCloseTo(noncentralChi3(r, delta), 7);
    }
  });

  test('chi-square table: 7.815, 11.345 and 14.156 with three degrees of freedom', () => {
    // Abramowitz and Stegun, table 26.8, for 0.95 and 0.99; the three-sigma point from tables of process control.
    for (const [x, p] of [[7.815, 0.95], [11.345, 0.99], [14.156, 0.9973]]) {
      expect(ellipsoidProbability([0, 0, 0], identity, identity, Math.sqrt(x))).toBeCloseTo(p, 4);
    }
  });

  test('singular covariances: a line is a normal interval, a plane a circle, a point all or nothing', () => {
    // One axis: Phi(b) - Phi(a). Two equal axes about the centre: 1 - exp(-r^2 / 2) (Rayleigh).
    expect(ellipsoidProbability([0.2, 0, 0], diagonal(0.09, 0, 0), identity, 0.5)).toBeCloseTo(phi(1) - phi(-0.7 / 0.3), 9);
    expect(ellipsoidProbability([0, 0, 0], diagonal(0.04, 0, 0.04), identity, 0.3)).toBeCloseTo(1 - Math.exp(-1.125), 8);
    expect(ellipsoidProbability([0.3, 0, 0], diagonal(0, 0, 0), identity, 0.3)).toBe(1);
    expect(ellipsoidProbability([0.3, 0, 0], diagonal(0, 0, 0), identity, 0.2999)).toBe(0);
    // Off the line of movement the half chord counts: |x| <= 0.4 with y fixed at 0.3 and r = 0.5.
    expect(ellipsoidProbability([0, 0.3, 0], diagonal(0.16, 0, 0), identity, 0.5)).toBeCloseTo(phi(1) - phi(-1), 9);
  });

  test('a tiny spread across the surface is half inside', () => {
    for (const sd of [1e-7, 1e-5, 1e-3]) expect(ellipsoidProbability([1, 0, 0], diagonal(sd * sd, sd * sd, sd * sd), identity, 1)).toBeCloseTo(0.5 - sd * density(0), 5);
  });

  test('the metric acts like stretched axes', () => {
    const metric = diagonal(4, 0.25, 1);
    expect(ellipsoidProbability([0.1, 0.4, -0.2], diagonal(0.01, 0.09, 0.04), metric, 0.6))
      .toBeCloseTo(ellipsoidProbability([0.2, 0.2, -0.2], diagonal(0.04, 0.0225, 0.04), identity, 0.6), 9);
  });

  test('a limit of zero or below', () => {
    expect(ellipsoidProbability([0, 0, 0], identity, identity, 0)).toBe(0);
    expect(ellipsoidProbability([0, 0, 0], diagonal(0, 0, 0), identity, -0.1)).toBe(0);
  });
});
