import { inverse3 } from './three-by-three.ts';

/** Row-major 3 x 3 matrix and its inverse. */
export interface ConeResponse {
  readonly forward: readonly number[];
  readonly inverse: readonly number[];
}

const coneResponse = (forward: readonly number[]): ConeResponse => ({ forward, inverse: inverse3(forward) });

/**
 * Matrices from tristimulus values to sharpened cone responses.
 *
 * Source: `cat16` C. Li et al., Color Research and Application 42 (2017) 703-718, and CIE 248:2022; `cat02` CIE 159:2004;
 * `cmccat2000` C. Li, M. R. Luo, B. Rigg, R. W. G. Hunt, Color Research and Application 27 (2002) 49-58.
 */
export const coneResponses = {
  cat16: coneResponse([0.401288, 0.650173, -0.051461, -0.250268, 1.204414, 0.045854, -0.002079, 0.048952, 0.953127]),
  cat02: coneResponse([0.7328, 0.4296, -0.1624, -0.7036, 1.6975, 0.0061, 0.003, 0.0136, 0.9834]),
  cmccat2000: coneResponse([0.7982, 0.3389, -0.1371, -0.5918, 1.5512, 0.0406, 0.0008, 0.0239, 0.9753]),
} as const;

export type AdaptationTransform = keyof typeof coneResponses;
