import type { PublishedCheck } from '../published-check.ts';
import { publishedCheck } from '../published-check.ts';
import type { ValueOrigin } from '../value-origin.ts';

/** The row of the number that lies farthest from its published value, named in the input; a number that is missing counts as farthest. */
export function worstCheck(
  formula: string, origin: ValueOrigin, input: string, labels: readonly string[],
  expected: ArrayLike<number>, got: ArrayLike<number>, tolerance: number,
): PublishedCheck {
  const deviations = labels.map((_, i) => Math.abs(got[i] - expected[i]));
  const missing = deviations.findIndex(Number.isNaN);
  const worst = missing >= 0 ? missing : deviations.indexOf(Math.max(...deviations));
  return publishedCheck(formula, origin, `${input}: ${labels[worst]}`, expected[worst], got[worst], tolerance);
}

/** {@link worstCheck} of X, Y and Z. */
export const tristimulusCheck = (
  formula: string, origin: ValueOrigin, input: string, expected: ArrayLike<number>, got: ArrayLike<number>, tolerance: number,
): PublishedCheck => worstCheck(formula, origin, input, ['X', 'Y', 'Z'], expected, got, tolerance);
