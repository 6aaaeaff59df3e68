import { hotellingLimit } from '../../readings/hotelling.ts';
import { incompleteBeta } from '../../readings/incomplete-beta.ts';
import { nearestSemidefinite } from '../../readings/nested-covariance.ts';
import { symmetricEigen } from '../../readings/symmetric-matrix.ts';

/** One lot on its place in time. */
export interface TrendPoint {
  /** Days or lots, from any origin. */
  readonly place: number;
  /** One coordinate (gloss) or three (L*, a*, b*). */
  readonly value: readonly number[];
  /** Covariance of the value from what was read alone, row-major, of full rank. */
  readonly noise: ArrayLike<number>;
}

/** A straight line through lots in one or three coordinates at once. */
export interface Trend {
  readonly size: 1 | 3;
  /** Mean place: where the line is known best. */
  readonly centre: number;
  /** Value of the line at the centre, and its change by one unit of place. */
  readonly level: readonly number[];
  readonly slope: readonly number[];
  /** Covariance of level and slope together, row-major, 2 x size rows. */
  readonly covariance: Float64Array;
  /** Degrees of freedom of the scatter about the line: lots less two. */
  readonly freedom: number;
  /** T2 of the slope against none, the limit it is held to, and the probability of so large a one where there is no trend. */
  readonly statistic: number;
  readonly limit: number;
  readonly probability: number;
  readonly significant: boolean;
}

/** Fewest lots that a trend in so many coordinates can be tested with: the scatter about the line needs a covariance of full rank. */
export const leastLotsForTrend = (size: 1 | 3): number => size + 2;

/**
 * The line through lots by generalised least squares: each lot weighs by what its own readings leave uncertain and by the scatter of lots about the
 * line, the latter by moments from the residuals of the plain line and brought to the nearest positive semidefinite matrix. Where all lots were read
 * alike and scatter more than their readings, this is the plain line and its test is exact; else it holds to a slope that is too uncertain
 * rather than too sure. The slope is tested as one vector: T2 = b' S^-1 b against p f / (f - p + 1) F(p, f - p + 1), f = lots - 2.
 * Undefined with fewer lots than `leastLotsForTrend()`, with all lots in one place, or where nothing scatters and nothing is uncertain.
 * A. C. Aitken, Proc. R. Soc. Edinburgh 55 (1935) 42; for moments, R. DerSimonian and N. Laird, Controlled Clinical Trials 7 (1986) 177, written from memory; for
 * the test, T. W. Anderson, An Introduction to Multivariate Statistical Analysis, chapter 8, from memory.
 */
export function fitTrend(points: readonly TrendPoint[], confidence: number): Trend | undefined {
  const size = points[0]?.value.length === 1 ? 1 : 3;
  const lots = points.length;
  const limit = hotellingLimit({ kind: 'two lots', readings: lots }, size, confidence);
  if (limit === undefined || lots < leastLotsForTrend(size)) return undefined;
  const centre = points.reduce((sum, { place }) => sum + place, 0) / lots;
  const spread = points.reduce((sum, { place }) => sum + (place - centre) ** 2, 0);
  if (!(spread > 0)) return undefined;
  const between = scatterAboutLine(points, size, centre, spread);
  const wide = 2 * size;
  const normal = new Float64Array(wide * wide);
  const right = new Float64Array(wide);
  for (const { place, value, noise } of points) {
    const weight = inverse(between.map((entry, at) => entry + noise[at]), size);
    if (weight === undefined) return undefined;
    const powers = [1, place - centre];
    for (let r = 0; r < 2; r++) for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) {
      right[r * size + i] += powers[r] * weight[i * size + j] * value[j];
      for (let s = 0; s < 2; s++) normal[(r * size + i) * wide + s * size + j] += powers[r] * powers[s] * weight[i * size + j];
    }
  }
  const covariance = inverse(normal, wide);
  if (covariance === undefined) return undefined;
  const solved = Array.from({ length: wide }, (_, i) => right.reduce((sum, entry, j) => sum + covariance[i * wide + j] * entry, 0));
  const slope = solved.slice(size);
  const ofSlope = Float64Array.from({ length: size * size }, (_, at) => covariance[(size + Math.floor(at / size)) * wide + size + (at % size)]);
  const statistic = quadratic(inverse(ofSlope, size), slope);
  const freedom = lots - 2;
  return {
    size, centre, level: solved.slice(0, size), slope, covariance, freedom, statistic, limit,
    probability: 1 - incompleteBeta(statistic / (statistic + freedom), size / 2, (freedom - size + 1) / 2),
    significant: statistic > limit,
  };
}

