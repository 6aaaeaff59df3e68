import { studentQuantile } from './student-t.ts';

/**
 * Smallest number of readings whose mean has a confidence interval no wider than +- `halfWidth`: n >= (t s / e)^2.
 * `sd` and `halfWidth` in one unit; two-sided `confidence` below 1; at least 2, Infinity above `largest`.
 * ASTM E1345-98(2019) asks for this size of sample; the t of n - 1 degrees of freedom makes it a search.
 */
export function readingsForInterval(sd: number, halfWidth: number, confidence = 0.95, largest = 10_000): number {
  for (let n = 2; n <= largest; n++) {
    const t = studentQuantile(0.5 + confidence / 2, n - 1);
    if (n >= ((t * sd) / halfWidth) ** 2) return n;
  }
  return Infinity;
}
