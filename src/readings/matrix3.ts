import type { Lab, Matrix3 } from '../quantities.ts';

export const zeroMatrix3: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0];
export const identityMatrix3: Matrix3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Diagonal covariance from three standard deviations. */
export const covarianceOfSd = (sd: readonly [number, number, number]): Matrix3 =>
  [sd[0] * sd[0], 0, 0, 0, sd[1] * sd[1], 0, 0, 0, sd[2] * sd[2]];

export const addMatrix3 = (p: Matrix3, q: Matrix3): Matrix3 =>
  [p[0] + q[0], p[1] + q[1], p[2] + q[2], p[3] + q[3], p[4] + q[4], p[5] + q[5], p[6] + q[6], p[7] + q[7], p[8] + q[8]];

export const scaleMatrix3 = (m: Matrix3, k: number): Matrix3 =>
  [m[0] * k, m[1] * k, m[2] * k, m[3] * k, m[4] * k, m[5] * k, m[6] * k, m[7] * k, m[8] * k];

/** v' M v. */
export function quadraticForm3(m: ArrayLike<number>, x: number, y: number, z: number): number {
  return x * (m[0] * x + m[1] * y + m[2] * z) + y * (m[3] * x + m[4] * y + m[5] * z) + z * (m[6] * x + m[7] * y + m[8] * z);
}

export const applyMatrix3 = (m: ArrayLike<number>, v: Lab): Lab => [
  m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
  m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
  m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
];

/** P Q for two row-major 3 x 3 matrices. */
export function multiplyMatrix3(p: ArrayLike<number>, q: ArrayLike<number>): Matrix3 {
  const entry = (i: number, j: number): number => p[3 * i] * q[j] + p[3 * i + 1] * q[3 + j] + p[3 * i + 2] * q[6 + j];
  return [entry(0, 0), entry(0, 1), entry(0, 2), entry(1, 0), entry(1, 1), entry(1, 2), entry(2, 0), entry(2, 1), entry(2, 2)];
}

export const transposeMatrix3 = (m: ArrayLike<number>): Matrix3 => [m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]];

export const traceMatrix3 = (m: ArrayLike<number>): number => m[0] + m[4] + m[8];

export const labDifference = (standard: Lab, trial: Lab): Lab => [trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]];
