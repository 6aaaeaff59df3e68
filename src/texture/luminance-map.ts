import type { Degrees, Millimetres } from '../quantities.ts';
import type { HeightMap } from './height-map.ts';
import type { Surface } from './sampled-field.ts';
import { surfaceSlopes } from './surface-slopes.ts';
import type { Steps } from './steps.ts';

/** Luminance of a lit surface point by point, 1 where it is flat; NaN where it is not known. */
export interface LuminanceMap {
  readonly width: number;
  readonly height: number;
  readonly spacingMm: readonly [Millimetres, Millimetres];
  readonly values: Float64Array;
  /** A height map under a stated lamp, or a linear photograph under the light it was taken in. */
  readonly source: 'rendered' | 'photograph';
}

/** A distant lamp over a surface. */
export interface Lamp {
  /** Above the surface, 0 to 90 degrees. */
  readonly elevationDeg: Degrees;
  /** Where the light comes from, degrees from +x towards +y. */
  readonly azimuthDeg: Degrees;
  /** Share of the illuminance that comes evenly from all sides, 0..1. */
  readonly ambientShare?: number;
}

/** Light from the upper left at 45 degrees, as a booth or a window gives it at its most revealing. Assumption, no source. */
export const defaultLamp: Lamp = { elevationDeg: 45, azimuthDeg: 45, ambientShare: 0 };

/**
 * What a matt surface of these heights looks like from above under a lamp, against a flat surface of the same reflectance.
 *
 * Lambert's law facet by facet: no shadow cast on a neighbour, no light thrown from one to the other, no gloss. So it holds for slopes well below the
 * lamp's elevation; facets turned away from the lamp are left with the ambient share. On dark, glossy grains the shine of the facets adds contrast
 * that this does not have. A point without a slope is missing. Heights are best freed of form first.
 */
export function* renderHeightsSteps(surface: Surface | HeightMap, lamp: Lamp = defaultLamp): Steps<LuminanceMap> {
  const { width, height, spacingMm } = surface;
  const heights = surface.values instanceof Float64Array ? surface.values : new Float64Array(surface.values);
  const elevation = (lamp.elevationDeg * Math.PI) / 180;
  const azimuth = (lamp.azimuthDeg * Math.PI) / 180;
  const towards = [Math.cos(elevation) * Math.cos(azimuth), Math.cos(elevation) * Math.sin(azimuth), Math.sin(elevation)] as const;
  const ambient = lamp.ambientShare ?? 0;
  const values = new Float64Array(width * height);
  const row = { along: new Float64Array(width), across: new Float64Array(width) };
  for (let y = 0; y < height; y += 1) {
    surfaceSlopes({ width, height, spacingMm, values: heights }, y, row);
    for (let x = 0; x < width; x += 1) {
      const [slopeX, slopeY] = [row.along[x], row.across[x]];
      const upright = 1 / Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
      const facing = (towards[2] - towards[0] * slopeX - towards[1] * slopeY) * upright;
      values[y * width + x] = (1 - ambient) * (Math.max(0, facing) / towards[2]) + (ambient * (1 + upright)) / 2;
    }
    if (y % 256 === 0) yield y / height;
  }
  return { width, height, spacingMm, values, source: 'rendered' };
}
