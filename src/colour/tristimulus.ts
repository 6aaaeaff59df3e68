import type { Lab, Xyz } from '../quantities.ts';
import { xyzToLab } from './cielab.ts';
import type { Light } from './lights.ts';
import type { Observer } from './observers.ts';
import type { Spectrum } from './spectrum.ts';
import type { SummationMethod, Weights } from './weights.ts';
import { weightsFor } from './weights.ts';

/**
 * Tristimulus values of reflectance factors (0..1) on the grid of the weights.
 *
 * Y = 100 for the perfect diffuser. A missing or non-finite value gives NaN.
 * Source: ASTM E308-15, summation with weighting factors.
 */
export function spectrumToXyz(values: ArrayLike<number>, weights: Weights): Xyz {
  const { x: wx, y: wy, z: wz } = weights;
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < wy.length; i += 1) {
    const value = values[i];
    x += wx[i] * value;
    y += wy[i] * value;
    z += wz[i] * value;
  }
  return [x, y, z];
}

/** The weights of {@link weightsFor} for the grid of a spectrum. */
export const weightsOf = (spectrum: Spectrum, light: Light, observer: Observer, method: 'auto' | SummationMethod = 'auto'): Weights =>
  weightsFor(light, observer, spectrum.startNm, spectrum.stepNm, spectrum.values.length, method);

/**
 * CIELAB of a reflectance spectrum, against the white of the same weights: a white tile is exactly (100, 0, 0).
 *
 * Source: ASTM E308-15; ISO/CIE 11664-4:2019.
 */
export function spectrumToLab(spectrum: Spectrum, light: Light, observer: Observer, method: 'auto' | SummationMethod = 'auto'): Lab {
  const weights = weightsOf(spectrum, light, observer, method);
  return xyzToLab(spectrumToXyz(spectrum.values, weights), weights.white);
}
