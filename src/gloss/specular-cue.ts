import { fresnelReflectance } from './fresnel-reflectance.ts';

export interface SpecularCue {
  /** Y with the specular part less Y without it, per cent. */
  readonly difference: number;
  /** The most it can be for the index: 100 times the reflectance at 8 degrees. */
  readonly ceiling: number;
  /** 1 for a mirror, 0 for a fully matt surface; not clipped, so that a value outside shows a fault of measurement. */
  readonly share: number;
}

/**
 * Gloss cue of a sphere instrument: luminance factor di:8 less de:8.
 *
 * Y in per cent of both modes on one spot; index n >= 1, 1.5 where not known. Visual gloss follows it better than gloss units.
 * Source: W. Ji, M. R. Pointer, R. M. Luo, J. Dakin, Gloss as an aspect of the measurement of appearance, J. Opt. Soc. Am. A 23 (2006).
 */
export function specularCue(withSpecular: number, withoutSpecular: number, n = 1.5): SpecularCue {
  const ceiling = 100 * fresnelReflectance(n, 8);
  const difference = withSpecular - withoutSpecular;
  return { difference, ceiling, share: difference / ceiling };
}
