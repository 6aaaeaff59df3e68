import { meanOfSpots } from './spots.ts';

/** Row-major sample covariance (n - 1) of n vectors of one length; all zero below two vectors. */
export function sampleCovariance(vectors: readonly ArrayLike<number>[]): Float64Array {
  const size = vectors[0]?.length ?? 0;
  const out = new Float64Array(size * size);
  if (vectors.length < 2) return out;
  const mean = meanOfSpots(vectors);
  for (const vector of vectors) {
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) out[i * size + j] += (vector[i] - mean[i]) * (vector[j] - mean[j]);
  }
  return out.map((entry) => entry / (vectors.length - 1));
}

/**
 * Sample covariance weighted with an assumed one: S = (nu0 S0 + (n - 1) Sn) / (nu0 + n - 1).
 * `priorReadings` nu0 > 0 says how many readings the assumption is worth; one spot gives the assumption itself.
 * The mean of the conjugate inverse Wishart law with the scale set so that S0 is recovered (A. Gelman et al., Bayesian Data
 * Analysis, 3rd ed., section 3.6, up to the convention for the degrees of freedom).
 */
export function pooledCovariance(
  assumed: ArrayLike<number>, sample: ArrayLike<number>, spots: number, priorReadings: number,
): Float64Array {
  const freedom = Math.max(0, spots - 1);
  const total = priorReadings + freedom;
  return Float64Array.from(assumed, (entry, i) => (priorReadings * entry + (freedom > 0 ? freedom * sample[i] : 0)) / total);
}

/** The same for a variance. */
export const pooledVariance = (assumed: number, sample: number, spots: number, priorReadings: number): number =>
  pooledCovariance([assumed], [sample], spots, priorReadings)[0];
