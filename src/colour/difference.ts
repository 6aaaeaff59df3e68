import type { Lab } from '../quantities.ts';
import type { DifferenceFormula } from './difference-formula.ts';
import { cam02UcsDifference } from './differences/cam02-ucs.ts';
import { cam16UcsDifference } from './differences/cam16-ucs.ts';
import { cie76Difference } from './differences/cie76.ts';
import { cie94Difference, cie94GraphicArts, cie94Textiles } from './differences/cie94.ts';
import { ciede2000Difference } from './differences/ciede2000.ts';
import { cmcDifference } from './differences/cmc.ts';
import { din99oDifference } from './differences/din99o.ts';
import { din99oFactors } from './din99o-factors.ts';

/**
 * Difference of a trial from a standard by the named formula.
 *
 * CIELAB of one light and observer; 0 for equal colours, never negative, NaN for coordinates that are not finite.
 * Factors act where the formula has them: kL kC kH in CIE94 and CIEDE2000, l c in CMC, kL as KL in the CAM spaces,
 * and in DIN99o by {@link din99oFactors}. CIE76 has none.
 * Source: the formula's own file.
 */
export function difference(formula: DifferenceFormula, standard: Lab, trial: Lab): number {
  switch (formula.name) {
    case 'cie76':
      return cie76Difference(standard, trial);
    case 'cie94':
      return cie94Difference(standard, trial, cie94GraphicArts, formula.kL, formula.kC, formula.kH);
    case 'cie94Textile':
      return cie94Difference(standard, trial, cie94Textiles, formula.kL, formula.kC, formula.kH);
    case 'cmc':
      return cmcDifference(standard, trial, formula.l, formula.c);
    case 'ciede2000':
      return ciede2000Difference(standard, trial, formula.kL, formula.kC, formula.kH);
    case 'din99o': {
      const { kE, kCH } = din99oFactors(formula);
      return din99oDifference(standard, trial, kE, kCH);
    }
    case 'cam02ucs':
      return cam02UcsDifference(standard, trial, formula.kL);
    case 'cam16ucs':
      return cam16UcsDifference(standard, trial, formula.kL);
  }
}

/** True where the standard alone sets the weights, so that swapping the two colours changes the value: CIE94 and CMC. */
export const isOrdered = (formula: DifferenceFormula): boolean =>
  formula.name === 'cie94' || formula.name === 'cie94Textile' || formula.name === 'cmc';
