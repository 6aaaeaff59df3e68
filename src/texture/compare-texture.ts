import type { Micrometres, Millimetres } from '../quantities.ts';

/** What is compared of a surface: parameters of ISO 25178-2 and the class of its tool. */
export interface ComparableTexture {
  readonly saUm?: Micrometres;
  readonly salMm?: Millimetres;
  readonly str?: number;
  readonly vdiClass?: number;
}

export interface TextureLimits {
  /** Smallest and largest ratio of Sa, and of Sal, of one surface to the other. */
  readonly ratio: readonly [low: number, high: number];
  /** Largest abs difference in Str. */
  readonly strDifference: number;
  /** Largest difference in classes of VDI 3400. */
  readonly vdiClass: number;
}

export const textureCriterionNames = ['Sa ratio', 'Sal ratio', 'Str difference', 'VDI 3400 class difference'] as const;
export type TextureCriterionName = (typeof textureCriterionNames)[number];

export interface TextureCriterion {
  readonly name: TextureCriterionName;
  /** Ratios as larger to smaller, differences without sign: the order of the surfaces does not matter. */
  readonly value: number;
  readonly limit: number;
  readonly within: boolean;
}

export interface TextureComparison {
  readonly criteria: readonly TextureCriterion[];
  /** Criteria for which either side has no usable value. */
  readonly missing: readonly TextureCriterionName[];
}

/** Keeps a value that is on its limit within it when decimals have been rounded to binary. */
const roundingAllowance = 1e-9;

function ratioOf(a: number | undefined, b: number | undefined): number | undefined {
  if (a === undefined || b === undefined || !(a > 0 && b > 0 && a < Infinity && b < Infinity)) return undefined;
  return Math.max(a, b) / Math.min(a, b);
}

function distanceOf(a: number | undefined, b: number | undefined): number | undefined {
  if (a === undefined || b === undefined || !Number.isFinite(a) || !Number.isFinite(b)) return undefined;
  return Math.abs(a - b);
}

/**
 * Two textures against limits, criterion by criterion; the same whichever is called first.
 *
 * Ratios are larger to smaller, so their limit is the stricter of the two ends (1 / low and high). A value on its limit is within.
 * Parameters that are absent, not finite, or for Sa and Sal not above 0, are `missing`.
 * Source of the parameters: ISO 25178-2, VDI 3400; of such limits: common practice, no source.
 */
export function compareTexture(a: ComparableTexture, b: ComparableTexture, limits: TextureLimits): TextureComparison {
  const ratioLimit = Math.min(1 / limits.ratio[0], limits.ratio[1]);
  const found: readonly (readonly [TextureCriterionName, number | undefined, number])[] = [
    ['Sa ratio', ratioOf(a.saUm, b.saUm), ratioLimit],
    ['Sal ratio', ratioOf(a.salMm, b.salMm), ratioLimit],
    ['Str difference', distanceOf(a.str, b.str), limits.strDifference],
    ['VDI 3400 class difference', distanceOf(a.vdiClass, b.vdiClass), limits.vdiClass],
  ];
  return {
    criteria: found.flatMap(([name, value, limit]) =>
      value === undefined ? [] : [{ name, value, limit, within: value <= limit + roundingAllowance }]),
    missing: found.filter(([, value]) => value === undefined).map(([name]) => name),
  };
}
