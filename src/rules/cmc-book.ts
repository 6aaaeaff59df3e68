import { commonPractice } from './book-bases.ts';
import { bookFoundation, foundationBases } from './book-foundation.ts';
import { materialTable } from './material-table.ts';
import type { RuleBook } from './rule-book.ts';

const upperEnds = ['textile', 'headliner', 'carpet'];

/**
 * The same pairs under CMC(2:1). The figures are those of the CIEDE2000 book: for solid trim colours the two formulas
 * differ by about -8 to +13 % (dark grey, beige and red pairs of about 0.6 to 1.1), less than the spread of practice; for textile and
 * carpet they are the upper ends of the usual CMC(2:1) figures, 0.8 to 1.2 and 1.0 to 1.5.
 * The factor l = 2 already gives pile its tolerance of lightness, so kL is 1 throughout.
 */
export const cmcBook: RuleBook = {
  ...bookFoundation,
  id: 'cmc',
  name: 'CMC(2:1) limits for interior trim',
  note: 'The pairs and lights of the CIEDE2000 book, judged by CMC(2:1); the trade uses both formulas. A limit means something with its formula alone: '
    + 'below L* 24 a step of lightness alone scores higher by CMC(2:1) than by CIEDE2000, and below L* 46 higher than by CIEDE2000 with kL 2, as used for pile. '
    + 'Limits are to be agreed between the parties: ASTM D3134 and D7195 give none.',
  formula: 'cmc',
  cmc: { l: 2, c: 1 },
  materials: materialTable({
    limitBasis: (material) => (upperEnds.includes(material)
      ? `${commonPractice}; upper end of the usual CMC(2:1) figures`
      : `${commonPractice}; figure of the CIEDE2000 book`),
    pileLightness: { kL: 1, basis: 'ISO 105-J03: l = 2 is in the formula itself' },
  }),
  bases: { ...foundationBases, formula: 'ISO 105-J03; SAE J1545:2021 by its published summary: CMC preferred; l:c = 2:1 for acceptability' },
};
