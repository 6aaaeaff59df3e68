import { quasiNormalColumns } from './quasi-normal.ts';
import { principalFactor } from './symmetric-matrix.ts';

const SEED = 1;
/** Share of the largest variance below which an axis counts as certain: a standard deviation of 3e-4 of the largest. */
const RANK_TOLERANCE = 1e-7;

/** Seeded draws of stacked differences about their means, in antithetic pairs. */
export interface StackedDraw {
  /** 1 where nothing is uncertain, else twice the pairs. */
  readonly points: number;
  /** Rows: the stacked coordinates; columns: the dimensions that are drawn, widest first. */
  readonly factor: Float64Array;
  readonly rank: number;
  /** Per dimension the standard normal of every pair. */
  readonly columns: readonly Float64Array[];
}

/** What was factored last: searches ask about one covariance many times over. */
let last: { readonly covariance: Float64Array; readonly made: Pick<StackedDraw, 'rank' | 'factor'> } | undefined;

function factorOf(covariance: ArrayLike<number>, size: number): Pick<StackedDraw, 'rank' | 'factor'> {
  if (last?.covariance.length === size * size && last.covariance.every((entry, at) => entry === covariance[at])) return last.made;
  const { rank, factor } = principalFactor(covariance, size, RANK_TOLERANCE);
  last = { covariance: Float64Array.from(covariance), made: { rank, factor } };
  return last.made;
}

/**
 * Draws for a row-major covariance of `size` rows: one dimension for each numerical rank; a single point where it is zero.
 * `points` a power of two 4..32768.
 */
export function stackedDraw(covariance: ArrayLike<number>, size: number, points: number, seed = SEED): StackedDraw {
  const { rank, factor } = factorOf(covariance, size);
  return rank === 0 ? { points: 1, rank, factor, columns: [] } : { points, rank, factor, columns: quasiNormalColumns(rank, points, seed) };
}

/** Fills in the departure from the means in pair `pair`; the other draw of the pair departs by its negative. */
export function departureOf({ rank, factor, columns }: StackedDraw, pair: number, into: Float64Array): void {
  into.fill(0);
  for (let k = 0; k < rank; k++) {
    const normal = columns[k][pair];
    for (let at = 0; at < into.length; at++) into[at] += factor[at * rank + k] * normal;
  }
}
