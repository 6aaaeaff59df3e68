/**
 * Independent oracle of the probabilities: plain seeded Monte Carlo. Nothing here comes from src/readings: generator
 * xoshiro128** (D. Blackman, S. Vigna, ACM TOMS 47 (2021) 36), normals by the polar method (G. Marsaglia, T. Bray, SIAM Review 6
 * (1964) 260), correlation by a Cholesky factor, CIEDE2000 by the library culori.
 */
import { differenceCiede2000 } from 'culori';
import type { Lab, Matrix3 } from '../../../src/quantities.ts';

export function generator(seed: number): () => number {
  const s = new Uint32Array(4);
  for (let i = 0; i < 4; i++) s[i] = (Math.imul(seed + i * 7919, 2654435761) ^ 0x5bd1e995) >>> 0;
  const rotate = (x: number, k: number): number => ((x << k) | (x >>> (32 - k))) >>> 0;
  const next = (): number => {
    const result = Math.imul(rotate(Math.imul(s[1], 5) >>> 0, 7), 9) >>> 0;
    const t = s[1] << 9;
    s[2] ^= s[0];
    s[3] ^= s[1];
    s[1] ^= s[2];
    s[0] ^= s[3];
    s[2] ^= t;
    s[3] = rotate(s[3], 11);
    return (result + 0.5) / 2 ** 32;
  };
  for (let i = 0; i < 40; i++) next();
  return next;
}

export function normalGenerator(seed: number): () => number {
  const uniform = generator(seed);
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const r = x * x + y * y;
      if (r >= 1 || r === 0) continue;
      const k = Math.sqrt((-2 * Math.log(r)) / r);
      spare = y * k;
      return x * k;
    }
  };
}

/** Lower-triangular factor of a positive semidefinite matrix; columns without variance stay zero. */
export function cholesky(matrix: ArrayLike<number>, n: number): Float64Array {
  const l = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    let pivot = matrix[j * n + j];
    for (let k = 0; k < j; k++) pivot -= l[j * n + k] ** 2;
    if (!(pivot > 1e-14)) continue;
    l[j * n + j] = Math.sqrt(pivot);
    for (let i = j + 1; i < n; i++) {
      let entry = matrix[i * n + j];
      for (let k = 0; k < j; k++) entry -= l[i * n + k] * l[j * n + k];
      l[i * n + j] = entry / l[j * n + j];
    }
  }
  return l;
}

/** Draws of a normal vector. */
export function vectorDraws(mean: ArrayLike<number>, covariance: ArrayLike<number>, normal: () => number): () => Float64Array {
  const n = mean.length;
  const l = cholesky(covariance, n);
  const z = new Float64Array(n);
  const out = new Float64Array(n);
  return () => {
    for (let i = 0; i < n; i++) z[i] = normal();
    for (let i = 0; i < n; i++) {
      out[i] = mean[i];
      for (let k = 0; k <= i; k++) out[i] += l[i * n + k] * z[k];
    }
    return out;
  };
}

const culoriDifference = differenceCiede2000();
const lab65 = (v: ArrayLike<number>) => ({ mode: 'lab65' as const, l: v[0], a: v[1], b: v[2] });
export const ciede2000ByCulori = (standard: ArrayLike<number>, trial: ArrayLike<number>): number => culoriDifference(lab65(standard), lab65(trial));

export interface SimulatedDistribution {
  readonly mean: number;
  readonly sd: number;
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
  readonly within: number;
}

/** Both sides drawn independently. */
export function simulateDifference(
  input: { standard: Lab; trial: Lab; standardCovariance: Matrix3; trialCovariance: Matrix3; limit: number }, draws: number, seed: number,
  measure: (standard: ArrayLike<number>, trial: ArrayLike<number>) => number = ciede2000ByCulori,
): SimulatedDistribution {
  const normal = normalGenerator(seed);
  const first = vectorDraws(input.standard, input.standardCovariance, normal);
  const second = vectorDraws(input.trial, input.trialCovariance, normal);
  const values = Float64Array.from({ length: draws }, () => measure(first(), second()));
  let sum = 0;
  let within = 0;
  for (const value of values) {
    sum += value;
    if (value <= input.limit) within++;
  }
  const mean = sum / draws;
  const sd = Math.sqrt(values.reduce((total, value) => total + (value - mean) ** 2, 0) / draws);
  values.sort();
  const at = (p: number): number => values[Math.min(draws - 1, Math.floor(p * draws))];
  return { mean, sd, p5: at(0.05), p50: at(0.5), p95: at(0.95), within: within / draws };
}

/** Random covariance with standard deviations up to `scale`, of the given rank. */
export function randomCovariance(random: () => number, scale: number, rank: number): Matrix3 {
  const rows = Array.from({ length: 3 }, () => Array.from({ length: rank }, () => (2 * random() - 1) * scale));
  const entry = (i: number, j: number): number => rows[i].reduce((sum, value, k) => sum + value * rows[j][k], 0);
  return [entry(0, 0), entry(0, 1), entry(0, 2), entry(1, 0), entry(1, 1), entry(1, 2), entry(2, 0), entry(2, 1), entry(2, 2)];
}

export interface DistributionCase {
  readonly name: string;
  readonly standard: Lab;
  readonly trial: Lab;
  readonly standardCovariance: Matrix3;
  readonly trialCovariance: Matrix3;
  readonly limit: number;
}

/** Seeded cases over the whole of what may come: near-black, equal means, neutral, chromatic, blue; covariances zero, singular, usual, large. */
export function distributionCases(count: number, seed: number): DistributionCase[] {
  const random = generator(seed);
  const colours = ['near-black', 'dark trim', 'beige', 'red', 'blue', 'anywhere'] as const;
  return Array.from({ length: count }, (_, index) => {
    const colour = colours[index % colours.length];
    const base: Lab = {
      'near-black': [2 * random(), random() - 0.5, random() - 0.5] as const,
      'dark trim': [20 + 15 * random(), random() - 0.5, -2 * random()] as const,
      'beige': [60 + 20 * random(), 2 + 2 * random(), 10 + 10 * random()] as const,
      'red': [32, 30 + 20 * random(), 15 + 10 * random()] as const,
      'blue': [30, 10 + 10 * random(), -40 - 15 * random()] as const,
      'anywhere': [100 * random(), 80 * random() - 40, 80 * random() - 40] as const,
    }[colour];
    const equal = index % 4 === 0;
    const scale = [0.1, 0.4, 1.5, 0.25, 4][index % 5];
    const move = (): number => (equal ? 0 : (2 * random() - 1) * scale * 2);
    const trial: Lab = [base[0] + move(), base[1] + move(), base[2] + move()];
    const rank = [3, 1, 2, 3, 3, 3][(index + 2) % 6];
    const zero = index % 7 === 3;
    const standardCovariance = zero ? randomCovariance(random, 0, 1) : randomCovariance(random, scale, rank);
    const trialCovariance = randomCovariance(random, scale, index % 3 === 0 ? 3 : rank);
    return {
      name: `${index} ${colour}${equal ? ', equal means' : ''}, scale ${scale}, rank ${zero ? 0 : rank}`,
      standard: base, trial, standardCovariance, trialCovariance, limit: scale * (0.3 + 2.2 * random()),
    };
  });
}
