import { compressionSlope } from './cielab.ts';
import { spectrumToXyz } from './tristimulus.ts';
import type { Weights } from './weights.ts';

/**
 * Change of L*, a* and b* for a unit change of each reflectance factor: 3 rows of n, row-major.
 *
 * Values on the grid of the weights.
 * Source: derivative of ISO/CIE 11664-4:2019 on the summation of ASTM E308-15.
 */
export function labJacobian(values: ArrayLike<number>, weights: Weights): Float64Array {
  const xyz = spectrumToXyz(values, weights);
  const slope = (i: 0 | 1 | 2): number => compressionSlope(xyz[i] / weights.white[i]) / weights.white[i];
  const [x, y, z] = [slope(0), slope(1), slope(2)];
  const count = weights.y.length;
  const jacobian = new Float64Array(3 * count);
  for (let i = 0; i < count; i += 1) {
    const fy = y * weights.y[i];
    jacobian[i] = 116 * fy;
    jacobian[count + i] = 500 * (x * weights.x[i] - fy);
    jacobian[2 * count + i] = 200 * (fy - z * weights.z[i]);
  }
  return jacobian;
}
