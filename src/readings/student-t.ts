/**
 * Probability that Student's t with a whole number of degrees of freedom is at most `t`.
 * Finite sums of M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4.
 */
export function studentCdf(t: number, freedom: number): number {
  const theta = Math.atan(t / Math.sqrt(freedom));
  const cos2 = Math.cos(theta) ** 2;
  const odd = freedom % 2 === 1;
  let term = odd ? Math.cos(theta) : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= ((k - 1) / k) * cos2;
    sum += term;
  }
  const central = odd ? (2 / Math.PI) * (theta + Math.sin(theta) * sum) : Math.sin(theta) * sum;
  return 0.5 + 0.5 * central;
}

/** Quantile of Student's t by bisection to 1e-12; `p` in 0..1 exclusive, whole `freedom` >= 1. */
export function studentQuantile(p: number, freedom: number): number {
  let low = -1;
  let high = 1;
  while (studentCdf(low, freedom) > p) low *= 2;
  while (studentCdf(high, freedom) < p) high *= 2;
  while (high - low > 1e-12 * Math.max(1, Math.abs(low))) {
    const middle = 0.5 * (low + high);
    if (middle === low || middle === high) break;
    if (studentCdf(middle, freedom) < p) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
