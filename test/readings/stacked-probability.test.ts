import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Lab } from '../../src/quantities.ts';
import { contrastCriteria, matchCriteria, toneStepCriteria } from '../../src/readings/stacked-event.ts';
import type { Criterion, StackedEvent, StackedLight } from '../../src/readings/stacked-event.ts';
import { stackedProbability, stackedProbabilityError } from '../../src/readings/stacked-probability.ts';
import { stackedSide } from '../../src/readings/stacked-side.ts';
import { ciede2000ByCulori, generator, normalGenerator, vectorDraws } from './support/simulation.ts';

const DRAWS = 60_000;

/** Four lights that see nearly the same deviation, and a little of their own each: of the rank asked for. */
function fourLights(rank: number, seed: number): { lights: { standard: Lab; trial: Lab; limit: number }[]; covariance: Float64Array } {
  const random = generator(seed);
  const rows = Array.from({ length: 12 }, () => Array.from({ length: rank }, () => (2 * random() - 1) * 0.12));
  for (let row = 3; row < 12; row++) rows[row] = rows[row].map((own, k) => rows[row % 3][k] + 0.35 * own);
  const covariance = Float64Array.from({ length: 144 }, (_, at) => rows[Math.floor(at / 12)].reduce((sum, value, k) => sum + value * rows[at % 12][k], 0));
  const base = [[25, 0.2, -0.5], [65, 3, 14], [32, 38, 18], [30, 12, -42]][seed % 4];
  const d = [0.4 * random(), 0.4 * random() - 0.2, 0.4 * random() - 0.2];
  const lights = Array.from({ length: 4 }, (_, light) => {
    const standard: Lab = [base[0] + light, base[1] + 0.5 * light, base[2] - light];
    return { standard, trial: [standard[0] + d[0], standard[1] + d[1], standard[2] + 1.2 * d[2]] as const, limit: 0.75 + 0.1 * light };
  });
  return { lights, covariance };
}

/** Share of independent draws in which `holds` is true of all sides. */
function simulate(lights: readonly { standard: Lab; trial: Lab }[], covariance: Float64Array, holds: (light: number, first: Lab, second: Lab) => boolean): number {
  const draw = vectorDraws(lights.flatMap(({ standard, trial }) => trial.map((value, i) => value - standard[i])), covariance, normalGenerator(12));
  let count = 0;
  for (let n = 0; n < DRAWS; n++) {
    const d = draw();
    if (lights.every(({ standard, trial }, light) => {
      const side = (sign: number): Lab => [0, 1, 2].map((i) => (standard[i] + trial[i]) / 2 + (sign * d[3 * light + i]) / 2) as unknown as Lab;
      return holds(light, side(-1), side(1));
    })) count++;
  }
  return count / DRAWS;
}

describe('against independent draws and the CIEDE2000 of culori', () => {
  // Allowed: the error that is stated, and three standard errors of the draws.
  const allowed = (p: number): number => stackedProbabilityError + 3 * Math.sqrt(Math.max(1e-4, p * (1 - p)) / DRAWS);

  test.each([[3, 1], [6, 2], [9, 3], [12, 4], [12, 8]])('match under four lights, covariance of rank %i, seed %i', (rank, seed) => {
    const { lights, covariance } = fourLights(rank, seed);
    const found = stackedProbability({
      lights: lights.map(({ standard, trial, limit }) => ({ standard, trial, criteria: matchCriteria({ name: 'ciede2000' }, limit, [{ component: 'dL', min: -0.7, max: 0.7 }]) })),
      covariance,
    });
    const expected = simulate(lights, covariance, (light, p, q) => Math.abs(q[0] - p[0]) <= 0.7 && ciede2000ByCulori(p, q) <= lights[light].limit);
    expect(Math.abs(found.all - expected)).toBeLessThan(allowed(expected));
  });

  test('contrast under two lights', () => {
    const lights = [{ standard: [25, 0, 0] as const, trial: [38, 2, 4] as const }, { standard: [26, 0, 1] as const, trial: [39, 2, 5] as const }];
    const covariance = Float64Array.from({ length: 36 }, (_, at) => (at % 7 === 0 ? 0.5 : at % 6 === Math.floor(at / 6) % 3 + 3 || Math.floor(at / 6) === at % 6 + 3 ? 0.4 : 0));
    const minimum = 10.5;
    const found = stackedProbability({ lights: lights.map((light) => ({ ...light, criteria: contrastCriteria({ name: 'ciede2000' }, minimum) })), covariance });
    const expected = simulate(lights, covariance, (_, p, q) => ciede2000ByCulori(p, q) >= minimum);
    expect(expected).toBeGreaterThan(0.05);
    expect(expected).toBeLessThan(0.95);
    expect(Math.abs(found.all - expected)).toBeLessThan(allowed(expected));
  });

  test('tone step: lightness apart within bounds, hue kept', () => {
    const lights = [{ standard: [30, 6, 4] as const, trial: [35.4, 7, 5.5] as const }];
    const covariance = Float64Array.from([0.3, 0, 0, 0, 1, 0.2, 0, 0.2, 1]);
    const found = stackedProbability({ lights: [{ ...lights[0], criteria: toneStepCriteria({ minDL: 5, maxDL: 6, maxDH: 1 }) }], covariance });
    const expected = simulate(lights, covariance, (_, p, q) => {
      const dL = Math.abs(q[0] - p[0]);
      // dH = 2 sqrt(C1 C2) sin(dh / 2), with the hue angles themselves (ISO/CIE 11664-4).
      const dH = 2 * Math.sqrt(Math.hypot(p[1], p[2]) * Math.hypot(q[1], q[2])) * Math.sin((Math.atan2(q[2], q[1]) - Math.atan2(p[2], p[1])) / 2);
      return dL >= 5 && dL <= 6 && Math.abs(dH) <= 1;
    });
    expect(Math.abs(found.all - expected)).toBeLessThan(allowed(expected));
  });
});

