import type { DifferenceFormula } from './difference-formula.ts';

/**
 * DIN99o's factors kE (lightness) and kCH (chroma and hue) from the general kL and kC.
 *
 * DIN 6176 divides lightness by kE and chroma with hue by kE kCH, so kE = kL and kE kCH = kC. kL = 2 with kC = 1 gives
 * kE = 2, kCH = 0.5, the values DIN 6176 gives for textiles. The standard has no factor for hue alone: kH is not used.
 */
export function din99oFactors(formula: DifferenceFormula): { readonly kE: number; readonly kCH: number } {
  const kE = formula.kL ?? 1;
  return { kE, kCH: (formula.kC ?? 1) / kE };
}
