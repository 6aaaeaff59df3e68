import { describe, expect, test } from 'vitest';
import { nearestSemidefinite, nestedCovariance } from '../../src/readings/index.ts';
import type { SpecimenSpread } from '../../src/readings/index.ts';
import { generator, normalGenerator, vectorDraws } from './support/simulation.ts';

/** Mean and covariance of spots by their definitions. */
function specimen(spots: readonly (readonly number[])[]): SpecimenSpread {
  const size = spots[0].length;
  const mean = Array.from({ length: size }, (_, i) => spots.reduce((sum, spot) => sum + spot[i], 0) / spots.length);
  const covariance = Array.from({ length: size * size }, (_, at) => (spots.length < 2 ? 0
    : spots.reduce((sum, spot) => sum + (spot[Math.floor(at / size)] - mean[Math.floor(at / size)]) * (spot[at % size] - mean[at % size]), 0) / (spots.length - 1)));
  return { mean, spots: spots.length, covariance };
}

test('gives the variance components of a published one-way layout', () => {
  // Calcium in turnip greens, four leaves of four determinations: G. W. Snedecor and W. G. Cochran, Statistical Methods, 7th ed., section 13.3, the
  // data from memory; mean squares 0.2961 and 0.0066, component between leaves (0.2961 - 0.0066) / 4 = 0.0724.
  const leaves = [[3.28, 3.09, 3.03, 3.03], [3.52, 3.48, 3.38, 3.38], [2.88, 2.80, 2.81, 2.76], [3.34, 3.38, 3.23, 3.26]];
  const { ofParts, covarianceOfMean, mean, lots } = nestedCovariance(leaves.map((leaf) => [specimen(leaf.map((value) => [value]))]), [1]);
  expect(ofParts[0]).toBeCloseTo(0.0724, 4);
  expect(covarianceOfMean[0]).toBeCloseTo(0.2961 / 16, 5);
  expect(mean[0]).toBeCloseTo(3.166, 3);
  expect(lots).toBe(4);
});

describe('over seeded experiments', () => {
  const ofLots = [0.25, 0.05, 0, 0.05, 0.16, -0.04, 0, -0.04, 0.09];
  const ofSpecimens = [0.09, 0, 0.01, 0, 0.04, 0, 0.01, 0, 0.04];
  const ofSpots = [0.5, 0.1, 0, 0.1, 0.3, 0, 0, 0, 0.2];
  const zero = [0, 0, 0];

  /** Mean of the estimates over experiments with numbers of specimens by lot and of spots by specimen. */
  function averaged(layout: readonly (readonly number[])[], withSpecimens: boolean): { readonly estimate: number[]; readonly naive: number[] } {
    const normal = normalGenerator(77);
    const [lot, part, spot] = [vectorDraws(zero, ofLots, normal), vectorDraws(zero, ofSpecimens, normal), vectorDraws(zero, ofSpots, normal)];
    const experiments = 6000;
    const estimate = Array<number>(9).fill(0);
    const naive = Array<number>(9).fill(0);
    for (let run = 0; run < experiments; run += 1) {
      const lots = layout.map((numbers) => {
        const shared = [...lot()];
        return numbers.map((spots) => {
          const own = withSpecimens ? [...part()] : zero;
          return specimen(Array.from({ length: spots }, () => [...spot()].map((value, i) => value + shared[i] + own[i])));
        });
      });
      const { ofParts, covarianceOfMean } = nestedCovariance(lots, ofSpots);
      for (let at = 0; at < 9; at += 1) {
        estimate[at] += ofParts[at] / experiments;
        naive[at] += (covarianceOfMean[at] * lots.length) / experiments;
      }
    }
    return { estimate, naive };
  }

  const diagonal = [0, 4, 8];

  test('equals the true covariance between lots in a one-way layout of unequal spots, where that of the lots\' means does not', () => {
    const { estimate, naive } = averaged([[8], [8], [6], [12], [8], [10], [8], [8], [9], [8]], false);
    // Standard error of a variance component here: about 0.5 x 0.3 / sqrt(6000) = 0.002; the floor at zero adds a little.
    for (let at = 0; at < 9; at += 1) expect(Math.abs(estimate[at] - ofLots[at])).toBeLessThan(0.012);
    for (const at of diagonal) expect(naive[at] - ofLots[at]).toBeGreaterThan(ofSpots[at] / 8 - 0.015);
  });

  test('holds both levels where lots have several specimens', () => {
    const { estimate } = averaged([[6, 6, 6], [6, 6], [8, 6, 6], [6, 6, 6, 6], [6, 6, 6], [6, 6, 6], [6, 6], [6, 7, 6]], true);
    for (let at = 0; at < 9; at += 1) expect(Math.abs(estimate[at] - ofLots[at] - ofSpecimens[at])).toBeLessThan(0.02);
  });

  test('holds both levels together where each lot has one specimen', () => {
    const { estimate } = averaged([[8], [8], [8], [8], [8], [8], [8], [8], [8], [8]], true);
    for (let at = 0; at < 9; at += 1) expect(Math.abs(estimate[at] - ofLots[at] - ofSpecimens[at])).toBeLessThan(0.015);
  });
});

test('lots that differ by no more than their spots scatter add nothing', () => {
  // Lots' means 0 and +-0.1: mean square of the means 0.01, below 1/4 of the spots' variance 4/3 x 1.
  const lots = [-0.1, 0, 0.1].map((shift) => [specimen([-1, -1, 1, 1].map((value) => [value + shift]))]);
  expect([...nestedCovariance(lots, [9]).ofParts]).toEqual([0]);
});

test('single spots take the covariance of a spot that is given', () => {
  // Means 0, 1, 2: variance 1; less the given 0.4 for one spot each.
  const lots = [0, 1, 2].map((value) => [specimen([[value]])]);
  expect(nestedCovariance(lots, [0.4]).ofParts[0]).toBeCloseTo(0.6, 12);
});

describe('the nearest semidefinite matrix', () => {
  test('clips what is below zero and leaves the rest', () => {
    // [[0, 1], [1, 0]] has the eigenvalues 1 and -1 along (1, 1) and (1, -1): kept is 0.5 throughout.
    for (const entry of nearestSemidefinite(Float64Array.from([0, 1, 1, 0]))) expect(entry).toBeCloseTo(0.5, 12);
    const positive = Float64Array.from([2, 1, 1, 2]);
    expect(nearestSemidefinite(positive)).toBe(positive);
  });

  test('is never far below zero along any direction', () => {
    const random = generator(5);
    for (let run = 0; run < 50; run += 1) {
      const raw = Array.from({ length: 16 }, () => 2 * random() - 1);
      const symmetric = Float64Array.from(raw, (entry, at) => entry + raw[(at % 4) * 4 + Math.floor(at / 4)]);
      const mended = nearestSemidefinite(symmetric);
      for (let probe = 0; probe < 20; probe += 1) {
        const x = Array.from({ length: 4 }, () => 2 * random() - 1);
        const form = mended.reduce((sum, entry, at) => sum + entry * x[Math.floor(at / 4)] * x[at % 4], 0);
        expect(form).toBeGreaterThan(-1e-10);
      }
    }
  });
});
