import { commonPractice, textileLightness } from './book-bases.ts';
import { bookFoundation, foundationBases } from './book-foundation.ts';
import { materialTable } from './material-table.ts';
import type { RuleBook } from './rule-book.ts';

/** The default rule book: CIEDE2000 under four lights, all limits open to editing. */
export const defaultBook: RuleBook = {
  ...bookFoundation,
  id: 'ciede2000',
  name: 'CIEDE2000 limits for interior trim',
  note: 'Limits of common practice, to be agreed between the parties: ASTM D3134 and D7195 leave the tolerances to them and give none. '
    + 'CIEDE2000 gives less weight to lightness in the dark, so a cap on dL* stands beside the limit where the mean L* is below 35. '
    + 'Results support a judgement under agreed conditions (ISO 3668, SAE J361) and do not replace it.',
  formula: 'ciede2000',
  materials: materialTable({ limitBasis: () => commonPractice, pileLightness: { kL: 2, basis: textileLightness } }),
  bases: { ...foundationBases, formula: 'ISO/CIE 11664-6; SAE J1545:2021 by its published summary: CMC preferred, CIEDE2000 acceptable' },
};
