import type { Millimetres } from '../quantities.ts';
import type { HeightMap, LuminanceMap } from '../texture/index.ts';

export const surfaceFormats = ['sdf', 'x3p', 'png', 'csv'] as const;
export type SurfaceFormat = (typeof surfaceFormats)[number];

/** What a file of a surface holds: heights, or a picture of it in linear light. */
export type SurfaceFile =
  | { readonly kind: 'heights'; readonly format: SurfaceFormat; readonly map: HeightMap }
  | { readonly kind: 'photograph'; readonly format: SurfaceFormat; readonly picture: LuminanceMap };

export const heightUnits = ['um', 'nm', 'mm'] as const;
export type HeightUnit = (typeof heightUnits)[number];

export const transferCurves = ['linear', 'srgb'] as const;
/** How the numbers of a picture follow from light: in proportion, or by IEC 61966-2-1. */
export type TransferCurve = (typeof transferCurves)[number];

/** What the user says of a file that the file does not say itself. */
export interface SurfaceOptions {
  /** Name for issues, without folders. */
  readonly file?: string;
  /** Pictures: distance of neighbouring pixels. */
  readonly mmPerPixel?: Millimetres;
  readonly transfer?: TransferCurve;
  /** Pictures: bytes of a picture of an even grey card in the same light, which divides out what light and lens do. */
  readonly flatField?: Uint8Array;
  /** Grids of numbers: distance of neighbouring points. */
  readonly spacingMm?: Millimetres;
  readonly heightUnit?: HeightUnit;
}
