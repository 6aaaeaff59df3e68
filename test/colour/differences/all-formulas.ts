import type { DifferenceFormula } from '../../../src/colour/difference-formula.ts';

/** Every formula, and those with factors once more with factors. */
export const allFormulas: readonly DifferenceFormula[] = [
  { name: 'cie76' }, { name: 'cie94' }, { name: 'cie94Textile' }, { name: 'cmc' }, { name: 'cmc', l: 1, c: 1 },
  { name: 'ciede2000' }, { name: 'ciede2000', kL: 2 }, { name: 'ciede2000', kL: 1.5, kC: 1.2, kH: 0.8 }, { name: 'din99o' },
  { name: 'din99o', kL: 2 }, { name: 'cam02ucs' }, { name: 'cam16ucs' },
];
