import type { Lab, Xyz } from '../quantities.ts';
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
  const [x, y, z] = slopesAt(spectrumToXyz(values, weights), weights);
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

/** Slopes of the compressed ratios in X, Y and Z. */
const slopesAt = (xyz: Xyz, { white }: Weights): Xyz => [
  compressionSlope(xyz[0] / white[0]) / white[0], compressionSlope(xyz[1] / white[1]) / white[1], compressionSlope(xyz[2] / white[2]) / white[2],
];

/** What small changes of a spectrum do to its CIELAB, to first order: the rows of {@link labJacobian} times each change. */
export function labChanges(values: ArrayLike<number>, changes: readonly ArrayLike<number>[], weights: Weights): readonly Lab[] {
  const [x, y, z] = slopesAt(spectrumToXyz(values, weights), weights);
  return changes.map((change): Lab => {
    const [dX, dY, dZ] = spectrumToXyz(change, weights);
    return [116 * y * dY, 500 * (x * dX - y * dY), 200 * (y * dY - z * dZ)];
  });
}
