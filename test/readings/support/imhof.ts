/**
 * P(sum lambda_i (z_i + b_i)^2 > x) by the inversion of J. P. Imhof, Biometrika 48 (1961) 419, eq. 3.2: another algorithm than that of
 * src/readings/ellipsoid-probability.ts. Midpoint sum of the oscillating integral; about 1e-7 where two or more lambda count.
 */
export function imhofUpper(lambda: readonly number[], b: readonly number[], x: number): number {
  const step = 0.01 / Math.max(...lambda);
  let sum = 0;
  for (let i = 0; i < 400_000; i++) {
    const u = (i + 0.5) * step;
    let theta = -0.5 * x * u;
    let logRho = 0;
    lambda.forEach((l, k) => {
      const lu = l * u;
      theta += 0.5 * (Math.atan(lu) + (b[k] * b[k] * lu) / (1 + lu * lu));
      logRho += 0.25 * Math.log1p(lu * lu) + (0.5 * (b[k] * lu) ** 2) / (1 + lu * lu);
    });
    sum += Math.sin(theta) / (u * Math.exp(logRho));
  }
  return 0.5 + (sum * step) / Math.PI;
}
