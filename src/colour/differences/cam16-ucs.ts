import type { Lab } from '../../quantities.ts';
import { cam16 } from '../appearance/cam16.ts';
import { uniformColour, uniformDistance, type UniformColour } from '../appearance/uniform-space.ts';
import { daylightConditions } from '../appearance/viewing-conditions.ts';
import { labToXyz } from '../cielab.ts';
import { isFinitePair } from './finite-pair.ts';

const daylightModel = cam16(daylightConditions);

/** CAM16-UCS coordinates J', a', b' of CIELAB coordinates under {@link daylightConditions}. */
export const labToCam16Ucs = (lab: Lab): UniformColour => uniformColour(daylightModel(labToXyz(lab, daylightConditions.white)));

/**
 * CAM16-UCS difference under {@link daylightConditions}; XYZ come from CIELAB with the white of those conditions.
 *
 * Dimensionless, 0 for equal colours; symmetric; kL is the formula's own KL (1 for UCS); NaN for coordinates that are not finite.
 * Chroma of CAM16 grows with the power 0.9 of the distance from grey, so differences right at the neutral axis are magnified.
 * Source: Li et al., Color Research and Application 42, 703 (2017).
 */
export function cam16UcsDifference(standard: Lab, trial: Lab, kL = 1): number {
  if (!isFinitePair(standard, trial)) return NaN;
  return uniformDistance(labToCam16Ucs(standard), labToCam16Ucs(trial), kL);
}
