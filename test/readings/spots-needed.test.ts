import { describe, expect, test } from 'vitest';
import { chanceOfDeciding, colourSpotsNeeded } from '../../src/readings/colour-spots-needed.ts';
import { matchCriteria } from '../../src/readings/stacked-event.ts';
import { scalarEventChance, scalarEventSpotsNeeded } from '../../src/readings/scalar-event.ts';
import { spotsThatDecide } from '../../src/readings/spots-that-decide.ts';
import { normalGenerator } from './support/simulation.ts';

/** One-dimensional check |d| <= 1 with a plain first-order probability, so that every expectation can be worked by hand. */
const oneSided = (difference: number, uncertainty: number) => ({
  within: difference + 1.6448536 * uncertainty <= 1 ? 0.96 : difference - 1.6448536 * uncertainty >= 1 ? 0.04 : 0.5,
  excess: uncertainty === 0 ? 0 : (difference - 1) / uncertainty,
  inside: difference <= 1,
});
const scalar = (difference: number, instrumentVariance: number) => ({
  first: { sd: 0.4, spots: 2, assumedSd: 0.4 }, second: { sd: 0.3, spots: 2, assumedSd: 0.3 }, priorReadings: 8, instrumentVariance, confidence: 0.95, difference, compare: oneSided,
});

describe('in one dimension', () => {
  test('the number follows from u <= (1 - d) / 1.645: variance 0.25 / n', () => {
    // d = 0.8: n >= 0.25 * (1.6448536 / 0.2)^2 = 16.9.
    expect(scalarEventSpotsNeeded({ checks: [scalar(0.8, 0)], wanted: 'all' })).toEqual({ kind: 'too few spots', spots: 17 });
    // The same distance beyond the limit.
    expect(scalarEventSpotsNeeded({ checks: [scalar(1.2, 0)], wanted: 'all' })).toEqual({ kind: 'too few spots', spots: 17 });
  });
  test('an instrument term of sd 0.2 can never be outweighed; without it 17 spots would do', () => {
    expect(scalarEventSpotsNeeded({ checks: [scalar(0.8, 0.04)], wanted: 'all' })).toEqual({ kind: 'instruments disagree', spotsOnOneInstrument: 17 });
  });
  test('a value on its limit', () => {
    expect(scalarEventSpotsNeeded({ checks: [scalar(1, 0)], wanted: 'all' })).toEqual({ kind: 'on the limit' });
    expect(scalarEventSpotsNeeded({ checks: [scalar(0.9, 0)], wanted: 'all' })).toEqual({ kind: 'on the limit' });
  });
  test('the chance is that of the predictive normal law, by independent draws', () => {
    const check = scalar(0.8, 0);
    const normal = normalGenerator(3);
    // New mean: variance 0.25 (1/2 - 1/10); new u: sqrt(0.25 / 10).
    let decided = 0;
    for (let i = 0; i < 100_000; i++) {
      const mean = 0.8 + Math.sqrt(0.1) * normal();
      if (Math.abs(mean - 1) >= 1.6448536 * Math.sqrt(0.025)) decided++;
    }
    expect(scalarEventChance({ checks: [check], wanted: 'all' }, 10)).toBeCloseTo(decided / 100_000, 1);
    expect(Math.abs(scalarEventChance({ checks: [check], wanted: 'all' }, 10) - decided / 100_000)).toBeLessThan(0.02);
    expect(scalarEventChance({ checks: [check], wanted: 'all' }, 2)).toBe(0);
  });
});

describe('colour', () => {
  const lights = (dL: number) => [{ standard: [50, 0, 0] as const, trial: [50 + dL, 0, 0] as const, criteria: matchCriteria({ name: 'cie76' }, 1) }];
  const none = new Float64Array(9);
  const lightness = Float64Array.from([0.125, 0, 0, 0, 0, 0, 0, 0, 0]);
  const check = (dL: number, instrument = none) => ({ lights: lights(dL), spread: { first: lightness, second: lightness, firstSpots: 2, secondSpots: 3, instrument }, confidence: 0.95 });
  test('noise in lightness alone is the case of one dimension: 17 spots, give or take one', () => {
    const found = colourSpotsNeeded(check(0.8));
    expect(found.kind).toBe('too few spots');
    if (found.kind === 'too few spots') expect(Math.abs(found.spots - 17)).toBeLessThanOrEqual(1);
  });
  test('instruments in the way, and the limit itself', () => {
    expect(colourSpotsNeeded(check(0.8, Float64Array.from([0.04, 0, 0, 0, 0, 0, 0, 0, 0]))).kind).toBe('instruments disagree');
    expect(colourSpotsNeeded(check(1))).toEqual({ kind: 'on the limit' });
    expect(colourSpotsNeeded(check(0.8), 10).kind).toBe('on the limit');
  });
  test('the chance grows with the spots', () => {
    const [few, some, many] = [3, 10, 50].map((spots) => chanceOfDeciding(check(0.8), spots));
    expect(few).toBeLessThan(some);
    expect(some).toBeLessThan(many);
    expect(many).toBeGreaterThan(0.6);
  });
});

test('spotsThatDecide finds the first number by halving', () => {
  for (const needed of [4, 7, 23, 50]) expect(spotsThatDecide(3, 50, (n) => n >= needed)).toEqual({ kind: 'too few spots', spots: needed });
  expect(spotsThatDecide(60, 50, () => false)).toEqual({ kind: 'on the limit' });
});
