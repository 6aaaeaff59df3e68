/** Two parts whose tolerances must fit a joint together: r1 scale1 + r2 scale2 + offset <= limit, or the same by squares. */
export interface ApportionLimit {
  readonly joint: number;
  readonly items: readonly [number, number];
  /** What one unit of each part's radius comes to in the units of the limit, at worst. */
  readonly scales: readonly [number, number];
  /** What the targets themselves use of the limit. */
  readonly offset: number;
  readonly limit: number;
}

export interface ApportionProblem {
  /** Share of tolerance that each part asks for, above 0: radii are made even after division by it. */
  readonly shares: readonly number[];
  /** Largest radius of each part; none where infinite. */
  readonly most: readonly number[];
  readonly limits: readonly ApportionLimit[];
}

export type ApportionRule = 'worst case' | 'statistical';
