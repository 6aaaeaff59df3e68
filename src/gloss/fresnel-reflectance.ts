import type { Degrees } from '../quantities.ts';

/**
 * Share of unpolarised light that a smooth dielectric of index n reflects, from air.
 *
 * n >= 1, angle of incidence 0..90 degrees; 0..1, 1 at grazing incidence; NaN outside that domain.
 * Source: Fresnel's equations as given for primary gloss standards in ISO 2813:2014.
 */
export function fresnelReflectance(n: number, angleDeg: Degrees): number {
  if (!(n >= 1 && n < Infinity && angleDeg >= 0 && angleDeg <= 90)) return NaN;
  const radians = (angleDeg * Math.PI) / 180;
  const cosine = angleDeg === 90 ? 0 : Math.cos(radians);
  const sine = Math.sin(radians);
  const refracted = Math.sqrt(n * n - sine * sine);
  // At n = 1 and 90 degrees both terms are 0/0: no surface, no reflection.
  if (n === 1) return 0;
  const across = (cosine - refracted) / (cosine + refracted);
  const along = (n * n * cosine - refracted) / (n * n * cosine + refracted);
  return (across * across + along * along) / 2;
}
