import type { Lab } from '../../quantities.ts';
import { ciecam02 } from '../appearance/ciecam02.ts';
import { uniformColour, uniformDistance, type UniformColour } from '../appearance/uniform-space.ts';
import { daylightConditions } from '../appearance/viewing-conditions.ts';
import { labToXyz } from '../cielab.ts';
import { isFinitePair } from './finite-pair.ts';

const daylightModel = ciecam02(daylightConditions);

/** CAM02-UCS coordinates J', a', b' of CIELAB coordinates under {@link daylightConditions}. */
export const labToCam02Ucs = (lab: Lab): UniformColour => uniformColour(daylightModel(labToXyz(lab, daylightConditions.white)));

/**
 * CAM02-UCS difference under {@link daylightConditions}; XYZ come from CIELAB with the white of those conditions.
 *
 * Dimensionless, 0 for equal colours; symmetric; kL is the formula's own KL (1 for UCS); NaN for coordinates that are not finite.
 * Chroma of CIECAM02 grows with the power 0.9 of the distance from grey, so differences right at the neutral axis are magnified.
 * Source: Luo, Cui, Li, Color Research and Application 31, 320 (2006).
 */
export function cam02UcsDifference(standard: Lab, trial: Lab, kL = 1): number {
  if (!isFinitePair(standard, trial)) return NaN;
  return uniformDistance(labToCam02Ucs(standard), labToCam02Ucs(trial), kL);
}
