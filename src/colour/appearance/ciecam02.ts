import { coneResponses } from '../cone-response.ts';
import { adaptedModel } from './adapted-model.ts';
import type { AppearanceModel } from './appearance.ts';
import type { ViewingConditions } from './viewing-conditions.ts';

const huntPointerEstevez = [0.38971, 0.68898, -0.07868, -0.22981, 1.18340, 0.04641, 0, 0, 1];
/** Hunt-Pointer-Estevez times the inverse of CAT02, row by row. */
const sharpToCones = [0, 3, 6].flatMap((row) => [0, 1, 2].map((column) =>
  huntPointerEstevez[row]! * coneResponses.cat02.inverse[column]!
  + huntPointerEstevez[row + 1]! * coneResponses.cat02.inverse[3 + column]!
  + huntPointerEstevez[row + 2]! * coneResponses.cat02.inverse[6 + column]!));

/**
 * CIECAM02 with its viewing conditions fixed: adaptation by CAT02, compression in the responses of Hunt, Pointer and Estevez.
 *
 * Source: CIE 159:2004, A colour appearance model for colour management systems: CIECAM02.
 */
export const ciecam02 = (conditions: ViewingConditions): AppearanceModel => adaptedModel(conditions, coneResponses.cat02.forward, sharpToCones);
