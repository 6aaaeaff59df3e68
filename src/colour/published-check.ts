import type { ValueKind, ValueOrigin } from './value-origin.ts';

/** One published value set against ours, a row of `verify`. */
export interface PublishedCheck {
  readonly formula: string;
  /** Where the value was published. */
  readonly source: string;
  readonly kind: ValueKind;
  readonly input: string;
  readonly expected: number;
  readonly got: number;
  /** Absolute difference of got and expected. */
  readonly deviation: number;
  /** Largest deviation allowed: half a unit of the last printed digit, or the stated one. */
  readonly tolerance: number;
  readonly ok: boolean;
}

/** Half a unit of the last of `decimals` printed, and a hair for values that end in a printed 5. */
export const printedTo = (decimals: number): number => 0.5 * 10 ** -decimals * (1 + 1e-6);

/** A row from an expected value and ours; a value that is not finite is never ok. */
export function publishedCheck(
  formula: string, origin: ValueOrigin, input: string, expected: number, got: number, tolerance: number,
): PublishedCheck {
  const deviation = Math.abs(got - expected);
  return { formula, source: origin.source, kind: origin.kind, input, expected, got, deviation, tolerance, ok: deviation <= tolerance };
}
