import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { gaussLegendre } from '../../src/gloss/gauss-legendre.ts';
import {
  bodyGloss, facetDistribution, fresnelGloss, fresnelReflectance, glossAngles, receptorApertures, roughnessOfGloss, simulateGloss, sourceAperture,
} from '../../src/gloss/index.ts';
import type { GlossMeterAngle } from '../../src/gloss/index.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

test('the rule integrates polynomials of degree 2 n - 1 exactly', () => {
  for (const order of [1, 2, 5, 24]) {
    const { nodes, weights } = gaussLegendre(order);
    for (let degree = 0; degree < 2 * order; degree += 1) {
      let sum = 0;
      nodes.forEach((node, index) => { sum += weights[index]! * node ** degree; });
      expect(sum).toBeCloseTo(degree % 2 === 0 ? 2 / (degree + 1) : 0, 12);
    }
  }
});

test('facets tile the surface: their projected areas sum to it', () => {
  // Walter et al. 2007, eq. 4: the integral of D cos over the hemisphere is 1.
  for (const alpha of [0.05, 0.3, 1]) {
    let sum = 0;
    const steps = 200_000;
    for (let index = 0; index < steps; index += 1) {
      // Even steps in the square of the sine: cos sin dtheta = d(sin^2) / 2.
      sum += (facetDistribution((index + 0.5) / steps, alpha) * Math.PI) / steps;
    }
    expect(sum).toBeCloseTo(1, 3);
  }
});

test('a surface without roughness has the gloss of a mirror', () => {
  for (const n of [1.46, 1.49, 1.54, 1.6]) {
    for (const angle of glossAngles) {
      // The source is no point: its spread of 0.75 degrees moves the ratio of reflectances by less than 0.01 GU.
      expect(Math.abs(simulateGloss(n, 0, angle) - fresnelGloss(n, angle))).toBeLessThan(0.01);
      expect(Math.abs(simulateGloss(n, 1e-5, angle) - fresnelGloss(n, angle))).toBeLessThan(0.01);
    }
  }
  for (const angle of glossAngles) expect(simulateGloss(1.567, 0, angle)).toBeCloseTo(100, 10);
});

test('gloss falls all the way with roughness and grows with the index', () => {
  fc.assert(fc.property(
    fc.double({ min: 1.3, max: 1.8, noNaN: true }), fc.double({ min: 1e-6, max: 0.95, noNaN: true }), fc.constantFrom(...glossAngles),
    (n, alpha, angle) => {
      const gloss = simulateGloss(n, alpha, angle);
      expect(simulateGloss(n, alpha * 1.05, angle)).toBeLessThan(gloss * (1 + 1e-7));
      expect(simulateGloss(n * 1.02, alpha, angle)).toBeGreaterThan(gloss);
    },
  ), { numRuns: 60, seed: 4 });
});

test('85 degrees reads above 60 only on nearly smooth surfaces', () => {
  // The crossing of the facet model, near alpha 0.026 at n = 1.5, was computed by another program.
  expect(simulateGloss(1.5, 0.025, 85)).toBeGreaterThan(simulateGloss(1.5, 0.025, 60));
  expect(simulateGloss(1.5, 0.027, 85)).toBeLessThan(simulateGloss(1.5, 0.027, 60));
});

