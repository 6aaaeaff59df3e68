/** Parts grow together, each by its share, until something stops them. */
export interface Growing {
  /** How much of the level each part takes, above 0. */
  readonly shares: readonly number[];
  /** Largest radius of each part; none where infinite. */
  readonly most: readonly number[];
  readonly stops: readonly Stop[];
}

/** What stops the growth of two parts. */
export interface Stop {
  readonly items: readonly [number, number];
  /**
   * The level at which it is reached by those of its parts that still grow, the radii of the others being settled; infinite where it is not. It never
   * falls as parts settle below it.
   */
  readonly levelOf: (settled: ReadonlyMap<number, number>) => number;
  /** A level that it is not reached below, where that is quicker to tell. */
  readonly atLeast?: (settled: ReadonlyMap<number, number>) => number;
}

export interface Grown {
  /** Largest radius of each part; infinite where nothing limits it. */
  readonly radii: readonly number[];
  /** Stops, as indices, that hold a part's radius where it is, the tightest first. */
  readonly bottlenecks: readonly number[];
}

/** Relative closeness at which a stop counts as reached. */
const closeness = 1e-9;

/**
 * The largest and most even radii: all grow together, each by its share; where a stop is reached its parts stay, and the others go on
 * (lexicographic max-min). A stop is asked again only once one of its parts has settled and growth has come to where it was reached before.
 * Source: progressive filling, D. Bertsekas and R. Gallager, Data Networks, 2nd edition 1992, 6.5.2.
 */
export function growEvenly(growing: Growing): Grown {
  const growth = growthOf(growing);
  for (;;) {
    const next = growth.next();
    if (next.done === true) return next.value;
  }
}

/** The same by steps, each telling the share of the parts that have settled, so that a long one can be watched. */
export function* growthOf({ shares, most, stops }: Growing): Generator<number, Grown> {
  const settled = new Map<number, number>();
  const bottlenecks: number[] = [];
  const stopsOf = shares.map((): number[] => []);
  stops.forEach(({ items }, index) => { for (const item of new Set(items)) stopsOf[item].push(index); });
  const own = new Float64Array(stops.length);
  const known = new Uint8Array(stops.length);
  let grownTo = 0;
  /** One step nearer to what the stop says, never to below the level that growth has come to. */
  const ask = (index: number): void => {
    const { atLeast, levelOf } = stops[index];
    const exact = atLeast === undefined || known[index] === roughly;
    own[index] = exact ? Math.max(grownTo, levelOf(settled)) : Math.max(own[index], atLeast(settled));
    known[index] = exact ? exactly : roughly;
  };
  stops.forEach((_, index) => ask(index));
  while (settled.size < shares.length) {
    const caps = shares.map((share, index) => (settled.has(index) ? Infinity : most[index] / share));
    const cap = caps.reduce((least, value) => Math.min(least, value), Infinity);
    const level = lowest(own, cap, (index) => {
      if (known[index] === exactly) return true;
      ask(index);
      return false;
    });
    const reached = (value: number): boolean => value <= level * (1 + closeness) + closeness;
    const stopped = new Set<number>();
    caps.forEach((cap, index) => { if (!settled.has(index) && reached(cap)) stopped.add(index); });
    for (let index = 0; index < own.length; index++) {
      while (known[index] !== exactly && Number.isFinite(own[index]) && reached(own[index])) ask(index);
      if (!Number.isFinite(own[index]) || !reached(own[index])) continue;
      bottlenecks.push(index);
      for (const item of stops[index].items) if (!settled.has(item)) stopped.add(item);
    }
    for (const index of stopped) settled.set(index, level * shares[index]);
    if (stopped.size === 0) break;
    grownTo = level;
    yield settled.size / shares.length;
    for (const index of new Set([...stopped].flatMap((item) => stopsOf[item]))) {
      if (stops[index].items.every((item) => settled.has(item))) own[index] = Infinity;
      // What it was reached at before still holds from below.
      else known[index] = before;
    }
  }
  return { radii: shares.map((_, index) => settled.get(index) ?? Infinity), bottlenecks };
}

/** What is known of the level of a stop: what it was before a part of it settled, a level that it is not below, the level itself. */
const [before, roughly, exactly] = [0, 1, 2];

/** The lowest value up to `most`, once the one that is lowest is known exactly. */
function lowest(values: Float64Array, most: number, isExact: (index: number) => boolean): number {
  for (;;) {
    let least = -1;
    let lowestYet = most;
    for (let index = 0; index < values.length; index++) if (values[index] < lowestYet) [least, lowestYet] = [index, values[index]];
    if (least < 0 || isExact(least)) return lowestYet;
  }
}
