import type { Xyz } from '../quantities.ts';
import type { AdaptationTransform } from './cone-response.ts';
import { coneResponses } from './cone-response.ts';
import { transform } from './three-by-three.ts';

/**
 * The colour that looks, to an eye adapted to `toWhite`, as `xyz` does to an eye adapted to `fromWhite`.
 *
 * Tristimulus values on one scale (white Y = 100); degree of adaptation 0 (none) to 1 (complete), where the white itself becomes `toWhite`.
 * Source: von Kries scaling of the responses of {@link coneResponses}; CIE 159:2004; CIE 248:2022.
 */
export function adaptXyz(xyz: Xyz, fromWhite: Xyz, toWhite: Xyz, transformName: AdaptationTransform, degree = 1): Xyz {
  const { forward, inverse } = coneResponses[transformName];
  const response = transform(forward, xyz);
  const from = transform(forward, fromWhite);
  const to = transform(forward, toWhite);
  const scaled = (i: 0 | 1 | 2): number => response[i] * ((degree * to[i]) / from[i] + 1 - degree);
  return transform(inverse, [scaled(0), scaled(1), scaled(2)]);
}

/** Viewing conditions of CMCCAT2000: luminances of the adapting fields in cd/m2, above zero. */
export interface AdaptingFields {
  readonly testLuminance: number;
  readonly referenceLuminance: number;
  readonly surround?: 'average' | 'dim' | 'dark';
}

/**
 * Degree of adaptation of CMCCAT2000, 0 to 1.
 *
 * F (0.08 lg((LA1 + LA2) / 2) + 0.76 - 0.45 (LA1 - LA2) / (LA1 + LA2)), F = 1 for an average and 0.8 for a dim or dark surround.
 * Source: C. Li, M. R. Luo, B. Rigg, R. W. G. Hunt, Color Research and Application 27 (2002) 49-58.
 */
export function cmccat2000Degree({ testLuminance, referenceLuminance, surround = 'average' }: AdaptingFields): number {
  const sum = testLuminance + referenceLuminance;
  const factor = surround === 'average' ? 1 : 0.8;
  const degree = factor * (0.08 * Math.log10(sum / 2) + 0.76 - (0.45 * (testLuminance - referenceLuminance)) / sum);
  return Math.min(1, Math.max(0, degree));
}

/**
 * Corresponding colour under the reference white by CMCCAT2000, with the degree of adaptation taken from the luminances.
 *
 * Source: C. Li, M. R. Luo, B. Rigg, R. W. G. Hunt, Color Research and Application 27 (2002) 49-58.
 */
export function cmccat2000(xyz: Xyz, white: Xyz, referenceWhite: Xyz, fields: AdaptingFields): Xyz {
  const scale = white[1] / referenceWhite[1];
  const levelled: Xyz = [referenceWhite[0] * scale, referenceWhite[1] * scale, referenceWhite[2] * scale];
  return adaptXyz(xyz, white, levelled, 'cmccat2000', cmccat2000Degree(fields));
}
