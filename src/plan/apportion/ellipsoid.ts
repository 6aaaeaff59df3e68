import type { Lab, Matrix3 } from '../../quantities.ts';
import { applyMatrix3, multiplyMatrix3, transposeMatrix3 } from '../../readings/matrix3.ts';
import { symmetricEigen } from '../../readings/symmetric-matrix.ts';

/** The shape of a part's tolerance: { x : x' Q x <= r^2 } in CIELAB under D65. */
export interface Ellipsoid {
  readonly metric: Matrix3;
  /** Takes the unit ball to the ellipsoid of radius 1: the inverse square root of the metric. */
  readonly fromBall: Matrix3;
}

/** Smallest eigenvalue that is told from none, so that no axis becomes endless. */
const leastEigenvalue = 1e-6;

export function ellipsoidOf(metric: Matrix3): Ellipsoid {
  const { values, vectors } = symmetricEigen(metric, 3);
  const fromBall = [0, 1, 2].flatMap((i) => [0, 1, 2].map((j) =>
    [0, 1, 2].reduce((sum, k) => sum + (vectors[3 * i + k] * vectors[3 * j + k]) / Math.sqrt(Math.max(leastEigenvalue, values[k])), 0))) as unknown as Matrix3;
  return { metric, fromBall };
}

/** Half the lengths of an ellipsoid of radius 1 along its own axes, the longest first. */
export const semiAxes = ({ metric }: Ellipsoid): readonly number[] => [...symmetricEigen(metric, 3).values].map((value) => 1 / Math.sqrt(Math.max(leastEigenvalue, value))).sort((a, b) => b - a);

/** The largest size, in a metric of another light, that a shift within the ellipsoid of radius 1 comes to. */
export function largestIn(metric: Matrix3, response: Matrix3, { fromBall }: Ellipsoid): number {
  const moved = multiplyMatrix3(response, fromBall);
  return Math.sqrt(Math.max(0, symmetricEigen(multiplyMatrix3(transposeMatrix3(moved), multiplyMatrix3(metric, moved)), 3).values[0]));
}

/** The largest that a linear function of the colour under another light comes to within the ellipsoid of radius 1. */
export function largestAlong(slope: Lab, response: Matrix3, { fromBall }: Ellipsoid): number {
  const along = applyMatrix3(transposeMatrix3(multiplyMatrix3(response, fromBall)), slope);
  return Math.sqrt(along[0] * along[0] + along[1] * along[1] + along[2] * along[2]);
}
