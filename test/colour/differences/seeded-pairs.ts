import type { Lab } from '../../../src/quantities.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';

export type Pair = readonly [standard: Lab, trial: Lab];

/** Pairs anywhere in L* 0..100, a* and b* -80..80. */
export function farPairs(count: number, seed: number): Pair[] {
  const next = seededNumbers(seed);
  const colour = (): Lab => [100 * next(), 160 * next() - 80, 160 * next() - 80];
  return Array.from({ length: count }, () => [colour(), colour()]);
}

/** Pairs up to about `size` apart in each coordinate, around colours of chroma up to `reach`. */
export function nearPairs(count: number, seed: number, size: number, reach: number): Pair[] {
  const next = seededNumbers(seed);
  const step = (): number => size * (2 * next() - 1);
  return Array.from({ length: count }, () => {
    const L = 5 + 90 * next();
    const a = reach * (2 * next() - 1);
    const b = reach * (2 * next() - 1);
    return [[L, a, b], [L + step(), a + step(), b + step()]];
  });
}
