import type { Lab } from '../../../../src/quantities.ts';
import type { Colourway } from '../colourways.ts';
import { placedAt } from '../colourways.ts';

/** Master limit of the two parts of the first planted trouble: each uses 60 and 70 % of it, together more than the joint allows. */
export const agreedMasterLimit = 0.9;
export const towardBlue: Lab = [0.3, 0.12, -0.95];
export const towardYellow: Lab = [-0.3, -0.12, 0.95];

/** The upper dash skin, at 60 % of its agreed master limit on the blue side. */
export const upperDash = (way: Colourway): Lab => placedAt(way.slate, towardBlue, 0.6 * agreedMasterLimit);
