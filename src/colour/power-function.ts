import type { DifferenceFormula, FormulaName } from './difference-formula.ts';

const powers: Readonly<Partial<Record<FormulaName, readonly [scale: number, exponent: number]>>> = {
  cie76: [1.26, 0.55], cie94: [1.41, 0.70], cmc: [1.34, 0.66], ciede2000: [1.43, 0.70], cam02ucs: [1.30, 0.75], cam16ucs: [1.41, 0.63],
};

/**
 * Difference brought to the visual scale by the power function of its formula.
 *
 * Monotone: changes no ranking and no verdict. `undefined` for formulas with no published power (CIE94 textile, DIN99o).
 * Source: Huang, Cui, Melgosa, Sanchez-Maranon, Li, Luo, Liu, Optics Express 23, 597 (2015).
 */
export function visualDifference(formula: DifferenceFormula, value: number): number | undefined {
  const power = powers[formula.name];
  return power === undefined ? undefined : power[0] * value ** power[1];
}
