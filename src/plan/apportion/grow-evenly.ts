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
  /** The level at which it is reached by those of its parts that still grow, the radii of the others being settled; infinite where it is not. */
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
 * (lexicographic max-min). A stop is asked again only once one of its parts has settled.
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
  const exact = new Uint8Array(stops.length);
  const ask = (index: number): void => {
    const { atLeast, levelOf } = stops[index];
    own[index] = (atLeast ?? levelOf)(settled);
    exact[index] = Number(atLeast === undefined);
  };
  stops.forEach((_, index) => ask(index));
  while (settled.size < shares.length) {
    const caps = shares.map((share, index) => (settled.has(index) ? Infinity : most[index] / share));
    const cap = caps.reduce((least, value) => Math.min(least, value), Infinity);
    const level = Math.min(cap, lowest(own, (index) => {
      if (exact[index] === 1 || own[index] > cap) return;
      own[index] = Math.max(own[index], stops[index].levelOf(settled));
      exact[index] = 1;
    }));
    const reached = (value: number): boolean => value <= level * (1 + closeness) + closeness;
    const stopped = new Set<number>();
    caps.forEach((cap, index) => { if (!settled.has(index) && reached(cap)) stopped.add(index); });
    own.forEach((value, index) => {
      if (!Number.isFinite(value) || !reached(value) || exact[index] === 0) return;
      bottlenecks.push(index);
      for (const item of stops[index].items) if (!settled.has(item)) stopped.add(item);
    });
    for (const index of stopped) settled.set(index, level * shares[index]);
    if (stopped.size === 0) break;
    yield settled.size / shares.length;
    for (const index of new Set([...stopped].flatMap((item) => stopsOf[item]))) {
      if (stops[index].items.every((item) => settled.has(item))) own[index] = Infinity;
      else ask(index);
    }
  }
  return { radii: shares.map((_, index) => settled.get(index) ?? Infinity), bottlenecks };
}

/** The lowest value, once the one that is lowest is not raised any more by being made exact. */
function lowest(values: Float64Array, makeExact: (index: number) => void): number {
  for (;;) {
    let least = -1;
    for (let index = 0; index < values.length; index++) if (least < 0 || values[index] < values[least]) least = index;
    if (least < 0) return Infinity;
    const before = values[least];
    makeExact(least);
    if (values[least] <= before) return before;
  }
}
