import type { FormulaName } from '../difference-formula.ts';
import type { Lab } from '../../quantities.ts';
import { workedExample } from '../value-origin.ts';
import type { DifferenceExample } from './difference-example.ts';

/** Test data of a general-purpose library, computed there and confirmed by several others. */
const origin = workedExample('CIE 116:1995, ISO 105-J03; colour-science 0.4.6 test data (BSD-3-Clause)');

const reference: Lab = [100, 21.57210357, 272.22819350];
const first: Lab = [100, 426.67945353, 72.39590835];
const second: Lab = [100, 74.05216981, 276.45318193];
const third: Lab = [100, 8.32281957, -73.58297716];

const example = (name: FormulaName, standard: Lab, trial: Lab, expected: number): DifferenceExample =>
  ({ formula: { name }, origin, standard, trial, expected, decimals: 8 });

/** Pairs of CIE94 (graphic arts and textiles) and of CMC(2:1), 8 decimals. */
export const cie94AndCmcExamples: readonly DifferenceExample[] = [
  example('cie94', [48.99183622, -0.10561667, 400.65619925], [50.65907324, -0.11671910, 402.82235718], 1.67111913),
  example('cie94', reference, first, 83.77922550),
  example('cie94', reference, second, 10.05393195),
  example('cie94', reference, third, 57.53545371),
  example('cie94Textile', reference, first, 88.33555306),
  example('cie94Textile', reference, second, 10.61265789),
  example('cie94Textile', reference, third, 60.36868726),
  example('cmc', [48.99183622, -0.10561667, 400.65619925], [50.65907324, -0.11671910, 402.82235718], 0.89969998),
  example('cmc', reference, first, 172.70477129),
  example('cmc', reference, second, 20.59732717),
  example('cmc', reference, third, 121.71841479),
];
