import type { Domains, PickProblem } from './pick-problem.ts';

/** Harmony and money over the open alternatives of some variables, the last of the scope changing fastest. */
export interface PickFactor {
  readonly scope: readonly number[];
  readonly harmony: Float64Array;
  /** Absent where no money is tied to it. */
  readonly money?: Float64Array;
}

/** What is left of a problem once only some alternatives are open: what is settled is a constant, and only variables with a choice remain. */
export interface PickNetwork {
  readonly sizes: readonly number[];
  readonly factors: readonly PickFactor[];
  /** What the settled variables come to. */
  readonly harmony: number;
  readonly money: number;
}

/** Pairs with a settled variable become part of the other one; pairs that do not depend on the choice become part of the constant. */
export function pickNetwork(problem: PickProblem, domains: Domains): PickNetwork {
  const single = domains.map((domain) => domain.length === 1);
  const own = domains.map((domain, index) => ({
    harmony: Float64Array.from(domain, (label) => problem.variables[index].harmony[label]),
    money: Float64Array.from(domain, (label) => problem.variables[index].money[label]),
  }));
  const factors: PickFactor[] = [];
  for (const { first, second, harmony } of problem.pairs) {
    const width = problem.variables[second].money.length;
    if (single[first] || single[second]) {
      const [fixed, free] = single[first] ? [first, second] : [second, first];
      const at = domains[fixed][0];
      domains[free].forEach((label, index) => {
        own[free].harmony[index] += fixed === first ? harmony[at * width + label] : harmony[label * width + at];
      });
      continue;
    }
    const table = new Float64Array(domains[first].length * domains[second].length);
    let entry = 0;
    for (const a of domains[first]) for (const b of domains[second]) table[entry++] = harmony[a * width + b];
    if (table.some((value) => value !== table[0])) factors.push({ scope: [first, second], harmony: table });
    else own[first].harmony.forEach((_, index) => { own[first].harmony[index] += table[0]; });
  }
  let harmony = 0;
  let money = 0;
  own.forEach((table, index) => {
    if (single[index]) {
      harmony += table.harmony[0];
      money += table.money[0];
    } else factors.push({ scope: [index], ...table });
  });
  return { sizes: domains.map((domain) => domain.length), factors, harmony, money };
}

/** Pairs of variables that a factor ties. */
export const tiesOf = (factors: readonly { readonly scope: readonly number[] }[]): readonly (readonly [number, number])[] =>
  factors.flatMap(({ scope }) => scope.flatMap((a, i) => scope.slice(i + 1).map((b) => [a, b] as const)));

/** How one factor is walked through while a joint scope counts up with one variable apart. */
export interface FactorWalk {
  /** Step of the entry for the variable apart. */
  readonly apart: number;
  /** Step of the entry for every variable of the scope. */
  readonly steps: Int32Array;
}

/** Steps of a factor's entries over a scope and one variable apart. */
export function factorWalk(factor: { readonly scope: readonly number[] }, sizes: readonly number[], scope: readonly number[], apart: number): FactorWalk {
  const strides = new Map<number, number>();
  let stride = 1;
  for (const variable of [...factor.scope].reverse()) {
    strides.set(variable, stride);
    stride *= sizes[variable];
  }
  return { apart: strides.get(apart) ?? 0, steps: Int32Array.from(scope, (variable) => strides.get(variable) ?? 0) };
}

/** Counts the scope up by one, the last variable fastest, and moves the offsets of all factors with it. */
export function countUp(counters: Int32Array, scopeSizes: Int32Array, offsets: Int32Array, walks: readonly FactorWalk[]): void {
  for (let digit = counters.length - 1; digit >= 0; digit--) {
    counters[digit]++;
    const full = counters[digit] === scopeSizes[digit];
    for (let f = 0; f < walks.length; f++) offsets[f] += full ? walks[f].steps[digit] * (1 - scopeSizes[digit]) : walks[f].steps[digit];
    if (!full) return;
    counters[digit] = 0;
  }
}
