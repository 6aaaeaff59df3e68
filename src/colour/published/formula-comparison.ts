import type { DifferenceFormula } from '../difference-formula.ts';
import type { Lab } from '../../quantities.ts';
import { derived } from '../value-origin.ts';
import type { DifferenceExample } from './difference-example.ts';

const origin = derived('computed independently from the published equations, D65 and 10 degrees, LA 64, Yb 20, average surround');

const formulas: readonly DifferenceFormula[] = [
  { name: 'cie76' }, { name: 'cie94' }, { name: 'cie94Textile' }, { name: 'cmc' }, { name: 'cmc', l: 1, c: 1 },
  { name: 'ciede2000' }, { name: 'ciede2000', kL: 2 }, { name: 'din99o' }, { name: 'cam16ucs' }, { name: 'cam02ucs' },
];

const pair = (standard: Lab, trial: Lab, ...expected: readonly number[]): DifferenceExample[] =>
  formulas.map((formula, index) => ({ formula, origin, standard, trial, expected: expected[index]!, decimals: 4 }));

/** Five pairs by every formula, 4 decimals: a dark trim, a beige, a red, and pairs 25 and 33 of Sharma, Wu and Dalal. */
export const formulaComparison: readonly DifferenceExample[] = [
  ...pair([27.5, 0.2, -0.6], [28.1, 0.05, -0.95], 0.7106, 0.7061, 0.4778, 0.6874, 0.9704, 0.6094, 0.4668, 0.8692, 0.8394, 0.8678),
  ...pair([68, 3.2, 14.5], [67.2, 3.6, 15.6], 1.4177, 1.0673, 0.7966, 0.8928, 1.0471, 0.9724, 0.8008, 1.1854, 1.0238, 1.0423),
  ...pair([32, 38, 18], [32.8, 39.5, 17.2], 1.8788, 1.2050, 0.9992, 1.2087, 1.4644, 1.1291, 0.9852, 1.2790, 1.3713, 1.3563),
  ...pair([60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387],
    3.1819, 1.3910, 1.3897, 1.4205, 1.4282, 1.2644, 1.2548, 1.7105, 1.3765, 1.4924),
  ...pair([6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286],
    0.9441, 0.9385, 0.5182, 0.9528, 1.8032, 0.6377, 0.4271, 1.1234, 0.8668, 0.8549),
];
