/** Sources that run at once, as plain numbers. */
export interface MixProblem {
  /** Share of the volume of every label of each variable; each sums to 1. */
  readonly shares: readonly Float64Array[];
  /** Shares that differ in one cabin from those above, by cabin and variable. */
  readonly sharesIn?: readonly ReadonlyMap<number, Float64Array>[];
  readonly ties: readonly MixTie[];
}

/** Joints between two variables; several cabins may tie the same two. */
export interface MixTie {
  readonly joint: string;
  /** Which cabin it belongs to. */
  readonly cabin: number;
  readonly first: number;
  readonly second: number;
  /** Chance that the joint clashes, row-major: labels of `first` by those of `second`. The same variable twice: its labels with themselves. */
  readonly clash: Float64Array;
  /** 1 where the joint does not hold for certain. */
  readonly uncertain: Uint8Array;
}

/** Chance that a tie clashes under given labels. */
export const clashAt = (problem: MixProblem, tie: MixTie, first: number, second: number): number => tie.clash[first * problem.shares[tie.second].length + second];

/** Shares of a variable's labels in one of the cabins. */
export const sharesAt = ({ shares, sharesIn }: MixProblem, cabin: number, variable: number): Float64Array => sharesIn?.[cabin]?.get(variable) ?? shares[variable];
