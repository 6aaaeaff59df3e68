import type { DifferenceFormula } from './difference-formula.ts';
import { din99oFactors } from './din99o-factors.ts';

type Factor = readonly [name: string, value: number | undefined, usual: number];

function withFactors(name: string, factors: readonly Factor[], variant?: string): string {
  const unusual = factors
    .filter(([, value, usual]) => value !== undefined && value !== usual)
    .map(([symbol, value]) => `${symbol} ${value}`);
  const notes = variant === undefined ? unusual : [variant, ...unusual];
  return notes.length === 0 ? name : `${name} (${notes.join(', ')})`;
}

/** Name of a formula as printed beside its values, with every factor that is not the usual one: `CIEDE2000 (kL 2)`, `CMC(2:1)`. */
export function formulaLabel(formula: DifferenceFormula): string {
  const { kL, kC, kH } = formula;
  switch (formula.name) {
    case 'cie76':
      return 'CIE76';
    case 'cie94':
      return withFactors('CIE94', [['kL', kL, 1], ['kC', kC, 1], ['kH', kH, 1]]);
    case 'cie94Textile':
      return withFactors('CIE94', [['kL', kL, 2], ['kC', kC, 1], ['kH', kH, 1]], 'textile');
    case 'cmc':
      return `CMC(${formula.l ?? 2}:${formula.c ?? 1})`;
    case 'ciede2000':
      return withFactors('CIEDE2000', [['kL', kL, 1], ['kC', kC, 1], ['kH', kH, 1]]);
    case 'din99o': {
      const { kE, kCH } = din99oFactors(formula);
      return withFactors('DIN99o', [['kE', kE, 1], ['kCH', kCH, 1]]);
    }
    case 'cam02ucs':
      return withFactors('CAM02-UCS', [['KL', kL, 1]]);
    case 'cam16ucs':
      return withFactors('CAM16-UCS', [['KL', kL, 1]]);
  }
}
