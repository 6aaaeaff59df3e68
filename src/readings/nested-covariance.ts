import { sampleCovariance } from './sample-covariance.ts';
import { meanOfSpots } from './spots.ts';
import { symmetricEigen } from './symmetric-matrix.ts';

/** The spots of one specimen by their mean, number and covariance (n - 1; not looked at below two spots). */
export interface SpecimenSpread {
  readonly mean: readonly number[];
  readonly spots: number;
  /** Row-major. */
  readonly covariance: ArrayLike<number>;
}

/** Where the scatter of the parts of several lots comes from; row-major matrices of one size. */
export interface NestedCovariance {
  /** Mean of the lots' means, a lot being the mean of its specimens. */
  readonly mean: readonly number[];
  /** Of that mean: the covariance of the lots' means over their number. */
  readonly covarianceOfMean: Float64Array;
  /** Of the true mean of a part drawn from any lot: between lots, and between the specimens of a lot where any lot has several. */
  readonly ofParts: Float64Array;
  readonly lots: number;
}

/**
 * Covariance components of specimens within lots and spots within specimens: nested analysis of variance of unweighted means, method of
 * moments, with the mean products of vectors in the place of the mean squares. What the spots' scatter leaves in the means is taken off, so
 * that it counts once. With one specimen a lot this is the one-way layout, and the lots' component holds that of the specimens. Components
 * are brought to the nearest positive semidefinite matrix. Where no specimen has two spots `spot` stands for the covariance of one spot.
 * Two lots at least. S. R. Searle, G. Casella and C. E. McCulloch, Variance Components (1992), chapters 3 and 5 (unweighted means after
 * F. Yates, J. Am. Stat. Assoc. 29 (1934) 51) and, for vectors, Y. Amemiya, Am. Stat. 39 (1985) 112.
 */
export function nestedCovariance(lots: readonly (readonly SpecimenSpread[])[], spot: ArrayLike<number>): NestedCovariance {
  const size = spot.length;
  const readings = pooled(lots.flat().map(({ covariance, spots }) => ({ covariance, freedom: spots - 1 })), size) ?? spot;
  const specimens = pooled(lots.map((own) => ({ covariance: sampleCovariance(own.map(({ mean }) => mean)), freedom: own.length - 1 })), size);
  const freedom = lots.reduce((sum, own) => sum + own.length - 1, 0);
  const left = specimens === undefined ? 0 : lots.reduce((sum, own) => sum + (own.length - 1) * meanInverse(own), 0) / freedom;
  const ofSpecimens = specimens?.map((entry, at) => entry - left * readings[at]);
  const lotMeans = lots.map((own) => meanOfSpots(own.map(({ mean }) => mean)));
  const between = sampleCovariance(lotMeans);
  const [shareOfSpecimens, shareOfReadings] = [mean(lots.map((own) => 1 / own.length)), mean(lots.map((own) => meanInverse(own) / own.length))];
  const ofLots = between.map((entry, at) => entry - shareOfSpecimens * (ofSpecimens?.[at] ?? 0) - shareOfReadings * readings[at]);
  const [fromLots, fromSpecimens] = [nearestSemidefinite(ofLots), ofSpecimens === undefined ? undefined : nearestSemidefinite(ofSpecimens)];
  return {
    mean: meanOfSpots(lotMeans),
    covarianceOfMean: between.map((entry) => entry / lots.length),
    ofParts: fromLots.map((entry, at) => entry + (fromSpecimens?.[at] ?? 0)),
    lots: lots.length,
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Mean of 1 / n over the specimens: the share of a spot's covariance that is left in a specimen's mean, on average. */
const meanInverse = (specimens: readonly SpecimenSpread[]): number => mean(specimens.map(({ spots }) => 1 / spots));

/** Covariances weighted with their degrees of freedom; undefined where there are none. */
function pooled(list: readonly { readonly covariance: ArrayLike<number>; readonly freedom: number }[], size: number): Float64Array | undefined {
  const total = list.reduce((sum, { freedom }) => sum + Math.max(0, freedom), 0);
  if (total === 0) return undefined;
  const out = new Float64Array(size);
  for (const { covariance, freedom } of list) if (freedom > 0) for (let at = 0; at < size; at++) out[at] += (freedom * covariance[at]) / total;
  return out;
}

/** The symmetric matrix with its negative eigenvalues set to zero: the nearest positive semidefinite one (N. J. Higham, Linear Algebra Appl. 103 (1988) 103). */
export function nearestSemidefinite(matrix: Float64Array): Float64Array {
  const n = Math.round(Math.sqrt(matrix.length));
  const { values, vectors } = symmetricEigen(matrix, n);
  if (values.every((value) => value >= 0)) return matrix;
  const out = new Float64Array(n * n);
  for (let k = 0; k < n && values[k] > 0; k++) {
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) out[i * n + j] += values[k] * vectors[i * n + k] * vectors[j * n + k];
  }
  return out;
}
