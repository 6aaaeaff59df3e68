import { seededBits } from '../../readings/seeded-random.ts';

export interface EliminationOrder {
  readonly order: readonly number[];
  /** Table entries looked at in all: the product of the sizes of each variable and what it is tied to then, summed. */
  readonly work: number;
  /** Entries of the largest table. */
  readonly largest: number;
}

/**
 * The cheapest of a few min-fill orders: next comes the variable whose going ties the fewest new pairs together (then the one with
 * the smaller table, then by the seeded draw). Variables that are not in `sizes` with more than one alternative cost nothing and come first.
 * Source: U. Kjaerulff, Triangulation of graphs, Aalborg University R-90-09, 1990.
 */
export function eliminationOrder(sizes: readonly number[], ties: readonly (readonly [number, number])[], tries = 4): EliminationOrder {
  let best: EliminationOrder | undefined;
  for (let seed = 0; seed < tries; seed++) {
    const found = minFill(sizes, ties, seed);
    if (best === undefined || found.work < best.work) best = found;
  }
  return best ?? { order: [], work: 0, largest: 0 };
}

function minFill(sizes: readonly number[], ties: readonly (readonly [number, number])[], seed: number): EliminationOrder {
  const bits = seededBits(seed + 1);
  const graph = sizes.map(() => new Set<number>());
  for (const [a, b] of ties) {
    if (a === b || sizes[a] < 2 || sizes[b] < 2) continue;
    graph[a].add(b);
    graph[b].add(a);
  }
  const fills = sizes.map((_, index) => fillOf(graph, index));
  const left = new Set(sizes.keys());
  const order: number[] = [];
  let work = 0;
  let largest = 0;
  while (left.size > 0) {
    let chosen = -1;
    let fewest = Infinity;
    let smallest = Infinity;
    let draw = Infinity;
    for (const index of left) {
      if (fills[index] > fewest) continue;
      const size = tableSize(sizes, graph, index);
      if (fills[index] === fewest && size > smallest) continue;
      const own = seed === 0 ? index : bits();
      if (fills[index] === fewest && size === smallest && own >= draw) continue;
      [chosen, fewest, smallest, draw] = [index, fills[index], size, own];
    }
    work += smallest;
    largest = Math.max(largest, smallest / sizes[chosen]);
    order.push(chosen);
    left.delete(chosen);
    takeOut(graph, fills, chosen);
  }
  return { order, work, largest };
}

const tableSize = (sizes: readonly number[], graph: readonly ReadonlySet<number>[], index: number): number => {
  let size = sizes[index];
  for (const other of graph[index]) size *= sizes[other];
  return size;
};

/** Pairs of neighbours that are not tied yet. */
function fillOf(graph: readonly ReadonlySet<number>[], index: number): number {
  const around = [...graph[index]];
  let missing = 0;
  for (let i = 0; i < around.length; i++) {
    for (let j = i + 1; j < around.length; j++) if (!graph[around[i]].has(around[j])) missing++;
  }
  return missing;
}

function takeOut(graph: readonly Set<number>[], fills: number[], index: number): void {
  const around = [...graph[index]];
  const touched = new Set(around);
  for (const a of around) {
    graph[a].delete(index);
    for (const b of around) {
      if (a === b || graph[a].has(b)) continue;
      graph[a].add(b);
      for (const common of graph[a]) if (graph[b].has(common)) touched.add(common);
    }
  }
  graph[index].clear();
  for (const a of touched) fills[a] = fillOf(graph, a);
}
