import type { ApportionLimit, ApportionProblem, ApportionRule } from './apportion-problem.ts';
import { growEvenly } from './grow-evenly.ts';

export interface EvenRadii {
  readonly feasible: boolean;
  /** Largest radius of each part; infinite where nothing limits it. */
  readonly radii: readonly number[];
  /** Limits, as indices, that hold a part's radius where it is, the tightest first. */
  readonly bottlenecks: readonly number[];
  /** Limits that even parts exactly on target break. */
  readonly impossible: readonly number[];
}

/** The largest and most even radii (exact). Worst case: what the radii come to adds up. Statistical: its squares do. */
export function evenRadii(problem: ApportionProblem, rule: ApportionRule): EvenRadii {
  const impossible = problem.limits.flatMap((limit, index) => (limit.limit < limit.offset ? [index] : []));
  if (impossible.length > 0) return { feasible: false, radii: [], bottlenecks: [], impossible };
  const { shares, most } = problem;
  const stops = problem.limits.map((limit) => ({ items: limit.items, levelOf: (settled: ReadonlyMap<number, number>): number => levelOf(limit, shares, settled, rule) }));
  return { feasible: true, ...growEvenly({ shares, most, stops }), impossible: [] };
}

/** The level at which a limit is reached by those of its parts that still grow; infinite where none does. */
function levelOf({ items, scales, offset, limit }: ApportionLimit, shares: readonly number[], settled: ReadonlyMap<number, number>, rule: ApportionRule): number {
  const power = rule === 'worst case' ? 1 : 2;
  const room = limit - offset;
  // Two sides that are one part move together, so they add up whatever the rule.
  const sides = items[0] === items[1] ? [{ item: items[0], scale: scales[0] + scales[1] }] : items.map((item, side) => ({ item, scale: scales[side] }));
  let fixed = 0;
  let growing = 0;
  for (const { item, scale } of sides) {
    const radius = settled.get(item);
    if (radius === undefined) growing += (scale * shares[item]) ** power;
    else fixed += (scale * radius) ** power;
  }
  if (growing === 0) return Infinity;
  return (Math.max(0, room ** power - fixed) / growing) ** (1 / power);
}
