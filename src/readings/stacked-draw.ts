import { quasiNormal } from './quasi-normal.ts';
import type { StackedEvent } from './stacked-event.ts';
import { principalFactor } from './symmetric-matrix.ts';

const POINTS = 4096;
const SEED = 1;
/** Share of the largest variance below which an axis counts as certain: a standard deviation of 3e-4 of the largest. */
const RANK_TOLERANCE = 1e-7;

/** Seeded draws of the stacked differences of an event, in antithetic pairs. */
export interface StackedDraw {
  readonly points: number;
  /** Departure from the mean differences in pair `pair`; the other draw of the pair departs by its negative. */
  departure(pair: number, into: Float64Array): void;
}

/** Draws of an event's differences, one dimension for each numerical rank of the covariance, widest first; none at all where it is zero. */
export function stackedDraw({ lights, covariance, points = POINTS, seed = SEED }: StackedEvent): StackedDraw {
  const size = 3 * lights.length;
  const { rank, factor } = principalFactor(covariance, size, RANK_TOLERANCE);
  if (rank === 0) return { points: 1, departure: (_, into) => into.fill(0) };
  const normals = quasiNormal(rank, points, seed);
  return {
    points,
    departure(pair, into) {
      const row = 2 * pair * rank;
      for (let at = 0, entry = 0; at < size; at++) {
        let sum = 0;
        for (let k = 0; k < rank; k++, entry++) sum += factor[entry] * normals[row + k];
        into[at] = sum;
      }
    },
  };
}
