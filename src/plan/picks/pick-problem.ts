/**
 * One choice to make, as plain numbers. Several parts that move together are one variable. All costs are whole numbers, so that
 * sums are exact and orders never depend on rounding.
 */
export interface PickVariable {
  /** Harmony cost of each alternative by itself: of the joints inside a group. */
  readonly harmony: Float64Array;
  /** Money of each alternative, minor units. */
  readonly money: Float64Array;
  /** Suppliers that each alternative needs, as indices. */
  readonly suppliers: readonly (readonly number[])[];
}

/** Harmony cost of two variables together, row-major: alternatives of `first` by those of `second`. At most one for each two variables. */
export interface PickPair {
  readonly first: number;
  readonly second: number;
  readonly harmony: Float64Array;
}

export interface PickProblem {
  readonly variables: readonly PickVariable[];
  readonly pairs: readonly PickPair[];
  /** Money that each supplier costs once, if any of it is picked. */
  readonly setups: Float64Array;
  readonly maxSuppliers?: number;
  /** Most money allowed, minor units. */
  readonly budget?: number;
  /** A harmony cost is clashes x scale + over-use; what is below `scale` is over-use. */
  readonly scale: number;
}

/** One alternative for every variable, with what it comes to. */
export interface PickSolution {
  readonly choice: readonly number[];
  readonly harmony: number;
  readonly money: number;
}

/** Less harmony cost first, then less money; negative where `a` is better. */
export const compareSolutions = (a: { readonly harmony: number; readonly money: number }, b: { readonly harmony: number; readonly money: number }): number =>
  a.harmony - b.harmony || a.money - b.money;

/** What a choice comes to, set-ups of the suppliers included. */
export function valueOf(problem: PickProblem, choice: readonly number[]): PickSolution {
  let harmony = 0;
  let money = 0;
  const used = new Set<number>();
  problem.variables.forEach((variable, index) => {
    harmony += variable.harmony[choice[index]];
    money += variable.money[choice[index]];
    for (const supplier of variable.suppliers[choice[index]]) used.add(supplier);
  });
  for (const { first, second, harmony: table } of problem.pairs) {
    harmony += table[choice[first] * problem.variables[second].money.length + choice[second]];
  }
  for (const supplier of used) money += problem.setups[supplier];
  return { choice: [...choice], harmony, money };
}

/** Suppliers that a choice needs, as indices in ascending order. */
export const suppliersOf = (problem: PickProblem, choice: readonly number[]): readonly number[] =>
  [...new Set(problem.variables.flatMap((variable, index) => variable.suppliers[choice[index]]))].sort((a, b) => a - b);

/** Which alternatives of each variable are still open, as ascending indices. */
export type Domains = readonly (readonly number[])[];

export const fullDomains = (problem: PickProblem): Domains => problem.variables.map((variable) => Array.from(variable.money, (_, index) => index));
