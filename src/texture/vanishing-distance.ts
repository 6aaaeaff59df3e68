import type { Millimetres } from '../quantities.ts';
import type { ContrastSpectrum } from './contrast-spectrum.ts';
import { visibleDifference } from './visible-difference.ts';
import type { Viewing } from './visible-texture.ts';
import { channelsOf } from './visible-texture.ts';

/** Where something falls below its threshold: at a distance, nowhere that was looked at, or it is not even seen from near. */
export type Vanishing = { readonly kind: 'at'; readonly viewMm: Millimetres } | { readonly kind: 'beyond'; readonly viewMm: Millimetres } | { readonly kind: 'never seen' };

const [nearest, farthest] = [200, 20_000];

/** The farthest distance at which `seen` is still one threshold, between 200 mm and 20 m, to 0.1 %. */
function vanishing(seen: (viewMm: Millimetres) => number): Vanishing {
  if (seen(farthest) >= 1) return { kind: 'beyond', viewMm: farthest };
  const step = 1.06;
  for (let near = farthest / step; near >= nearest; near /= step) {
    if (seen(near) < 1) continue;
    let [low, high] = [near, near * step];
    while (high / low > 1.001) {
      const middle = Math.sqrt(low * high);
      if (seen(middle) >= 1) low = middle;
      else high = middle;
    }
    return { kind: 'at', viewMm: Math.sqrt(low * high) };
  }
  return { kind: 'never seen' };
}

/** Distance at which a texture melts into an even surface. */
export const textureVanishes = (spectrum: ContrastSpectrum, viewing: Viewing): Vanishing =>
  vanishing((viewMm) => Math.sqrt(channelsOf(spectrum, { ...viewing, viewMm }).reduce((sum, { energy }) => sum + energy, 0)));

/** Distance at which the difference of two textures is no longer seen. */
export const differenceVanishes = (
  first: ContrastSpectrum | readonly ContrastSpectrum[], second: ContrastSpectrum | readonly ContrastSpectrum[], viewing: readonly [Viewing, Viewing],
): Vanishing =>
  vanishing((viewMm) => visibleDifference(first, second, [{ ...viewing[0], viewMm }, { ...viewing[1], viewMm }]).difference);
