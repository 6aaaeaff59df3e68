/** What the covariance of a difference of two means is made of; matrices row-major 3K x 3K. */
export interface DifferenceSpread {
  /** Covariance of one spot of each side, not divided by their number. */
  readonly first: ArrayLike<number>;
  readonly second: ArrayLike<number>;
  readonly firstSpots: number;
  readonly secondSpots: number;
  /** What the instruments add, whatever the number of spots. */
  readonly instrument: ArrayLike<number>;
}

/** S_d = S_a / n_a + S_b / n_b + instrument term (JCGM 100:2008, 4.2.3 and 5.2). Spot numbers of at least 1. */
export function differenceCovariance({ first, second, firstSpots, secondSpots, instrument }: DifferenceSpread): Float64Array {
  const out = new Float64Array(first.length);
  for (let i = 0; i < out.length; i++) out[i] = first[i] / firstSpots + second[i] / secondSpots + instrument[i];
  return out;
}
