import { normalCdf } from './normal-distribution.ts';

/** Share of a three-dimensional standard normal cloud within a distance of its middle; distance of at least 0. Chi-square with three degrees of freedom in closed form. */
export const shareWithinRadius = (radius: number): number =>
  Math.max(0, 2 * normalCdf(radius) - 1 - Math.sqrt(2 / Math.PI) * radius * Math.exp(-0.5 * radius * radius));

const steps = 80;

/**
 * The distance within which a share of a three-dimensional standard normal cloud lies: the square root of the quantile of chi-square with
 * three degrees of freedom. `share` in 0..1; 0 gives 0, 1 infinity, anything else NaN. Absolute error below 1e-12, by halving.
 * Source: chi-square distribution, NIST/SEMATECH e-Handbook of Statistical Methods 1.3.6.6.6.
 */
export function radialQuantile(share: number): number {
  if (!(share >= 0 && share <= 1)) return Number.NaN;
  if (share === 1) return Infinity;
  let [low, high] = [0, 40];
  for (let step = 0; step < steps; step++) {
    const middle = (low + high) / 2;
    if (shareWithinRadius(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
