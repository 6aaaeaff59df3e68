import type { PublishedCheck } from './published-check.ts';
import { verifyDifferences } from './verify-differences.ts';
import { verifySpectra } from './verify-spectra.ts';

/** Every published value of colour, recomputed: from spectrum to CIELAB, adaptation and metamerism, then the difference formulas. */
export const verifyColour = (): PublishedCheck[] => [...verifySpectra(), ...verifyDifferences()];
