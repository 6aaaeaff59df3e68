import type { Lab } from '../quantities.ts';
import type { Light } from './lights.ts';
import type { Observer } from './observers.ts';
import { smoothestChange } from './smoothest-change.ts';
import type { Spectrum } from './spectrum.ts';
import { spectrumToLab } from './tristimulus.ts';

/** A reflectance factor does not go below this: a target must be one that something can have. */
const leastReflectance = 0.0005;
const mostSteps = 16;
const closeEnough = 1e-6;

/**
 * The change of reflectance that moves CIELAB by all of `dLab`, on the grid of the spectrum: smoothest changes to first order, one after
 * the other until what is left is below 1e-6. No band goes below a reflectance factor of 0.0005, so that a move to where nothing can be
 * ends as near as the steps come. All NaN for fewer than three bands.
 */
export function reachingChange(spectrum: Spectrum, light: Light, observer: Observer, dLab: Lab): Float64Array {
  const start = spectrumToLab(spectrum, light, observer);
  let values = Float64Array.from(spectrum.values);
  for (let step = 0; step < mostSteps; step += 1) {
    const reached = spectrumToLab({ ...spectrum, values }, light, observer);
    const left = reached.map((value, axis) => start[axis] + dLab[axis] - value) as unknown as Lab;
    if (Math.hypot(...left) < closeEnough) break;
    const change = smoothestChange({ ...spectrum, values }, light, observer, left);
    values = values.map((value, band) => (Number.isNaN(change[band]) ? NaN : Math.max(leastReflectance, value + change[band])));
  }
  return values.map((value, band) => value - spectrum.values[band]);
}
