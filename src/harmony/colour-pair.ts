import type { Lab } from '../quantities.ts';
import type { DifferenceSpread } from '../readings/difference-covariance.ts';
import type { ObserverDegrees } from '../readings/reading.ts';

/** Mean colours of the two sides under one light. */
export interface PairLight {
  readonly light: string;
  readonly observer: ObserverDegrees;
  readonly standard: Lab;
  readonly trial: Lab;
}

/** Two sides made ready to be compared in colour: under which lights, how uncertain, and what must be said about it. */
export interface ColourPair {
  readonly lights: readonly PairLight[];
  /** Lights that were asked for and that a side has no data for. */
  readonly missing: readonly string[];
  /** What the covariance of the differences is made of, stacked over `lights`; the standard is its first side. */
  readonly spread: DifferenceSpread;
  /** Unlike conditions: the values are shown, never counted. */
  readonly indicative: boolean;
  /** Why the conditions are unlike. */
  readonly conditionsReason?: string;
  readonly cautions: readonly string[];
}

/** The spread under some of the lights of a pair, by their indices. */
export function spreadUnder(spread: DifferenceSpread, count: number, chosen: readonly number[]): DifferenceSpread {
  if (chosen.length === count && chosen.every((light, position) => light === position)) return spread;
  const size = 3 * count;
  const kept = chosen.flatMap((light) => [3 * light, 3 * light + 1, 3 * light + 2]);
  const block = (matrix: ArrayLike<number>): Float64Array => {
    const part = new Float64Array(kept.length * kept.length);
    let at = 0;
    for (const row of kept) for (const column of kept) part[at++] = matrix[row * size + column];
    return part;
  };
  return { ...spread, first: block(spread.first), second: block(spread.second), instrument: block(spread.instrument) };
}
