import type { Lab } from '../quantities.ts';
import { inverse3, transform } from './three-by-three.ts';
import { factoriseCurvature, solveCurvature } from './curvature.ts';
import type { CurvatureFactors } from './curvature.ts';
import { labJacobian } from './lab-jacobian.ts';
import type { Light } from './lights.ts';
import type { Observer } from './observers.ts';
import type { Spectrum } from './spectrum.ts';
import { weightsOf } from './tristimulus.ts';

/** Weight of the size of a change beside its curvature, for 10 nm steps; second differences grow as the square of the step. */
const ridgeAtTenNm = 1e-6;

/**
 * The change of reflectance with the least curvature that moves CIELAB by a small `dLab`, to first order.
 *
 * Least |second differences|^2 plus a tiny share of |change|^2, subject to J dR = dLab; values on the grid of the spectrum.
 * All NaN for fewer than three bands. The change of a black spectrum may go below zero: the result is a target, not a recipe.
 * Source: quadratic programme with equality constraints, solved in closed form by Lagrange multipliers.
 */
export const smoothestChange = (spectrum: Spectrum, light: Light, observer: Observer, dLab: Lab): Float64Array =>
  smoothestChanges(spectrum, light, observer, [dLab])[0];

/** The same for several moves of one spectrum. */
export function smoothestChanges(spectrum: Spectrum, light: Light, observer: Observer, dLabs: readonly Lab[]): readonly Float64Array[] {
  const count = spectrum.values.length;
  if (count < 3) return dLabs.map(() => new Float64Array(count).fill(NaN));
  const jacobian = labJacobian(spectrum.values, weightsOf(spectrum, light, observer));
  const rows = [0, 1, 2].map((row) => jacobian.subarray(row * count, (row + 1) * count));
  const factors = curvatureOf(count, ridgeAtTenNm * (spectrum.stepNm / 10) ** 4);
  const shapes = rows.map((row) => solveCurvature(factors, row));
  const inverse = inverse3(rows.flatMap((row) => shapes.map((shape) => dot(row, shape))));
  return dLabs.map((dLab) => {
    const change = new Float64Array(count);
    // The second round takes out what rounding left of the first.
    for (let round = 0; round < 2; round += 1) {
      const left: Lab = [dLab[0] - dot(rows[0], change), dLab[1] - dot(rows[1], change), dLab[2] - dot(rows[2], change)];
      const multipliers = transform(inverse, left);
      for (let i = 0; i < count; i += 1) {
        change[i] += shapes[0][i] * multipliers[0] + shapes[1][i] * multipliers[1] + shapes[2][i] * multipliers[2];
      }
    }
    return change;
  });
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i] * b[i];
  return sum;
}

const known = new Map<string, CurvatureFactors>();

/** Factors depend on the grid alone, and grids are few. */
function curvatureOf(count: number, ridge: number): CurvatureFactors {
  const key = `${count} ${ridge}`;
  const factors = known.get(key) ?? factoriseCurvature(count, ridge);
  if (known.size < 64) known.set(key, factors);
  return factors;
}
