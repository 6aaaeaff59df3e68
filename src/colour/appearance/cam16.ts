import { coneResponses } from '../cone-response.ts';
import { adaptedModel } from './adapted-model.ts';
import type { AppearanceModel } from './appearance.ts';
import type { ViewingConditions } from './viewing-conditions.ts';

/**
 * CAM16 with its viewing conditions fixed: adaptation and compression in one space of responses.
 *
 * Source: Li, Li, Wang, Xu, Luo, Cui, Melgosa, Brill, Pointer, Color Research and Application 42, 703 (2017).
 */
export const cam16 = (conditions: ViewingConditions): AppearanceModel => adaptedModel(conditions, coneResponses.cat16.forward);
