import { eigs } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { estimateAgreement } from '../../../src/readings/agreement/estimate-agreement.ts';
import { cholesky, normalGenerator } from '../support/simulation.ts';

/** Readings of tiles by instruments whose deviations have given 3 x 3 covariances; the tiles' own colours are far apart. */
function invented(covariances: readonly (readonly number[])[], tiles: number, seed: number): number[][][] {
  const normal = normalGenerator(seed);
  const factors = covariances.map((covariance) => cholesky(covariance, 3));
  const truth = Array.from({ length: tiles }, () => [50 + 20 * normal(), 20 * normal(), 20 * normal()]);
  return factors.map((factor) => truth.map((colour) => {
    const draw = [normal(), normal(), normal()];
    return colour.map((value, axis) => value + [0, 1, 2].reduce((sum, k) => sum + factor[3 * axis + k] * draw[k], 0));
  }));
}

/** Second moment about zero of the difference of two instruments, straight from the readings. */
function momentOfDifference(first: readonly (readonly number[])[], second: readonly (readonly number[])[]): number[] {
  return Array.from({ length: 9 }, (_, at) => first.reduce((sum, vector, tile) => {
    const [row, column] = [Math.floor(at / 3), at % 3];
    return sum + ((vector[row] - second[tile][row]) * (vector[column] - second[tile][column])) / first.length;
  }, 0));
}

const good = [0.01, 0.002, 0, 0.002, 0.004, -0.001, 0, -0.001, 0.006];
const middling = [0.03, 0, 0.004, 0, 0.01, 0, 0.004, 0, 0.02];
const poor = [0.0625, 0.002, -0.004, 0.002, 0.02, 0.001, -0.004, 0.001, 0.03];

describe('agreement of instruments from shared tiles', () => {
  it('gives each of two instruments half of what they differ by', () => {
    // Differences 0.2, 0, -0.4: second moment (0.04 + 0 + 0.16) / 3, half of it each, nothing shared.
    const { covariances, ofDifference, shared } = estimateAgreement([[[10.2], [20], [29.6]], [[10], [20], [30]]]);
    expect(ofDifference[0][1][0]).toBeCloseTo(0.2 / 3, 12);
    expect(covariances.map(([variance]) => variance)).toEqual([expect.closeTo(0.1 / 3, 12), expect.closeTo(0.1 / 3, 12)]);
    expect(shared[0][1][0]).toBeCloseTo(0, 12);
  });

  it('solves three instruments as (V12 + V13 - V23) / 2 (F. E. Grubbs, J. Am. Stat. Assoc. 43 (1948) 243)', () => {
    const readings = invented([good, middling, poor], 2000, 3);
    const { covariances, raised, shared } = estimateAgreement(readings);
    const [v12, v13, v23] = [[0, 1], [0, 2], [1, 2]].map(([i, j]) => momentOfDifference(readings[i], readings[j]));
    expect(raised).toEqual([false, false, false]);
    [[v12, v13, v23], [v12, v23, v13], [v13, v23, v12]].forEach(([p, q, r], instrument) => {
      for (let at = 0; at < 9; at++) expect(covariances[instrument][at]).toBeCloseTo((p[at] + q[at] - r[at]) / 2, 12);
    });
    for (let at = 0; at < 9; at++) expect(shared[0][1][at]).toBeCloseTo(0, 12);
  });

  it('finds the covariances that readings were made with', () => {
    const truth = [good, middling, poor, good];
    const tiles = 20_000;
    const { covariances } = estimateAgreement(invented(truth, tiles, 8));
    // Standard error of a variance of T draws is about its size times sqrt(2 / T) = 1 %; the other instruments' scatter adds to it.
    truth.forEach((covariance, instrument) => {
      covariance.forEach((entry, at) => expect(Math.abs(covariances[instrument][at] - entry)).toBeLessThan(0.0025));
    });
  });

  it('counts a constant bias like scatter', () => {
    const normal = normalGenerator(2);
    const tiles = Array.from({ length: 4000 }, () => [50 + 10 * normal()]);
    const noisy = (bias: number) => tiles.map(([value]) => [value + bias + 0.1 * normal()]);
    const { covariances } = estimateAgreement([noisy(0), noisy(0), noisy(0), noisy(0.4)]);
    // Seen from the mean of the four, the bias of 0.4 is 0.3 in one and -0.1 in the others; the second moments of the differences are 0.02
    // among the three and 0.02 + 0.16 with the fourth, and Grubbs's solution of these is 0.01 for the three and 0.17 for the fourth.
    expect(covariances[3][0]).toBeCloseTo(0.17, 2);
    expect(covariances[0][0]).toBeCloseTo(0.01, 2);
  });

  it.each([[2], [3], [5]])('makes covariances of few tiles that shared ones complete to what was seen, %i instruments', (count) => {
    for (let seed = 1; seed <= 60; seed++) {
      const readings = invented(Array.from({ length: count }, (_, i) => [good, poor, good, middling, good][i]), 6, seed);
      const { covariances, shared, ofDifference } = estimateAgreement(readings);
      covariances.forEach((covariance, i) => {
        const rows = [0, 1, 2].map((row) => [0, 1, 2].map((column) => covariance[3 * row + column]));
        const smallest = Math.min(...(eigs(rows).values as number[]));
        expect(smallest).toBeGreaterThan(-1e-12);
        for (let j = 0; j < count; j++) {
          if (i === j) continue;
          const seen = momentOfDifference(readings[i], readings[j]);
          for (let at = 0; at < 9; at++) {
            expect(ofDifference[i][j][at]).toBeCloseTo(seen[at], 12);
            expect(covariance[at] + covariances[j][at] - 2 * shared[i][j][at]).toBeCloseTo(seen[at], 12);
          }
        }
      });
    }
  });

  it('never gives an instrument that happens to lie in the middle a spread of nothing', () => {
    // The middle one of three equals the mean of all on every tile: its own M is 0, and so is the least it is given.
    const readings = [[[1], [1], [-1]], [[0], [0], [0]], [[-1], [-1], [1]]];
    const { covariances, raised } = estimateAgreement(readings.map((own) => own.map(([value], tile) => [value + (tile === 0 ? 0.3 : 0)])));
    expect(raised[1]).toBe(true);
    expect(covariances[1][0]).toBeGreaterThanOrEqual(0);
    const shifted = estimateAgreement([[[1], [1], [-1]], [[0.2], [0], [0]], [[-1], [-1], [1]]]);
    expect(shifted.raised[1]).toBe(true);
    // Deviation of the middle one on the first tile 0.2 - 0.2 / 3; its M a third of the square; one standard error sqrt(2 / 3) of it.
    expect(shifted.covariances[1][0]).toBeCloseTo(Math.sqrt(2 / 3) * ((0.4 / 3) ** 2 / 3), 12);
  });
});
