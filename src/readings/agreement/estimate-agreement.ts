import { symmetricEigen } from '../symmetric-matrix.ts';

/** What the deviations of several instruments on the same tiles say about each of them. Matrices row-major p x p. */
export interface AgreementEstimate {
  /** Deviation of each instrument from the mean of all, tile by tile: `deviations[instrument][tile]`. */
  readonly deviations: readonly (readonly (readonly number[])[])[];
  /** Covariance of each instrument's own deviation. */
  readonly covariances: readonly Float64Array[];
  /** An eigenvalue was raised because the tiles cannot tell it from zero. */
  readonly raised: readonly boolean[];
  /** Covariance of the difference of two instruments, `[first][second]`, as seen on the tiles. */
  readonly ofDifference: readonly (readonly Float64Array[])[];
  /** What the covariances of two instruments share, so that first + second - 2 shared is the covariance of their difference. */
  readonly shared: readonly (readonly Float64Array[])[];
}

/**
 * Agreement of k >= 2 instruments that all read T >= 2 tiles; `readings[instrument][tile]` is a vector of p numbers.
 * The truth of a tile is not known, so only deviations from the mean of all instruments are seen. Their second moments are taken about zero: a constant
 * bias counts like scatter, because verdicts do not correct for it. With M_i the second moment of instrument i, M the sum of all and independent
 * instruments, E[M_i] = ((k - 2) / k) C_i + C / k^2 with C = k / (k - 1) M, which is solved for C_i (F. E. Grubbs, J. Am. Stat. Assoc. 43
 * (1948) 243; for k = 3 it is (V_12 + V_13 - V_23) / 2). Two instruments cannot be told apart: each is given half of the covariance of their
 * difference. Such an estimate may come out below zero: no direction is given less than one standard error, sqrt(2 / T), of the
 * instrument's own M_i. What two instruments share is then set so that the covariance of their difference is the one that was seen, which
 * is what a verdict on two parts measured on the two needs.
 */
export function estimateAgreement(readings: readonly (readonly (readonly number[])[])[]): AgreementEstimate {
  const count = readings.length;
  const tiles = readings[0].length;
  const size = readings[0][0].length;
  const deviations = readings.map((own) => own.map((vector, tile) =>
    vector.map((value, axis) => value - readings.reduce((sum, other) => sum + other[tile][axis], 0) / count)));
  const moments = deviations.map((own) => secondMoment(own, size));
  const ofDifference = deviations.map((first) => deviations.map((second) =>
    secondMoment(first.map((vector, tile) => vector.map((value, axis) => value - second[tile][axis])), size)));
  const total = new Float64Array(size * size);
  for (const moment of moments) moment.forEach((entry, index) => { total[index] += (entry * count) / (count - 1); });
  const estimates = moments.map((moment) => (count === 2
    ? { matrix: moment.map((entry) => 2 * entry), raised: false }
    : raiseEigenvalues(moment.map((entry, index) => ((entry - total[index] / count ** 2) * count) / (count - 2)), moment, size, Math.sqrt(2 / tiles))));
  const covariances = estimates.map(({ matrix }) => matrix);
  return {
    deviations, covariances, ofDifference,
    raised: estimates.map(({ raised }) => raised),
    shared: covariances.map((first, i) => covariances.map((second, j) =>
      first.map((entry, index) => (i === j ? entry : (entry + second[index] - ofDifference[i][j][index]) / 2)))),
  };
}

/** Mean of v v' over the vectors, about zero. */
function secondMoment(vectors: readonly (readonly number[])[], size: number): Float64Array {
  const moment = new Float64Array(size * size);
  for (const vector of vectors) {
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) moment[i * size + j] += (vector[i] * vector[j]) / vectors.length;
  }
  return moment;
}

/** The matrix with every eigenvalue at least `share` of v' M v along its eigenvector. */
function raiseEigenvalues(matrix: Float64Array, moment: Float64Array, size: number, share: number): { readonly matrix: Float64Array; readonly raised: boolean } {
  const { values, vectors } = symmetricEigen(matrix, size);
  let raised = false;
  const out = new Float64Array(size * size);
  for (let k = 0; k < size; k++) {
    let seen = 0;
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) seen += vectors[i * size + k] * moment[i * size + j] * vectors[j * size + k];
    const value = Math.max(values[k], share * seen);
    raised ||= value > values[k];
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) out[i * size + j] += value * vectors[i * size + k] * vectors[j * size + k];
  }
  if (!raised) return { matrix, raised };
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) out[i * size + j] = out[j * size + i];
  return { matrix: out, raised };
}
