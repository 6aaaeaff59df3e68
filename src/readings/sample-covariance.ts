import { meanOfSpots } from './spots.ts';

/** Row-major sample covariance (n - 1) of n vectors of one length; all zero below two vectors. */
export function sampleCovariance(vectors: readonly ArrayLike<number>[]): Float64Array {
  const size = vectors[0]?.length ?? 0;
  const out = new Float64Array(size * size);
  if (vectors.length < 2) return out;
  const mean = meanOfSpots(vectors);
  const departure = new Float64Array(size);
  for (const vector of vectors) {
    for (let i = 0; i < size; i++) departure[i] = vector[i] - mean[i];
    for (let i = 0; i < size; i++) for (let j = 0; j <= i; j++) out[i * size + j] += departure[i] * departure[j];
  }
  for (let i = 0; i < size; i++) for (let j = 0; j <= i; j++) out[j * size + i] = out[i * size + j] /= vectors.length - 1;
  return out;
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
  const out = new Float64Array(assumed.length);
  for (let i = 0; i < out.length; i++) out[i] = (priorReadings * assumed[i] + (freedom > 0 ? freedom * sample[i] : 0)) / total;
  return out;
}

/** The same for a variance. */
export const pooledVariance = (assumed: number, sample: number, spots: number, priorReadings: number): number =>
  pooledCovariance([assumed], [sample], spots, priorReadings)[0];
