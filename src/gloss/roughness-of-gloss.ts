import type { GlossUnits } from '../quantities.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';
import { simulateGloss } from './simulate-gloss.ts';

const sharpest = 1e-5;

/**
 * Width alpha of the GGX facets that give this gloss on a surface of index n: the inverse of {@link simulateGloss}.
 *
 * n >= 1, gloss above 0; alpha 0..1, within 1e-7 of gloss in its relative size. 0 at the gloss of a mirror of that index; undefined above
 * it (the index is higher, or the surface is metallic) and below the gloss of alpha 1. Gloss that the body adds (`bodyGloss`) is to be
 * taken off first. An equivalent roughness for rendering, not that of a profile: waviness, volume and diffraction are all in it.
 */
export function roughnessOfGloss(gloss: GlossUnits, n: number, angle: GlossMeterAngle = 60): number | undefined {
  const excess = (logAlpha: number): number => Math.log(simulateGloss(n, Math.exp(logAlpha), angle) / gloss);
  const mirror = simulateGloss(n, 0, angle);
  if (!(gloss > 0) || !(mirror > 0) || gloss > mirror * (1 + 1e-9)) return undefined;
  let [low, high] = [Math.log(sharpest), 0];
  let [above, below] = [excess(low), excess(high)];
  if (above <= 0) return 0;
  if (below > 0) return undefined;
  // Regula falsi with the Illinois weight: gloss falls all the way, so that the bracket always holds the root.
  let side = 0;
  for (let round = 0; round < 100; round += 1) {
    const middle = (low * below - high * above) / (below - above);
    const value = excess(middle);
    if (Math.abs(value) < 1e-9 || high - low < 1e-12) return Math.exp(middle);
    if (value > 0) {
      [low, above] = [middle, value];
      if (side === 1) below /= 2;
      side = 1;
    } else {
      [high, below] = [middle, value];
      if (side === -1) above /= 2;
      side = -1;
    }
  }
  return Math.exp((low + high) / 2);
}
