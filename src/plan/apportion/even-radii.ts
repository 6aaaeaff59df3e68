import type { ApportionLimit, ApportionProblem, ApportionRule } from './apportion-problem.ts';

export interface EvenRadii {
  readonly feasible: boolean;
  /** Largest radius of each part; infinite where nothing limits it. */
  readonly radii: readonly number[];
  /** Limits, as indices, that hold a part's radius where it is, the tightest first. */
  readonly bottlenecks: readonly number[];
  /** Limits that even parts exactly on target break. */
  readonly impossible: readonly number[];
}

/** Relative closeness at which a limit counts as reached. */
const closeness = 1e-9;

/**
 * The largest and most even radii: all grow together, each by its share; where a limit is reached its parts stop, and the others go on
 * (lexicographic max-min, exact). Worst case: what the radii come to adds up. Statistical: its squares do.
 * Source: progressive filling, D. Bertsekas and R. Gallager, Data Networks, 2nd edition 1992, 6.5.2.
 */
export function evenRadii(problem: ApportionProblem, rule: ApportionRule): EvenRadii {
  const impossible = problem.limits.flatMap((limit, index) => (limit.limit < limit.offset ? [index] : []));
  if (impossible.length > 0) return { feasible: false, radii: [], bottlenecks: [], impossible };
  const settled = new Map<number, number>();
  const bottlenecks: number[] = [];
  while (settled.size < problem.shares.length) {
    const own = problem.limits.map((limit) => levelOf(limit, problem.shares, settled, rule));
    const caps = problem.shares.map((share, index) => (settled.has(index) ? Infinity : problem.most[index] / share));
    const level = Math.min(Infinity, ...own, ...caps);
    const reached = (value: number): boolean => value <= level * (1 + closeness) + closeness;
    const stopped = new Set<number>();
    caps.forEach((cap, index) => { if (!settled.has(index) && reached(cap)) stopped.add(index); });
    own.forEach((value, index) => {
      if (!Number.isFinite(value) || !reached(value)) return;
      bottlenecks.push(index);
      for (const item of problem.limits[index].items) if (!settled.has(item)) stopped.add(item);
    });
    for (const index of stopped) settled.set(index, level * problem.shares[index]);
    if (stopped.size === 0) break;
  }
  return { feasible: true, radii: problem.shares.map((_, index) => settled.get(index) ?? Infinity), bottlenecks, impossible: [] };
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
