import type { GlossUnits } from '../quantities.ts';
import { fresnelReflectance } from './fresnel-reflectance.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';

/** Index of the black glass that has 100 gloss units at every angle, at 587.6 nm. Source: ISO 2813:2014; ASTM D523. */
export const blackGlassIndex = 1.567;

/**
 * Gloss of a mirror-smooth, non-metallic surface of index n: the most that a material can reach.
 *
 * n >= 1 at 587.6 nm; gloss units, 100 for n = 1.567; NaN for n below 1.
 * Source: ISO 2813:2014 (gloss value), by Fresnel's equations.
 */
export const fresnelGloss = (n: number, angle: GlossMeterAngle): GlossUnits =>
  (100 * fresnelReflectance(n, angle)) / fresnelReflectance(blackGlassIndex, angle);
