import { assumption } from './book-bases.ts';
import type { RuleBook } from './rule-book.ts';

/**
 * How a book looks at textures where it says nothing of its own: in a booth at the level that ISO 3668 allows for dark colours. One threshold is
 * where a difference begins to be seen on an even ground; a texture hides differences of itself, by about the power 0.6 of its own strength.
 */
export const visibleTexture: RuleBook['visibleTexture'] = {
  illuminanceLx: 2000,
  fieldMm: 100,
  limit: 'max(1, minVisibleContrast ^ 0.6)',
  basis: `${assumption}; exponent after G. E. Legge, J. M. Foley, J. Opt. Soc. Am. 70 (1980) 1458, contrast masking (from memory)`,
};

/**
 * kL from texture where a book says nothing of its own: switched off. 1 up to ten times the threshold of the smoother side, 2 from fifty times on,
 * the most that studies of textured colours report; they agree on no one scale between.
 */
export const textureLightness: RuleBook['textureLightness'] = {
  enabled: false,
  formula: 'clamp(1 + (minVisibleContrast - 10)/40, 1, 2)',
  basis: `${assumption}; upper end after E. D. Montag, R. S. Berns, Color Res. Appl. 25 (2000) 241: lightness tolerance almost doubled by strong texture`,
};
