import type { PublishedCheck } from '../colour/index.ts';
import { verifyDifferences } from '../colour/verify-differences.ts';
import { verifySpectra } from '../colour/verify-spectra.ts';
import { verifyGloss } from '../gloss/index.ts';
import { verifyTexture } from '../texture/index.ts';

/** Every published value that the program knows, recomputed: colour, gloss, texture. */
export const publishedValues = (): PublishedCheck[] => [...verifySpectra(), ...verifyDifferences(), ...verifyGloss(), ...verifyTexture()];
