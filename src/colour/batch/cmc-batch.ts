import { squaredHueDifference } from './squared-hue-difference.ts';
import type { LabColumns } from './lab-columns.ts';

const turned = (degrees: number): readonly [cosine: number, sine: number] => [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];

const [cosine164, sine164] = turned(164);
const [cosine165, sine165] = turned(165);
const [cosine168, sine168] = turned(168);
const [cosine35, sine35] = turned(35);

/** `cmcDifference` of the colours in the same places of two columns; hue terms from the cosine and sine of the hue, without its angle. */
export function cmcBatch(standard: LabColumns, trial: LabColumns, into: Float64Array, l: number, c: number): void {
  const { L: L1, a: a1, b: b1 } = standard;
  const { L: L2, a: a2, b: b2 } = trial;
  for (let i = 0; i < into.length; i++) {
    const L = L1[i];
    const square1 = a1[i] * a1[i] + b1[i] * b1[i];
    const square2 = a2[i] * a2[i] + b2[i] * b2[i];
    const chroma1 = Math.sqrt(square1);
    const cosine = chroma1 > 0 ? a1[i] / chroma1 : 1;
    const sine = chroma1 > 0 ? b1[i] / chroma1 : 0;
    // 164 to 345 degrees: the half turn from 164 and the half turn from 165 on.
    const cool = sine * cosine164 - cosine * sine164 >= 0 || sine * cosine165 - cosine * sine165 >= 0;
    const t = cool ? 0.56 + Math.abs(0.2 * (cosine * cosine168 - sine * sine168)) : 0.36 + Math.abs(0.4 * (cosine * cosine35 - sine * sine35));
    const f = square1 / Math.sqrt(square1 * square1 + 1900);
    const chromaWeight = (0.0638 * chroma1) / (1 + 0.0131 * chroma1) + 0.638;
    const hueWeight = chromaWeight * (f * t + 1 - f);
    const lightness = (L2[i] - L) / (l * (L < 16 ? 0.511 : (0.040975 * L) / (1 + 0.01765 * L)));
    const chroma = (Math.sqrt(square2) - chroma1) / (c * chromaWeight);
    const hue = squaredHueDifference(a1[i], b1[i], a2[i], b2[i], Math.sqrt(square1 * square2)) / (hueWeight * hueWeight);
    into[i] = Math.sqrt(lightness * lightness + chroma * chroma + hue);
  }
}
