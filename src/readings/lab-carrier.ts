import { labChanges, lightByName, smoothestChanges, weightsFor } from '../colour/index.ts';
import type { Matrix3 } from '../quantities.ts';
import type { ColourSample, JudgedLight } from './colour-sample.ts';

/** Light and observer in which assumed covariances and agreement sets are stated. */
export const assumedLight = 'D65';
export const assumedObserver = 10;

/** How a small CIELAB deviation under D65 and the 10 degree observer shows under several lights: 3K rows of 3, row-major. */
export type LabCarrier = Float64Array;

/**
 * Carrier of a sample: the deviation is taken as the smoothest change of reflectance that makes it under D65, and that
 * change is seen under each light through the derivative of CIELAB. Identity under D65 and the 10 degree observer itself, and
 * everywhere for a sample without a spectrum, whose colours are known under their own light only. Dimensionless.
 */
export function labCarrier(sample: Pick<ColourSample, 'spectrum' | 'lights'>): LabCarrier {
  const { spectrum, lights } = sample;
  const carrier = new Float64Array(9 * lights.length);
  const reference = lightByName(assumedLight);
  const identity = (light: number): void => {
    for (let i = 0; i < 3; i++) carrier[9 * light + 4 * i] = 1;
  };
  const isAssumed = ({ light, observer }: JudgedLight): boolean => light === reference && observer === assumedObserver;
  if (spectrum === undefined || reference === undefined || lights.every(isAssumed)) {
    lights.forEach((_, light) => identity(light));
    return carrier;
  }
  const changes = smoothestChanges(spectrum, reference, assumedObserver, [[1, 0, 0], [0, 1, 0], [0, 0, 1]]);
  const count = spectrum.values.length;
  lights.forEach((judged, light) => {
    if (isAssumed(judged)) {
      identity(light);
      return;
    }
    labChanges(spectrum.values, changes, weightsFor(judged.light, judged.observer, spectrum.startNm, spectrum.stepNm, count)).forEach((moved, k) => {
      for (let i = 0; i < 3; i++) carrier[9 * light + 3 * i + k] = moved[i];
    });
  });
  // A spectrum that cannot carry a change (fewer than three bands, or black) leaves the deviation as it is.
  for (let light = 0; light < lights.length; light++) {
    const block = carrier.subarray(9 * light, 9 * light + 9);
    if (block.every(Number.isFinite)) continue;
    block.fill(0);
    identity(light);
  }
  return carrier;
}

/** Covariance stated under D65 brought to all lights of two carriers: P C Q', row-major 3K x 3K. Both the same for one side. */
export function carriedCovariance(covariance: Matrix3, rows: LabCarrier, columns: LabCarrier = rows): Float64Array {
  const size = rows.length / 3;
  const half = new Float64Array(size * 3);
  for (let i = 0; i < size; i++) for (let k = 0; k < 3; k++) {
    half[3 * i + k] = rows[3 * i] * covariance[k] + rows[3 * i + 1] * covariance[3 + k] + rows[3 * i + 2] * covariance[6 + k];
  }
  const out = new Float64Array(size * size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) {
    out[i * size + j] = half[3 * i] * columns[3 * j] + half[3 * i + 1] * columns[3 * j + 1] + half[3 * i + 2] * columns[3 * j + 2];
  }
  return out;
}
