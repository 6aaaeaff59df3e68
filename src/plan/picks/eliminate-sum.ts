import { eliminationOrder } from './elimination-order.ts';
import { countUp, factorWalk, tiesOf } from './pick-network.ts';

/** Weights over the labels of some variables, the last of the scope changing fastest. */
export interface WeightFactor {
  readonly scope: readonly number[];
  readonly weights: Float64Array;
}

/** Entries that a sum may cost to find, and that one table may have. */
export const sumLimits = { work: 1e8, table: 5e6 };

/**
 * Sum over all labels of the product of all factors, by variable elimination: exact but for rounding. Undefined where it would cost
 * more than the limits allow.
 * Source: bucket elimination for sums of products, R. Dechter, Artificial Intelligence 113 (1999) 41.
 */
export function eliminateSum(sizes: readonly number[], factors: readonly WeightFactor[], limits = sumLimits): number | undefined {
  const { order, work, largest } = eliminationOrder(sizes, tiesOf(factors));
  if (work > limits.work || largest > limits.table) return undefined;
  let open = [...factors];
  let total = 1;
  for (const variable of order) {
    const own = open.filter(({ scope }) => scope.includes(variable));
    if (own.length === 0) {
      total *= sizes[variable];
      continue;
    }
    open = open.filter((factor) => !own.includes(factor));
    const message = sumOut(own, sizes, variable);
    if (message.scope.length > 0) open.push(message);
    else total *= message.weights[0];
  }
  return total;
}

function sumOut(own: readonly WeightFactor[], sizes: readonly number[], variable: number): WeightFactor {
  const scope = [...new Set(own.flatMap((factor) => factor.scope))].filter((other) => other !== variable).sort((a, b) => a - b);
  const scopeSizes = Int32Array.from(scope, (other) => sizes[other]);
  const weights = new Float64Array(scopeSizes.reduce((product, size) => product * size, 1));
  const walks = own.map((factor) => factorWalk(factor, sizes, scope, variable));
  const offsets = new Int32Array(own.length);
  const counters = new Int32Array(scope.length);
  for (let entry = 0; entry < weights.length; entry++) {
    let sum = 0;
    for (let label = 0; label < sizes[variable]; label++) {
      let product = 1;
      for (let f = 0; f < own.length; f++) product *= own[f].weights[offsets[f] + label * walks[f].apart];
      sum += product;
    }
    weights[entry] = sum;
    countUp(counters, scopeSizes, offsets, walks);
  }
  return { scope, weights };
}
