import type { Geometry } from '../../../src/readings/reading.ts';
import type { Recipe } from './pigments.ts';
import { pigments } from './pigments.ts';

/** What the surface of a layer does to light. */
export interface Surface {
  /** Refractive index of the binder. */
  readonly index: number;
  /** Gloss at 60 degrees in GU: how much of the surface reflection stays near the mirror direction. */
  readonly gloss60: number;
  /** Share of the spread surface reflection that gets out of the texture again: 1 for a grained face, less between the fibres of a pile. */
  readonly openness: number;
}

/** Reflection of unpolarised light at a flat dielectric (Fresnel); angle in degrees. */
export function surfaceReflection(index: number, angle: number): number {
  const cosine = Math.cos((angle * Math.PI) / 180);
  const root = Math.sqrt(index ** 2 - Math.sin((angle * Math.PI) / 180) ** 2);
  const across = ((cosine - root) / (cosine + root)) ** 2;
  const along = ((index ** 2 * cosine - root) / (index ** 2 * cosine + root)) ** 2;
  return (across + along) / 2;
}

/** Surface reflection of perfectly diffuse light from outside, by the midpoint rule over the angle. */
function diffuseReflection(index: number): number {
  const steps = 180;
  let sum = 0;
  for (let step = 0; step < steps; step += 1) {
    const angle = ((step + 0.5) * 90) / steps;
    const radians = (angle * Math.PI) / 180;
    sum += surfaceReflection(index, angle) * Math.sin(2 * radians) * (Math.PI / 2 / steps);
  }
  return sum;
}

/** Gloss at 60 degrees of a mirror-smooth face of this index, GU of ISO 2813. */
export const mirrorGloss = (index: number): number => (100 * surfaceReflection(index, 60)) / surfaceReflection(1.567, 60);

/**
 * Share of the first-surface reflection that a geometry catches: all of it in a sphere with the specular part
 * included; away from the mirror direction only what the texture spreads.
 */
export function caughtShare(surface: Surface, geometry: Geometry): number {
  if (geometry === 'di:8') return 1;
  const mirrorLike = Math.min(1, surface.gloss60 / mirrorGloss(surface.index)) ** 0.35;
  return (geometry === 'de:8' ? 1 - 0.9 * mirrorLike : 1 - mirrorLike) * surface.openness;
}

/** The share of diffuse light inside the layer that its surface sends back in, from the reflection outside and the index. */
const insideReflection = (index: number): number => 1 - (1 - diffuseReflection(index)) / index ** 2;

const insideByIndex = new Map<number, number>();

/**
 * Reflectance factor of an opaque layer at one wavelength: two-constant Kubelka-Munk for the body, the
 * correction of Saunderson (J. Opt. Soc. Am. 32 (1942) 727-736) for its surface, and the share of the
 * surface reflection that the geometry catches.
 */
export function reflectance(recipe: Recipe, surface: Surface, geometry: Geometry, nm: number): number {
  let absorption = 0.001;
  let scattering = 0.02;
  for (const [name, concentration] of Object.entries(recipe) as [keyof typeof pigments, number][]) {
    absorption += concentration * pigments[name].absorption(nm);
    scattering += concentration * pigments[name].scattering(nm);
  }
  const ratio = absorption / scattering;
  const body = 1 + ratio - Math.sqrt(ratio * (ratio + 2));
  const inside = insideByIndex.get(surface.index) ?? insideReflection(surface.index);
  insideByIndex.set(surface.index, inside);
  const first = surfaceReflection(surface.index, geometry.includes('45') ? 45 : 8);
  return caughtShare(surface, geometry) * first + ((1 - first) * (1 - inside) * body) / (1 - inside * body);
}
