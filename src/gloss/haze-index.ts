import type { GlossUnits } from '../quantities.ts';

/**
 * Haze index of a high-gloss surface: gloss at 60 degrees less gloss at 20 degrees, gloss units.
 *
 * For smooth, non-metallic high-gloss surfaces only; of a grained surface it means nothing.
 * Source: ASTM D4039.
 */
export const hazeIndex = (gloss20: GlossUnits, gloss60: GlossUnits): number => gloss60 - gloss20;
