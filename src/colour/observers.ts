import type { Spectrum } from './spectrum.ts';
import { standardObservers } from './tables/standard-observers.ts';

/** Field size in degrees: 2 for the CIE 1931, 10 for the CIE 1964 standard observer. */
export type Observer = 2 | 10;

/** The observers there are. */
export const observers: readonly Observer[] = [2, 10];

/** The three colour-matching functions of an observer, 360 nm to 830 nm at 1 nm. */
export interface ColourMatching {
  readonly x: Spectrum;
  readonly y: Spectrum;
  readonly z: Spectrum;
}

/**
 * Colour-matching functions of a standard observer.
 *
 * Source: ISO/CIE 11664-1:2019, tables of the CIE 1931 and CIE 1964 standard colorimetric observers.
 */
export function colourMatching(observer: Observer): ColourMatching {
  const { x2, y2, z2, x10, y10, z10 } = standardObservers;
  return observer === 2 ? { x: x2, y: y2, z: z2 } : { x: x10, y: y10, z: z10 };
}