const arbitraryEvent = fc.record({
  seed: fc.integer({ min: 1, max: 1000 }), rank: fc.integer({ min: 0, max: 12 }), count: fc.integer({ min: 1, max: 4 }), scale: fc.double({ min: 0.2, max: 4, noNaN: true }),
}).map(({ seed, rank, count, scale }): StackedEvent => {
  const { lights, covariance } = fourLights(rank, seed);
  const size = 3 * count;
  return {
    lights: lights.slice(0, count).map(({ standard, trial, limit }): StackedLight =>
      ({ standard, trial, criteria: matchCriteria({ name: 'ciede2000' }, limit * scale, [{ component: 'dC', max: 0.4 }]) })),
    covariance: Float64Array.from({ length: size * size }, (_, at) => covariance[Math.floor(at / size) * 12 + (at % size)]),
    points: 256,
  };
});

test('the bounds of Bonferroni and Frechet hold exactly', () => {
  fc.assert(fc.property(arbitraryEvent, (event) => {
    const { all, each, criteria } = stackedProbability(event);
    expect(all).toBeLessThanOrEqual(Math.min(...each));
    expect(all).toBeGreaterThanOrEqual(Math.max(0, 1 - each.reduce((sum, p) => sum + (1 - p), 0)));
    each.forEach((p, light) => expect(p).toBeLessThanOrEqual(Math.min(...criteria[light])));
  }), { numRuns: 60, seed: 4 });
});

test('swapping the sides changes no probability under a symmetric event', () => {
  fc.assert(fc.property(arbitraryEvent, (event) => {
    const matchOnly = event.lights.map(({ standard, trial, criteria }) => ({ standard, trial, criteria: criteria.slice(0, 1) }));
    const swapped = matchOnly.map(({ standard, trial, criteria }) => ({ standard: trial, trial: standard, criteria }));
    expect(stackedProbability({ ...event, lights: swapped })).toEqual(stackedProbability({ ...event, lights: matchOnly }));
  }), { numRuns: 40, seed: 5 });
});

test('one light alone is the first of its own event, and identical lights add nothing', () => {
  const { lights, covariance } = fourLights(3, 2);
  const block = Float64Array.from({ length: 9 }, (_, at) => covariance[Math.floor(at / 3) * 12 + (at % 3)]);
  const light = { standard: lights[0].standard, trial: lights[0].trial, criteria: matchCriteria({ name: 'ciede2000' }, 0.7) };
  const twice = Float64Array.from({ length: 36 }, (_, at) => block[(Math.floor(at / 6) % 3) * 3 + (at % 3)]);
  const one = stackedProbability({ lights: [light], covariance: block });
  const two = stackedProbability({ lights: [light, light], covariance: twice });
  expect(one.all).toBe(one.each[0]);
  expect(two.each[0]).toBe(two.each[1]);
  expect(two.all).toBe(two.each[0]);
});

test('an ordered formula in the stricter direction is the same whichever side is the standard', () => {
  const { lights, covariance } = fourLights(6, 3);
  const event = (flip: boolean): StackedEvent => ({
    lights: lights.map(({ standard, trial }) => ({
      standard: flip ? trial : standard, trial: flip ? standard : trial, criteria: matchCriteria({ name: 'cmc', l: 2, c: 1 }, 0.35, [], true),
    })),
    covariance, points: 512,
  });
  expect(stackedProbability(event(true))).toEqual(stackedProbability(event(false)));
});

test('no spread and no lights', () => {
  const light = { standard: [50, 0, 0] as const, trial: [50.5, 0, 0] as const };
  const at = (limit: number) => stackedProbability({ lights: [{ ...light, criteria: matchCriteria({ name: 'cie76' }, limit) }], covariance: new Float64Array(9) });
  expect(at(0.5)).toMatchObject({ all: 1, each: [1], points: 1 });
  expect(at(0.49).all).toBe(0);
  expect(stackedProbability({ lights: [], covariance: [] }).all).toBe(1);
});

test('the side of a confidence is the one that the counted probability of the same draws lies on', () => {
  let between = 0;
  fc.assert(fc.property(arbitraryEvent, fc.constantFrom(0.6, 0.9, 0.95, 0.99), (event, confidence) => {
    const { all } = stackedProbability(event);
    const side = all >= confidence ? 'high' : all <= 1 - confidence ? 'low' : 'between';
    if (side === 'between') between += 1;
    expect(stackedSide({ ...event, points: event.points ?? 256 }, confidence)).toBe(side);
  }), { numRuns: 300, seed: 6 });
  expect(between).toBeGreaterThan(30);
});

test('a criterion that fails for certain under one light leaves nothing of the whole, and the others as they are', () => {
  const { lights, covariance } = fourLights(6, 1);
  const asked = (extra: readonly Criterion[]): StackedEvent => ({
    covariance, points: 8192,
    lights: lights.map(({ standard, trial, limit }, light): StackedLight => ({ standard, trial, criteria: [...matchCriteria({ name: 'ciede2000' }, limit), ...(light === 1 ? extra : [])] })),
  });
  const plain = stackedProbability(asked([]));
  const failing = stackedProbability(asked([{ kind: 'component', component: 'dL', min: 50 }]));
  expect(failing.all).toBe(0);
  expect(failing.each).toEqual(plain.each.map((p, light) => (light === 1 ? 0 : p)));
  expect(failing.criteria[1]).toEqual([...plain.criteria[1], 0]);
  expect(plain.all).toBeGreaterThan(0);
});
