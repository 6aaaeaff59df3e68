import { incompleteBeta } from './incomplete-beta.ts';
import { normalCdf } from './normal-distribution.ts';

/** What a lot is held against, by what its mean and covariance were taken from. */
export type HotellingCase =
  /** The covariance is known. */
  | { readonly kind: 'known' }
  /** A further lot against the mean and covariance of so many lots. */
  | { readonly kind: 'new lot'; readonly lots: number }
  /** One of these very lots. */
  | { readonly kind: 'own lot'; readonly lots: number }
  /** The means of two lots with so many readings together, by their pooled covariance. */
  | { readonly kind: 'two lots'; readonly readings: number };

/**
 * Upper limit of Hotelling's T2 in so many coordinates (1 to 3) at a confidence in 0..1 exclusive; undefined where there are too few lots or
 * readings for any covariance of full rank. N. D. Tracy, J. C. Young and R. L. Mason, Journal of Quality Technology 24 (1992) 88:
 * a lot that the limits were taken from follows a beta, a further one an F distribution.
 */
export function hotellingLimit(of: HotellingCase, coordinates: 1 | 2 | 3, confidence: number): number | undefined {
  const p = coordinates;
  if (!(confidence > 0 && confidence < 1)) return undefined;
  if (of.kind === 'known') return quantile((value) => chiSquareCdf(value, p), confidence);
  const m = of.kind === 'two lots' ? of.readings : of.lots;
  if (!Number.isInteger(m) || m <= p + 1) return undefined;
  if (of.kind === 'own lot') return ((m - 1) ** 2 / m) * quantile((x) => incompleteBeta(Math.min(1, x), p / 2, (m - p - 1) / 2), confidence);
  if (of.kind === 'new lot') return ((p * (m + 1) * (m - 1)) / (m * (m - p))) * quantile((f) => fCdf(f, p, m - p), confidence);
  return ((p * (m - 2)) / (m - p - 1)) * quantile((f) => fCdf(f, p, m - p - 1), confidence);
}

/** F distribution by the incomplete beta function: Abramowitz and Stegun, 26.6.2. */
const fCdf = (f: number, first: number, second: number): number => incompleteBeta((first * f) / (first * f + second), first / 2, second / 2);

/** Chi-square with one to three degrees of freedom, in closed form: Abramowitz and Stegun, 26.4.4 and 26.4.5. */
function chiSquareCdf(value: number, freedom: 1 | 2 | 3): number {
  if (freedom === 2) return 1 - Math.exp(-value / 2);
  const root = Math.sqrt(value);
  const one = 2 * normalCdf(root) - 1;
  return freedom === 1 ? one : one - Math.sqrt(2 / Math.PI) * root * Math.exp(-value / 2);
}

/** Where a distribution function on 0 and above reaches `p`, by bisection to 12 digits. */
function quantile(cdf: (value: number) => number, p: number): number {
  let high = 1;
  while (cdf(high) < p && high < 1e300) high *= 2;
  let low = 0;
  while (high - low > 1e-13 * high) {
    const middle = 0.5 * (low + high);
    if (middle === low || middle === high) break;
    if (cdf(middle) < p) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
