import type { SlopeGrid } from './surface-slopes.ts';
import { surfaceSlopes } from './surface-slopes.ts';
import type { Steps } from './steps.ts';

export interface HybridParameters {
  /** Root mean square slope. */
  readonly sdq: number;
  /** Developed area above the projected one, as a share of it. */
  readonly sdr: number;
}

/**
 * Sdq and Sdr over all points that have a slope on both axes; undefined where none has.
 *
 * Dimensionless; Sdr as a share, not per cent. Source: ISO 25178-2, hybrid parameters.
 */
export function* hybridParameterSteps(surface: SlopeGrid): Steps<HybridParameters | undefined> {
  const { width, height } = surface;
  const row = { along: new Float64Array(width), across: new Float64Array(width) };
  let [count, squares, areas] = [0, 0, 0];
  for (let y = 0; y < height; y += 1) {
    surfaceSlopes(surface, y, row);
    let [rowSquares, rowAreas] = [0, 0];
    for (let x = 0; x < width; x += 1) {
      const square = row.along[x] * row.along[x] + row.across[x] * row.across[x];
      if (Number.isNaN(square)) continue;
      count += 1;
      rowSquares += square;
      // sqrt(1 + s) - 1 without the loss of digits at small slopes.
      rowAreas += square / (Math.sqrt(1 + square) + 1);
    }
    squares += rowSquares;
    areas += rowAreas;
    if (y % 256 === 0) yield y / height;
  }
  return count === 0 ? undefined : { sdq: Math.sqrt(squares / count), sdr: areas / count };
}
