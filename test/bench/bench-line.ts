/** A time or another figure over several rounds: the median and the quartiles. */
export interface Spread {
  readonly median: number;
  readonly low: number;
  readonly high: number;
}

/** One line of the benchmark: what was done, how long it took here and by another way in the same rounds. */
export interface BenchLine {
  readonly name: string;
  readonly unit: string;
  readonly own: Spread;
  readonly beside?: { readonly name: string; readonly figure: Spread };
  /** Work in the same time, here over beside: the other way's time over the own. */
  readonly ratio?: number;
  /** The figure over that of the smallest size. */
  readonly growth?: number;
  /** What the ratio, the growth or the figure should be. */
  readonly wanted?: string;
  /** Of the result, so that a run that computed something else is seen. */
  readonly checksum: string;
}

export function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? NaN;
  return { median: at(0.5), low: at(0.25), high: at(0.75) };
}

export interface Times<K extends string> {
  readonly ms: Readonly<Record<K, Spread>>;
  /** Median over the rounds of one task's time over another's in the same round. */
  readonly ratio: (task: K, over: K) => number;
}

/** Milliseconds of every task over `rounds` rounds in which each is run once, after one round that does not count. */
export function interleaved<K extends string>(rounds: number, tasks: Readonly<Record<K, () => unknown>>): Times<K> {
  const names = Object.keys(tasks) as K[];
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<K, number[]>;
  for (let round = 0; round <= rounds; round += 1) {
    for (const name of names) {
      const start = performance.now();
      tasks[name]();
      if (round > 0) times[name].push(performance.now() - start);
    }
  }
  return {
    ms: Object.fromEntries(names.map((name) => [name, spreadOf(times[name])])) as Record<K, Spread>,
    ratio: (task, over) => spreadOf(times[task].map((time, round) => time / times[over][round]!)).median,
  };
}

export const scaled = ({ median, low, high }: Spread, factor: number): Spread => ({ median: median * factor, low: low * factor, high: high * factor });

/** A short sum of numbers that is the same on every machine as long as they agree to five figures. */
export const checksumOf = (values: Iterable<number>): string => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum.toPrecision(5);
};
