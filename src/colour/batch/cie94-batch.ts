import type { Cie94Application } from '../differences/cie94.ts';
import { squaredHueDifference } from './squared-hue-difference.ts';
import type { LabColumns } from './lab-columns.ts';

/** `cie94Difference` of the colours in the same places of two columns. */
export function cie94Batch(
  standard: LabColumns, trial: LabColumns, into: Float64Array, { chromaSlope, hueSlope }: Cie94Application, kL: number, kC: number, kH: number,
): void {
  const { L: L1, a: a1, b: b1 } = standard;
  const { L: L2, a: a2, b: b2 } = trial;
  for (let i = 0; i < into.length; i++) {
    const square1 = a1[i] * a1[i] + b1[i] * b1[i];
    const square2 = a2[i] * a2[i] + b2[i] * b2[i];
    const chroma1 = Math.sqrt(square1);
    const lightness = (L2[i] - L1[i]) / kL;
    const chroma = (Math.sqrt(square2) - chroma1) / (kC * (1 + chromaSlope * chroma1));
    const weight = kH * (1 + hueSlope * chroma1);
    const hue = squaredHueDifference(a1[i], b1[i], a2[i], b2[i], Math.sqrt(square1 * square2)) / (weight * weight);
    into[i] = Math.sqrt(lightness * lightness + chroma * chroma + hue);
  }
}
