import type { GlossUnits } from '../quantities.ts';
import { fresnelGloss } from './fresnel-gloss.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';

/** Refractive indices of cabin materials at 589 nm. Handbook values, from memory; a lacquered part has the index of its lacquer. */
export const materialIndices: readonly { readonly name: string; readonly n: number }[] = [
  { name: 'polypropylene', n: 1.49 }, { name: 'PMMA', n: 1.49 }, { name: 'polyurethane', n: 1.50 },
  { name: 'ABS', n: 1.54 }, { name: 'PVC', n: 1.54 }, { name: 'polycarbonate', n: 1.59 },
];

export interface IndexShare {
  /** Gloss of the second less the first, were both as smooth as each other. */
  readonly difference: GlossUnits;
  /** Gloss of the first times this is the gloss of the second at equal smoothness. */
  readonly ratio: number;
  /** Set where the part due to the index is larger than a tenth of the limit. */
  readonly caution?: string;
}

/**
 * How much of a gloss difference comes from the refractive indices alone, for two surfaces of one smoothness.
 *
 * `level` is the gloss of the first; indices >= 1; gloss scales with the Fresnel reflectance at the angle.
 * A gloss difference between polymers mixes smoothness and index, and the eye sees their sum; but only smoothness is in the tool's power.
 * Source: Fresnel's equations by ISO 2813:2014; a tenth as the line to speak of it: assumption, no source.
 */
export function indexShare(first: number, second: number, level: GlossUnits, angle: GlossMeterAngle, limit?: GlossUnits): IndexShare {
  const ratio = fresnelGloss(second, angle) / fresnelGloss(first, angle);
  const difference = level * (ratio - 1);
  const speak = limit !== undefined && limit > 0 && Math.abs(difference) > 0.1 * limit;
  return {
    difference, ratio,
    ...(speak ? {
      caution: `equal smoothness would still differ by ${Math.abs(difference).toFixed(2)} GU at ${angle}° (n ${first} against ${second}): `
        + `${Math.round((100 * Math.abs(difference)) / limit)} % of the limit is index, not smoothness`,
    } : {}),
  };
}
