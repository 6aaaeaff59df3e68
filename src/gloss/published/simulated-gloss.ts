import { derived } from '../../colour/value-origin.ts';

/** Computed by another program than this one, by quadrature and by Monte Carlo in agreement. */
export const simulatedGlossOrigin = derived('GGX facets with height-correlated Smith shadowing in ISO 2813 apertures (computed independently)');

export const simulatedGlossIndex = 1.5;

/** Gloss units by the width alpha of the facets, printed to two decimals, below 1 to three. */
export const simulatedGloss: readonly { readonly alpha: number; readonly gloss: Readonly<Record<20 | 60 | 85, number>> }[] = [
  { alpha: 0.02, gloss: { 20: 20.75, 60: 61.22, 85: 62.89 } },
  { alpha: 0.05, gloss: { 20: 4.89, 60: 30.44, 85: 27.97 } },
  { alpha: 0.1, gloss: { 20: 1.33, 60: 13.57, 85: 10.92 } },
  { alpha: 0.2, gloss: { 20: 0.339, 60: 4.48, 85: 3.14 } },
  { alpha: 0.3, gloss: { 20: 0.151, 60: 2.04, 85: 1.31 } },
];

/** Beside the rounding of the print: the two computations it was taken from agree to this share. */
export const simulatedGlossAgreement = 3e-4;
