import { describe, expect, test } from 'vitest';
import { radialQuantile, shareWithinRadius } from '../../src/readings/radial-quantile.ts';

describe('distance within which a share of a three-dimensional normal cloud lies', () => {
  // Percentage points of chi-square with three degrees of freedom, as printed in handbooks of statistics.
  test.each([[0.9, 6.25139], [0.95, 7.81473], [0.975, 9.3484], [0.99, 11.34487], [0.995, 12.83816], [0.5, 2.36597], [0.05, 0.35185]])('share %d: squared %d', (share, squared) => {
    expect(radialQuantile(share) ** 2).toBeCloseTo(squared, 4);
  });

  test('the share is the integral of the density, by Simpson over 2,000 intervals', () => {
    const density = (r: number): number => Math.sqrt(2 / Math.PI) * r * r * Math.exp(-0.5 * r * r);
    for (const radius of [0.1, 1, 2.7955, 4, 6]) {
      const h = radius / 2000;
      let sum = density(0) + density(radius);
      for (let index = 1; index < 2000; index++) sum += (index % 2 === 1 ? 4 : 2) * density(index * h);
      expect(shareWithinRadius(radius)).toBeCloseTo((sum * h) / 3, 10);
    }
  });

  test('both ends, and what is no share', () => {
    expect(radialQuantile(0)).toBeCloseTo(0, 12);
    expect(radialQuantile(1)).toBe(Infinity);
    expect(radialQuantile(1.1)).toBeNaN();
    expect(radialQuantile(NaN)).toBeNaN();
  });
});
