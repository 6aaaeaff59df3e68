/** Where no published source is known. Tolerances are for the parties to agree: ASTM D3134 and D7195 give none. */
export const commonPractice = 'common practice, no source';
export const assumption = 'assumption, no source';

/** CIE94 for textiles and the usual parametric factor of CIEDE2000 for textiles. */
export const textileLightness = 'CIE 116-1995, CIE94 for textiles: kL 2; the same is textile practice with CIEDE2000';

export const decisionBasis = 'ISO 14253-1 (default conformance probability 95 %), JCGM 106:2012 (guarded acceptance)';

export const lightAndObserver = 'SAE J1545:2021 by its published summary: D65 and the 10 degree observer';
