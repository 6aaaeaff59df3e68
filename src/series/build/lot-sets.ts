import { assign } from './assignment.ts';

/** Cost of building a lot of one part with a lot of another: row-major, lots of the first by lots of the second. */
export interface LotTie {
  readonly first: number;
  readonly second: number;
  readonly costs: Float64Array;
}

export interface LotProblem {
  /** Number of lots of each part. */
  readonly lots: readonly number[];
  readonly ties: readonly LotTie[];
}

/** So many sets, each with one lot of every part. */
export interface LotSets {
  /** Lot of each part in each set. */
  readonly sets: readonly (readonly number[])[];
  readonly cost: number;
  /** No other sets cost less. */
  readonly proved: boolean;
  /** No sets cost less than this. */
  readonly bound: number;
  readonly method: 'assignment' | 'assignments along a tree' | 'all ways' | 'search';
}

/** Ways that are tried one by one, at most. */
const mostWays = 100_000;
/** Starts of the search where neither is in reach. */
const starts = 12;

/** How many sets the lots make: as many as the part with the fewest has. */
export const setCount = ({ lots }: Pick<LotProblem, 'lots'>): number => (lots.length === 0 ? 0 : Math.min(...lots));

/** What sets cost, by their ties. */
export const costOfSets = ({ lots, ties }: LotProblem, sets: readonly (readonly number[])[]): number =>
  ties.reduce((sum, { first, second, costs }) => sets.reduce((inner, set) => inner + costs[set[first] * lots[second] + set[second]], sum), 0);

/** The first lots of each part in order: what building in order of production gives. */
export const setsInOrder = (problem: LotProblem): readonly (readonly number[])[] =>
  Array.from({ length: setCount(problem) }, (_, set) => problem.lots.map(() => set));

/**
 * The sets of least cost. Two parts: an assignment, exact. Parts that hang together as a tree and have equally many lots: an assignment along each
 * tie by itself, exact, since any of them fit together. Else all ways where there are few, exact; else a search that gives one part after the other
 * its best lots, from several starts, whose bound is the sum of what each tie would cost alone. Costs are whole numbers, so that equal is equal.
 */
export function bestSets(problem: LotProblem): LotSets {
  const { lots, ties } = problem;
  const count = setCount(problem);
  const alone = ties.map(({ first, second, costs }) => assign(costs, lots[first], lots[second], count));
  const bound = alone.reduce((sum, { cost }) => sum + cost, 0);
  const made = (sets: readonly (readonly number[])[], method: LotSets['method'], exact: boolean): LotSets => {
    const cost = costOfSets(problem, sets);
    return { sets, cost, bound: exact ? cost : bound, proved: exact || cost === bound, method };
  };
  if (count === 0) return made([], 'assignment', true);
  if (lots.length === 2 && ties.length === 1) {
    const [{ columnOf }] = alone;
    return made([...columnOf].flatMap((column, row) => (column < 0 ? [] : [ties[0].first === 0 ? [row, column] : [column, row]])), 'assignment', true);
  }
  if (lots.every((own) => own === count) && isTree(problem)) return made(alongTree(problem, alone.map(({ columnOf }) => columnOf)), 'assignments along a tree', true);
  if (waysOf(problem) <= mostWays) return made(byTrying(problem), 'all ways', true);
  return made(bySearch(problem), 'search', false);
}

/** Parts that are one connected whole without a ring. */
function isTree({ lots, ties }: LotProblem): boolean {
  const root = lots.map((_, part) => part);
  const find = (part: number): number => (root[part] === part ? part : find(root[part]));
  for (const { first, second } of ties) {
    const [a, b] = [find(first), find(second)];
    if (a === b) return false;
    root[a] = b;
  }
  return ties.length === lots.length - 1;
}

function alongTree({ lots, ties }: LotProblem, columnsOf: readonly Int32Array[]): number[][] {
  const sets = Array.from({ length: lots[0] }, (_, set) => lots.map((_lots, part) => (part === 0 ? set : -1)));
  const reached = new Set([0]);
  while (reached.size < lots.length) {
    ties.forEach(({ first, second }, index) => {
      if (reached.has(first) === reached.has(second)) return;
      for (const set of sets) {
        if (reached.has(first)) set[second] = columnsOf[index][set[first]];
        else set[first] = columnsOf[index].indexOf(set[second]);
      }
      reached.add(first).add(second);
    });
  }
  return sets;
}

/** Ordered choices of the lots of all parts but that with the fewest, which gives the sets their order. */
function waysOf({ lots }: LotProblem): number {
  const count = Math.min(...lots);
  const rest = lots.filter((_, part) => part !== lots.indexOf(count));
  return rest.reduce((product, own) => Array.from({ length: count }, (_, k) => own - k).reduce((ways, left) => ways * left, product), 1);
}

function byTrying(problem: LotProblem): readonly (readonly number[])[] {
  const { lots } = problem;
  const count = Math.min(...lots);
  const leader = lots.indexOf(count);
  const rest = lots.map((_, part) => part).filter((part) => part !== leader);
  const sets = Array.from({ length: count }, (_, set) => lots.map((_lots, part) => (part === leader ? set : -1)));
  let best: number[][] = [];
  let least = Infinity;
  const taken = lots.map((own) => new Uint8Array(own));
  const go = (at: number): void => {
    if (at === rest.length * count) {
      const cost = costOfSets(problem, sets);
      if (cost < least) [least, best] = [cost, sets.map((set) => [...set])];
      return;
    }
    const part = rest[Math.floor(at / count)];
    const set = sets[at % count];
    for (let lot = 0; lot < lots[part]; lot++) {
      if (taken[part][lot] === 1) continue;
      taken[part][lot] = 1;
      set[part] = lot;
      go(at + 1);
      taken[part][lot] = 0;
    }
  };
  go(0);
  return best;
}

function bySearch(problem: LotProblem): readonly (readonly number[])[] {
  let best = setsInOrder(problem);
  let least = Infinity;
  for (let start = 0; start < starts; start++) {
    // Each start turns the lots of the parts by other numbers, so that nothing is left to chance.
    const count = setCount(problem);
    let sets: readonly (readonly number[])[] = Array.from({ length: count }, (_, set) => problem.lots.map((own, part) => (set + start * part) % own));
    let cost = costOfSets(problem, sets);
    for (;;) {
      for (let part = 0; part < problem.lots.length; part++) sets = withBestLots(problem, sets, part);
      const next = costOfSets(problem, sets);
      if (!(next < cost)) break;
      cost = next;
    }
    if (cost < least) [least, best] = [cost, sets];
  }
  return best;
}

/** The same sets with the lots of one part given anew, exactly, all others kept. */
function withBestLots({ lots, ties }: LotProblem, sets: readonly (readonly number[])[], part: number): readonly (readonly number[])[] {
  const costs = new Float64Array(sets.length * lots[part]);
  for (const { first, second, costs: own } of ties) {
    if (first !== part && second !== part) continue;
    sets.forEach((set, row) => {
      for (let lot = 0; lot < lots[part]; lot++) costs[row * lots[part] + lot] += first === part ? own[lot * lots[second] + set[second]] : own[set[first] * lots[second] + lot];
    });
  }
  const { columnOf } = assign(costs, sets.length, lots[part]);
  return sets.map((set, row) => set.map((lot, at) => (at === part ? columnOf[row] : lot)));
}
