import { describe, expect, test } from 'vitest';
import type { Matrix3 } from '../../src/quantities.ts';
import { differenceDistribution } from '../../src/readings/difference-distribution.ts';
import { distributionCases, simulateDifference } from './support/simulation.ts';

const zero: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0];
const full: Matrix3 = [0.04, 0.01, 0.006, 0.01, 0.0225, 0.004, 0.006, 0.004, 0.01];
const ball: Matrix3 = [0.04, 0, 0, 0, 0.04, 0, 0, 0, 0.04];

describe('CIE76, where the law is known', () => {
  test.each([
    // mean (.3, -.1, .2): by numerical integration of the trivariate normal law, upper tail by Imhof 1961.
    [full, 0.434823, 0.153065, 0.706819, 0.016606],
    [[0.04, 0, 0, 0, 0.01, 0, 0, 0, 0.0225] as Matrix3, 0.432194, 0.160337, 0.710587, 0.016565],
  ])('covariance %j', (covariance, mean, sd, p95, beyond) => {
    const found = differenceDistribution({
      formula: { name: 'cie76' }, standard: [50, 0, 0], trial: [50.3, -0.1, 0.2], standardCovariance: zero, trialCovariance: covariance, limit: 0.8,
    });
    expect(found.mean).toBeCloseTo(mean, 3);
    expect(found.sd).toBeCloseTo(sd, 3);
    expect(Math.abs(found.p95 / p95 - 1)).toBeLessThan(0.003);
    expect(1 - (found.withinProbability ?? NaN)).toBeCloseTo(beyond, 5);
  });

  test.each([
    // Isotropic noise sigma, distance delta: mean, median and 95th percentile in sigma of the noncentral chi law with three
    // degrees of freedom, from its closed form (N. L. Johnson, S. Kotz, Continuous Univariate Distributions 2, ch. 29).
    [0, 1.5958, 1.5382, 2.7955], [0.25, 1.6123, 1.5542, 2.8243], [0.5, 1.6614, 1.6023, 2.9070], [1, 1.8493, 1.7925, 3.1941],
    [1.5, 2.1362, 2.0917, 3.5740], [2, 2.4942, 2.4650, 3.9976], [3, 3.3332, 3.3220, 4.9055], [5, 5.2000, 5.1974, 6.8162],
    [10, 10.1000, 10.0997, 11.7372],
  ])('noise inflates a difference of %d sigma to %d', (delta, mean, median, p95) => {
    const half = ball.map((entry) => entry / 2) as unknown as Matrix3;
    const found = differenceDistribution({
      formula: { name: 'cie76' }, standard: [30, 1, 1], trial: [30, 1 + 0.6 * 0.2 * delta, 1 + 0.8 * 0.2 * delta], standardCovariance: half, trialCovariance: half,
    });
    expect(found.mean / 0.2).toBeCloseTo(mean, 2);
    expect(found.p50 / 0.2).toBeCloseTo(median, 1);
    expect(Math.abs(found.p50 / 0.2 / median - 1)).toBeLessThan(0.005);
    expect(Math.abs(found.p95 / 0.2 / p95 - 1)).toBeLessThan(0.005);
    expect(found.withinProbability).toBeUndefined();
  });
});

describe('CIEDE2000, against 100 000 independent draws of both sides', () => {
  test.each(distributionCases(24, 3).map((input) => [input.name, input] as const))('%s', (_, input) => {
    const expected = simulateDifference(input, 100_000, 17);
    const found = differenceDistribution({ formula: { name: 'ciede2000' }, ...input });
    // 0.01 and 2 % are what users are promised; three standard errors of the simulation itself are below 0.005 and 0.6 %.
    expect(Math.abs((found.withinProbability ?? NaN) - expected.within)).toBeLessThan(0.007);
    expect(Math.abs(found.mean / expected.mean - 1)).toBeLessThan(0.01);
    expect(Math.abs(found.sd / expected.sd - 1)).toBeLessThan(0.02);
    expect(Math.abs(found.p95 / expected.p95 - 1)).toBeLessThan(0.025);
    expect(found.error).toBeLessThan(0.01);
  });
});

test('near-black draws with L* below zero are defined', () => {
  const found = differenceDistribution({
    formula: { name: 'ciede2000' }, standard: [0.1, 0, 0], trial: [0.1, 0, 0], standardCovariance: ball, trialCovariance: ball, limit: 0.3,
  });
  expect([found.mean, found.sd, found.p5, found.p95, found.withinProbability ?? NaN].every(Number.isFinite)).toBe(true);
});

test.each(['cie76', 'cie94', 'cie94Textile', 'cmc', 'ciede2000', 'din99o', 'cam02ucs', 'cam16ucs'] as const)('%s: nothing uncertain gives the value itself', (name) => {
  const input = { formula: { name }, standard: [40, 5, -3], trial: [40.5, 5.2, -3.1], standardCovariance: zero, trialCovariance: zero } as const;
  const found = differenceDistribution({ ...input, limit: 5 });
  expect(found.sd).toBe(0);
  expect(new Set([found.mean, found.p5, found.p50, found.p95]).size).toBe(1);
  expect(found.withinProbability).toBe(1);
  expect(differenceDistribution({ ...input, limit: found.mean * 0.999 }).withinProbability).toBe(0);
});

test('is the same every time, and swapping the sides changes nothing for a symmetric formula', () => {
  const input = { formula: { name: 'ciede2000' }, standard: [25, 0.2, -0.6], trial: [25.3, 0.1, -0.4], standardCovariance: full, trialCovariance: ball, limit: 0.8 } as const;
  expect(differenceDistribution(input)).toEqual(differenceDistribution(input));
  const swapped = differenceDistribution({ ...input, standard: input.trial, trial: input.standard, standardCovariance: ball, trialCovariance: full });
  expect(swapped.withinProbability).toBeCloseTo(differenceDistribution(input).withinProbability ?? NaN, 3);
  expect(swapped.mean).toBeCloseTo(differenceDistribution(input).mean, 3);
});
