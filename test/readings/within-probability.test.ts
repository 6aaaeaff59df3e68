import { describe, expect, test } from 'vitest';
import type { Lab, Matrix3 } from '../../src/quantities.ts';
import { addMatrix3 } from '../../src/readings/matrix3.ts';
import { labColumns } from '../../src/colour/batch/index.ts';
import { withinProbability, withinProbabilityError } from '../../src/readings/within-probability.ts';
import { withinProbabilityBatch } from '../../src/readings/within-probability-batch.ts';
import { ciede2000ByCulori, distributionCases, normalGenerator, vectorDraws } from './support/simulation.ts';

const DRAWS = 60_000;

/** Difference drawn, midpoint kept. */
function simulate(standard: Lab, trial: Lab, covariance: Matrix3, limit: number): number {
  const centre = standard.map((value, i) => (value + trial[i]) / 2);
  const draw = vectorDraws(trial.map((value, i) => value - standard[i]), covariance, normalGenerator(5));
  let within = 0;
  for (let i = 0; i < DRAWS; i++) {
    const d = draw();
    if (ciede2000ByCulori(centre.map((c, k) => c - d[k] / 2), centre.map((c, k) => c + d[k] / 2)) <= limit) within++;
  }
  return within / DRAWS;
}

describe('withinProbability', () => {
  test.each(distributionCases(18, 9).map((input) => [input.name, input] as const))('CIEDE2000 against independent draws: %s', (_, input) => {
    const covariance = addMatrix3(input.standardCovariance, input.trialCovariance);
    const expected = simulate(input.standard, input.trial, covariance, input.limit);
    const found = withinProbability({ name: 'ciede2000' }, input.standard, input.trial, covariance, input.limit);
    const noise = 3 * Math.sqrt(Math.max(1e-4, expected * (1 - expected)) / DRAWS);
    expect(Math.abs(found - expected)).toBeLessThan(withinProbabilityError + noise);
  });

  test('CIE76: the tail by Imhof, 0.016606', () => {
    const covariance: Matrix3 = [0.04, 0.01, 0.006, 0.01, 0.0225, 0.004, 0.006, 0.004, 0.01];
    expect(1 - withinProbability({ name: 'cie76' }, [0, 0, 0], [0.3, -0.1, 0.2], covariance, 0.8)).toBeCloseTo(0.016606, 6);
  });

  test('no spread: value against limit; a limit below zero never holds', () => {
    const none: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0];
    expect(withinProbability({ name: 'cie76' }, [50, 0, 0], [50.5, 0, 0], none, 0.5)).toBe(1);
    expect(withinProbability({ name: 'cie76' }, [50, 0, 0], [50.5, 0, 0], none, 0.4999)).toBe(0);
    expect(withinProbability({ name: 'ciede2000' }, [50, 0, 0], [50, 0, 0], none, -1)).toBe(0);
  });

  test('grows with the limit and is swapped without change', () => {
    const covariance: Matrix3 = [0.04, 0, 0, 0, 0.01, 0, 0, 0, 0.02];
    let before = -1;
    for (let limit = 0; limit <= 2; limit += 0.1) {
      const p = withinProbability({ name: 'ciede2000' }, [30, 8, -20], [30.4, 8.2, -20.3], covariance, limit);
      expect(p).toBeGreaterThanOrEqual(before - 0.001);
      expect(withinProbability({ name: 'ciede2000' }, [30.4, 8.2, -20.3], [30, 8, -20], covariance, limit)).toBeCloseTo(p, 9);
      before = p;
    }
  });
});

describe('withinProbabilityBatch', () => {
  test('gives what each pair alone gives', () => {
    const inputs = distributionCases(12, 3);
    const [standard, trial] = [labColumns(inputs.length), labColumns(inputs.length)];
    const covariances = new Float64Array(9 * inputs.length);
    inputs.forEach((input, i) => {
      [standard.L[i], standard.a[i], standard.b[i]] = input.standard;
      [trial.L[i], trial.a[i], trial.b[i]] = input.trial;
      covariances.set(addMatrix3(input.standardCovariance, input.trialCovariance), 9 * i);
    });
    const found = withinProbabilityBatch({ name: 'ciede2000' }, standard, trial, covariances, Float64Array.from(inputs, ({ limit }) => limit), new Float64Array(inputs.length));
    inputs.forEach(({ standardCovariance, trialCovariance, limit, ...input }, i) =>
      expect(found[i]).toBe(withinProbability({ name: 'ciede2000' }, input.standard, input.trial, addMatrix3(standardCovariance, trialCovariance), limit)));
  });

  test('refuses columns that are too short', () => {
    const [one, two] = [labColumns(1), labColumns(2)];
    expect(() => withinProbabilityBatch({ name: 'cie76' }, one, two, new Float64Array(18), new Float64Array(2), new Float64Array(2))).toThrow(RangeError);
    expect(() => withinProbabilityBatch({ name: 'cie76' }, two, two, new Float64Array(9), new Float64Array(2), new Float64Array(2))).toThrow(RangeError);
  });
});
