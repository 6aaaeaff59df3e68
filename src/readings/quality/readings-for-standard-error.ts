/**
 * Standard error that the mean of a specimen should have, as a share of the limit. ASTM E1345-98(2019) ties the goal to the tolerance and
 * leaves the share to the parties; shares of 0.10 to 0.16 are common practice, no source.
 */
export const defaultStandardErrorShare = 0.16;

/**
 * Smallest number of readings whose mean has a standard error of at most `standardError`: (s / SE)^2, rounded up, at least 1.
 * `sd` and `standardError` in one unit; Infinity where the goal is not above zero and there is a spread. ASTM E1345-98(2019).
 */
export function readingsForStandardError(sd: number, standardError: number): number {
  if (sd <= 0) return 1;
  if (!(standardError > 0)) return Infinity;
  // A quotient that is whole but for rounding must not ask for one more reading.
  return Math.max(1, Math.ceil((sd / standardError) ** 2 - 1e-9));
}
