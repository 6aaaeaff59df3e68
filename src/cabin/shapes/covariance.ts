import type { Matrix3 } from '../../quantities.ts';
import type { Schema } from '../schema/index.ts';
import { number, refine, tuple } from '../schema/index.ts';

/** Largest deviation from symmetry or below zero that is put down to rounding, relative to the largest entry. */
const roundingShare = 1e-9;

const largest = (matrix: Matrix3): number => Math.max(...matrix.map(Math.abs));

export const isSymmetric = (matrix: Matrix3): boolean => {
  const tolerance = roundingShare * largest(matrix);
  return Math.abs(matrix[1] - matrix[3]) <= tolerance && Math.abs(matrix[2] - matrix[6]) <= tolerance && Math.abs(matrix[5] - matrix[7]) <= tolerance;
};

/** Whether a symmetric matrix has no negative eigenvalue: all its principal minors are zero or above (Sylvester's criterion for semidefinite matrices). */
export function isPositiveSemidefinite(matrix: Matrix3): boolean {
  const [a, b, c, , d, e, , , f] = matrix;
  const scale = largest(matrix);
  const tolerance = roundingShare * scale;
  const determinant = a * (d * f - e * e) - b * (b * f - c * e) + c * (b * e - c * d);
  return Math.min(a, d, f) >= -tolerance
    && Math.min(a * d - b * b, a * f - c * c, d * f - e * e) >= -tolerance * scale
    && determinant >= -tolerance * scale * scale;
}

const matrixExpected = 'a 3 x 3 matrix as nine numbers, row by row';
const entry = number({ min: -1e6, max: 1e6 });
const matrix = (): Schema<Matrix3> => tuple<Matrix3>(matrixExpected, entry, entry, entry, entry, entry, entry, entry, entry, entry);

export const symmetricMatrix = (): Schema<Matrix3> => refine(matrix(), (value, faults) => {
  if (!isSymmetric(value)) {
    faults.add('covariance-not-symmetric', {
      expected: 'a matrix that equals its transpose', found: value.join(', '), hint: 'The order is LL, La, Lb, aL, aa, ab, bL, ba, bb.',
    });
  }
});

/** A covariance: symmetric and without a negative eigenvalue. */
export const covariance = (): Schema<Matrix3> => refine(symmetricMatrix(), (value, faults) => {
  if (isSymmetric(value) && !isPositiveSemidefinite(value)) {
    faults.add('covariance-not-positive', {
      expected: 'a matrix without a negative eigenvalue', found: value.join(', '),
      hint: 'Variances stand on the diagonal; a covariance is at most the root of their product.',
    });
  }
});