/** Photons instead of quadrature: facet normals drawn from the distribution, counted where they meet the receptor (Walter et al. 2007, eq. 35, 36, 41). */
function photonGloss(n: number, alpha: number, angle: GlossMeterAngle, photons: number): number {
  const random = seededNumbers(77);
  const degree = Math.PI / 180;
  const aperture = receptorApertures[angle];
  let [rough, glass] = [0, 0];
  for (let photon = 0; photon < photons; photon += 1) {
    const tilt = (angle + (random() - 0.5) * sourceAperture.inPlaneDeg) * degree;
    const side = (random() - 0.5) * sourceAperture.acrossDeg * degree;
    const input = [-Math.sin(tilt) * Math.cos(side), Math.sin(side), Math.cos(tilt) * Math.cos(side)] as const;
    glass += fresnelReflectance(1.567, Math.acos(input[2]) / degree);
    const theta = Math.atan(alpha * Math.sqrt(1 / (1 - random()) - 1));
    const turn = 2 * Math.PI * random();
    const facet = [Math.sin(theta) * Math.cos(turn), Math.sin(theta) * Math.sin(turn), Math.cos(theta)] as const;
    const facing = input[0] * facet[0] + input[1] * facet[1] + input[2] * facet[2];
    if (facing <= 0) continue;
    const output = facet.map((value, axis) => 2 * facing * value - input[axis]!);
    if (output[2]! <= 0) continue;
    const inPlane = Math.atan2(output[0]!, output[2]!) / degree;
    const across = Math.asin(output[1]!) / degree;
    if (Math.abs(inPlane - angle) > aperture.inPlaneDeg / 2 || Math.abs(across) > aperture.acrossDeg / 2) continue;
    const slope = (cosine: number): number => alpha * Math.sqrt(1 / cosine ** 2 - 1);
    const hidden = (cosine: number): number => (Math.sqrt(1 + slope(cosine) ** 2) - 1) / 2;
    const seen = 1 / (1 + hidden(input[2]) + hidden(output[2]!));
    rough += (fresnelReflectance(n, Math.acos(Math.min(1, facing)) / degree) * seen * facing) / (input[2] * facet[2]);
  }
  return (100 * rough) / glass;
}

test.each([
  [1.5, 0.05, 60], [1.6, 0.02, 20], [1.49, 0.1, 60], [1.54, 0.03, 85],
] as const)('photons agree: n %f, alpha %f, %i degrees', (n, alpha, angle) => {
  const photons = photonGloss(n, alpha, angle, 400_000);
  // The spread of 400,000 photons is below 0.6 % here; four of them.
  expect(Math.abs(photons / simulateGloss(n, alpha, angle) - 1)).toBeLessThan(0.025);
});

test('roughness from gloss is the inverse', () => {
  fc.assert(fc.property(fc.double({ min: 1.4, max: 1.65, noNaN: true }), fc.double({ min: 1e-3, max: 0.99, noNaN: true }), (n, alpha) => {
    const found = roughnessOfGloss(simulateGloss(n, alpha, 60), n);
    expect(found).toBeDefined();
    expect(Math.abs(found! / alpha - 1)).toBeLessThan(1e-4);
  }), { numRuns: 25, seed: 9 });
  // Computed by another program: n 1.5, alpha 0.1 has 13.57 GU at 60 degrees.
  expect(roughnessOfGloss(13.57, 1.5)).toBeCloseTo(0.1, 3);
  expect(roughnessOfGloss(1.33, 1.5, 20)).toBeCloseTo(0.1, 3);
});

test('roughness has no value where no roughness gives the gloss', () => {
  expect(roughnessOfGloss(95, 1.5)).toBeUndefined();
  expect(roughnessOfGloss(0.05, 1.5)).toBeUndefined();
  for (const none of [0, -1, NaN]) expect(roughnessOfGloss(none, 1.5)).toBeUndefined();
  expect(roughnessOfGloss(20, 0.9)).toBeUndefined();
  expect(roughnessOfGloss(100, 1.567)).toBe(0);
});

test('outside its domain the simulation has no value', () => {
  for (const [n, alpha] of [[0.9, 0.1], [NaN, 0.1], [Infinity, 0.1], [1.5, -0.1], [1.5, 1.1], [1.5, NaN]] as const) {
    expect(simulateGloss(n, alpha, 60)).toBeNaN();
  }
});

test('a body adds gloss in proportion to its reflectance', () => {
  // Small apertures: flux = rho / pi x cos(60) x solid angle, against rho(60) = 0.100056 of the reference (ISO 2813).
  const solid = (4.4 * 11.7) * (Math.PI / 180) ** 2;
  expect(bodyGloss(1, 60)).toBeCloseTo((100 * solid * 0.5) / Math.PI / 0.100056, 1);
  expect(bodyGloss(0.05, 60)).toBeCloseTo(bodyGloss(1, 60) / 20, 12);
});
