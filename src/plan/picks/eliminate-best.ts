import { eliminationOrder } from './elimination-order.ts';
import type { FactorWalk, PickFactor, PickNetwork } from './pick-network.ts';
import { countUp, factorWalk, tiesOf } from './pick-network.ts';

/** Entries that one best choice may cost to find, and that one table may have. */
export interface EliminationLimits {
  readonly work: number;
  readonly table: number;
}

/** Keeps a search below a few seconds and a few hundred megabytes on a common machine. */
export const usualLimits: EliminationLimits = { work: 3e8, table: 1e7 };

export interface BestLabels {
  /** Position in its open alternatives, for every variable. */
  readonly labels: readonly number[];
  readonly harmony: number;
  readonly money: number;
}

interface Bucket {
  readonly variable: number;
  readonly scope: readonly number[];
  /** The best position of the variable for every entry of the scope. */
  readonly best: Uint16Array;
}

/**
 * The best choice of a network by variable elimination, exact: harmony first, then money. Ties fall to the lower position.
 * Undefined where it would cost more than the limits allow.
 * Source: bucket elimination, R. Dechter, Artificial Intelligence 113 (1999) 41, over the ordered pairs (harmony, money).
 */
export function eliminateBest(network: PickNetwork, limits: EliminationLimits = usualLimits): BestLabels | undefined {
  const { sizes } = network;
  const { order, work, largest } = eliminationOrder(sizes, tiesOf(network.factors));
  if (work > limits.work || largest > limits.table) return undefined;
  let factors = [...network.factors];
  const buckets: Bucket[] = [];
  let { harmony, money } = network;
  for (const variable of order) {
    if (sizes[variable] < 2) continue;
    const own = factors.filter(({ scope }) => scope.includes(variable));
    factors = factors.filter((factor) => !own.includes(factor));
    const { bucket, message } = eliminate(own, sizes, variable);
    buckets.push(bucket);
    if (message.scope.length > 0) factors.push(message);
    else {
      harmony += message.harmony[0];
      money += message.money?.[0] ?? 0;
    }
  }
  const labels = sizes.map(() => 0);
  for (const { variable, scope, best } of buckets.reverse()) {
    labels[variable] = best[scope.reduce((entry, other) => entry * sizes[other] + labels[other], 0)];
  }
  return { labels, harmony, money };
}

function eliminate(own: readonly PickFactor[], sizes: readonly number[], variable: number): { bucket: Bucket; message: PickFactor } {
  const scope = [...new Set(own.flatMap((factor) => factor.scope))].filter((other) => other !== variable).sort((a, b) => a - b);
  const scopeSizes = Int32Array.from(scope, (other) => sizes[other]);
  const entries = scopeSizes.reduce((product, size) => product * size, 1);
  const walks: FactorWalk[] = own.map((factor) => factorWalk(factor, sizes, scope, variable));
  const offsets = new Int32Array(own.length);
  const counters = new Int32Array(scope.length);
  const best = new Uint16Array(entries);
  const harmony = new Float64Array(entries);
  const money = new Float64Array(entries);
  for (let entry = 0; entry < entries; entry++) {
    let least = Infinity;
    let cheapest = Infinity;
    for (let label = 0; label < sizes[variable]; label++) {
      let sum = 0;
      let cost = 0;
      for (let f = 0; f < own.length; f++) {
        const at = offsets[f] + label * walks[f].apart;
        sum += own[f].harmony[at];
        const priced = own[f].money;
        if (priced !== undefined) cost += priced[at];
      }
      if (sum < least || (sum === least && cost < cheapest)) {
        least = sum;
        cheapest = cost;
        best[entry] = label;
      }
    }
    harmony[entry] = least;
    money[entry] = cheapest;
    countUp(counters, scopeSizes, offsets, walks);
  }
  return { bucket: { variable, scope, best }, message: { scope, harmony, money } };
}