/** The line at a place, with the covariance of its value there. */
export function trendAt({ size, centre, level, slope, covariance }: Trend, place: number): { readonly value: readonly number[]; readonly covariance: Float64Array } {
  const far = place - centre;
  const wide = 2 * size;
  const block = (row: number, column: number, at: number): number => covariance[(row * size + Math.floor(at / size)) * wide + column * size + (at % size)];
  return {
    value: level.map((entry, i) => entry + far * slope[i]),
    covariance: Float64Array.from({ length: size * size }, (_, at) => block(0, 0, at) + far * (block(0, 1, at) + block(1, 0, at)) + far * far * block(1, 1, at)),
  };
}

/** Standard uncertainty of each coordinate of the slope, by one unit of place. */
export const slopeUncertainty = ({ size, covariance }: Trend): readonly number[] =>
  Array.from({ length: size }, (_, i) => Math.sqrt(Math.max(0, covariance[(size + i) * 2 * size + size + i])));

/** Covariance of the lots about the plain line, less what their readings account for. */
function scatterAboutLine(points: readonly TrendPoint[], size: number, centre: number, spread: number): Float64Array {
  const lots = points.length;
  const mean = Array.from({ length: size }, (_, i) => points.reduce((sum, { value }) => sum + value[i], 0) / lots);
  const slope = mean.map((_, i) => points.reduce((sum, { place, value }) => sum + (place - centre) * value[i], 0) / spread);
  const out = new Float64Array(size * size);
  for (const { place, value, noise } of points) {
    const rest = value.map((entry, i) => entry - mean[i] - (place - centre) * slope[i]);
    const left = 1 - 1 / lots - (place - centre) ** 2 / spread;
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) out[i * size + j] += (rest[i] * rest[j] - left * noise[i * size + j]) / (lots - 2);
  }
  return nearestSemidefinite(out);
}

/** v' M v; not a number without a matrix. */
const quadratic = (matrix: Float64Array | undefined, v: readonly number[]): number => (matrix === undefined ? NaN
  : v.reduce((sum, x, i) => sum + x * v.reduce((inner, y, j) => inner + matrix[i * v.length + j] * y, 0), 0));

/** Smallest eigenvalue, by the largest, that a matrix is inverted with. */
const leastShare = 1e-13;

/** Inverse of a row-major symmetric positive definite matrix, its rows and columns brought to one scale first; undefined where it is singular. */
export function inverse(matrix: ArrayLike<number>, size: number): Float64Array | undefined {
  const scale = Array.from({ length: size }, (_, i) => 1 / Math.sqrt(matrix[i * size + i]));
  if (!scale.every(Number.isFinite)) return undefined;
  const { values, vectors } = symmetricEigen(Float64Array.from({ length: size * size }, (_, at) => matrix[at] * scale[Math.floor(at / size)] * scale[at % size]), size);
  if (!(values[size - 1] > leastShare * values[0])) return undefined;
  const out = new Float64Array(size * size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) {
    for (let k = 0; k < size; k++) out[i * size + j] += (vectors[i * size + k] * vectors[j * size + k]) / values[k];
    out[i * size + j] *= scale[i] * scale[j];
  }
  return out;
}
