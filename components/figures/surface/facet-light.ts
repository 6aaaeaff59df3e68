import { evenShare, leastCosine } from './lamp.ts';
import type { LitScene, Vector } from './lamp.ts';

/** What a facet gives: light of a matt body, 1 where flat, and shine, in units of a perfect white surface. */
export interface FacetLight {
  body: number;
  shine: number;
}

const unit = (x: number, y: number, z: number): Vector => {
  const length = Math.sqrt(x * x + y * y + z * z);
  return [x / length, y / length, z / length];
};

/** Smith's auxiliary function of GGX, see `facetsSeen` of the glossmeter. */
const hidden = (cosine: number, square: number): number => (Math.sqrt(1 + (square * (1 - cosine * cosine)) / (cosine * cosine)) - 1) / 2;

/** Share of unpolarised light that a surface of index n reflects at an angle of this cosine; all of it where n is 0, which stands for a metal. */
export function fresnel(cosine: number, n: number): number {
  if (n === 0) return 1;
  const refracted = Math.sqrt(n * n - 1 + cosine * cosine);
  const across = (cosine - refracted) / (cosine + refracted);
  const along = (n * n * cosine - refracted) / (n * n * cosine + refracted);
  return (across * across + along * along) / 2;
}

/**
 * Light from one facet of a grain at a place, mm from the middle of the picture, whose heights rise by `slopeX` and `slopeY`.
 *
 * Body: Lambert's law for the lamp, and half of the sky for the even light; shine: GGX facets with height-correlated shadowing and Fresnel's
 * reflectance, averaged over the points of the lamp; both against what a flat white surface has. `lit` is the share of the lamp that is not in shadow.
 * The lamp lights all places alike, though its image in the surface has a place. No light is thrown from hill to hill.
 */
export function facetLight(
  scene: LitScene, x: number, y: number, slopeX: number, slopeY: number, lit: number, alpha: number | undefined, n: number, into: FacetLight,
): void {
  const { eye, lamps, towards } = scene;
  const normal = unit(-slopeX, -slopeY, 1);
  const floor = Math.max(leastCosine, towards[2]);
  const facing = Math.max(0, normal[0] * towards[0] + normal[1] * towards[1] + normal[2] * towards[2]);
  into.body = ((1 - evenShare) * lit * facing) / floor + (evenShare * (1 + normal[2])) / 2;
  into.shine = 0;
  if (alpha === undefined || lit === 0) return;
  const view = unit(eye[0] - x, eye[1] - y, eye[2]);
  const seen = normal[0] * view[0] + normal[1] * view[1] + normal[2] * view[2];
  if (seen <= 0.01) return;
  const square = alpha * alpha;
  const hiddenSeen = hidden(seen, square);
  // The narrower the facets, the more points of the lamp are told apart.
  const step = alpha > 0.12 ? lamps.length : 1;
  let [sum, count] = [0, 0];
  for (let index = (step - 1) / 2; index < lamps.length; index += step) {
    const lamp = lamps[index];
    count += 1;
    const light = unit(lamp[0] - x, lamp[1] - y, lamp[2]);
    const incoming = normal[0] * light[0] + normal[1] * light[1] + normal[2] * light[2];
    if (incoming <= 0.01) continue;
    const half = unit(light[0] + view[0], light[1] + view[1], light[2] + view[2]);
    const upright = normal[0] * half[0] + normal[1] * half[1] + normal[2] * half[2];
    const spread = 1 - upright * upright + upright * upright * square;
    const facets = square / (spread * spread);
    const cosine = view[0] * half[0] + view[1] * half[1] + view[2] * half[2];
    // Per white surface the pi of its radiance and that of the distribution cancel.
    sum += (facets * fresnel(cosine, n)) / (1 + hiddenSeen + hidden(incoming, square));
  }
  into.shine = ((1 - evenShare) * lit * sum) / count / (4 * seen * floor);
}
