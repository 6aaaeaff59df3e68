/** Colour-difference formulas by the names used in rule books, reports and on the command line. */
export const formulaNames = ['cie76', 'cie94', 'cie94Textile', 'cmc', 'ciede2000', 'din99o', 'cam02ucs', 'cam16ucs'] as const;
export type FormulaName = (typeof formulaNames)[number];

/** A formula with its parametric factors; factors left out are 1 (CMC: l = 2, c = 1; CIE94 textile: kL = 2). */
export interface DifferenceFormula {
  readonly name: FormulaName;
  readonly kL?: number;
  readonly kC?: number;
  readonly kH?: number;
  /** CMC(l:c) only. */
  readonly l?: number;
  readonly c?: number;
}
