import type { Matrix3 } from '../quantities.ts';
import { addMatrix3, multiplyMatrix3 } from './matrix3.ts';
import { principalFactor } from './symmetric-matrix.ts';

type MutableLab = [number, number, number];

/** Two independent normal colours as functions of six standard normals, at most three of which move the difference. */
export interface TwoSidedDraw {
  readonly dimension: number;
  /** Fills how far both sides depart from their means for row `row` of a table of standard normals with `dimension` columns. */
  depart(normals: Float64Array, row: number, standard: MutableLab, trial: MutableLab): void;
}

/**
 * Departures of a standard ~ N(0, standardCovariance) and a trial ~ N(0, trialCovariance), independent; the covariances may be singular.
 * The difference is drawn first along its principal axes, then both sides conditionally on it, so that the leading
 * columns of the table carry nearly all of what a colour difference depends on.
 */
export function twoSidedDraw(standardCovariance: Matrix3, trialCovariance: Matrix3): TwoSidedDraw {
  const sum = addMatrix3(standardCovariance, trialCovariance);
  const { rank, factor, eigen } = principalFactor(sum, 3);
  // Given the difference, each side's mean moves by -+ C (C1 + C2)^+ (d - mean d).
  const share = (covariance: Matrix3): Float64Array => {
    const out = new Float64Array(3 * rank);
    for (let i = 0; i < 3; i++) for (let k = 0; k < rank; k++) {
      let entry = 0;
      for (let j = 0; j < 3; j++) entry += covariance[3 * i + j] * eigen.vectors[3 * j + k];
      out[rank * i + k] = entry / Math.sqrt(eigen.values[k]);
    }
    return out;
  };
  const standardShare = share(standardCovariance);
  const trialShare = factor.map((entry, index) => entry - standardShare[index]);
  const common = principalFactor(parallelSum(standardCovariance, trialCovariance, eigen.vectors, eigen.values, rank), 3);
  const dimension = rank + common.rank;
  const standardFactor = joined(standardShare.map((entry) => -entry), rank, common.factor, common.rank);
  const trialFactor = joined(trialShare, rank, common.factor, common.rank);
  return {
    dimension,
    depart(normals, row, first, second) {
      const start = row * dimension;
      for (let i = 0; i < 3; i++) {
        const entry = i * dimension;
        let ofStandard = 0;
        let ofTrial = 0;
        for (let k = 0; k < dimension; k++) {
          const z = normals[start + k];
          ofStandard += standardFactor[entry + k] * z;
          ofTrial += trialFactor[entry + k] * z;
        }
        first[i] = ofStandard;
        second[i] = ofTrial;
      }
    },
  };
}

/** Two factors of three rows side by side. */
function joined(left: Float64Array, leftColumns: number, right: Float64Array, rightColumns: number): Float64Array {
  const columns = leftColumns + rightColumns;
  return Float64Array.from({ length: 3 * columns }, (_, at) => {
    const row = Math.floor(at / columns);
    const column = at % columns;
    return column < leftColumns ? left[row * leftColumns + column] : right[row * rightColumns + column - leftColumns];
  });
}

/** C1 (C1 + C2)^+ C2: what both sides still share once their difference is known. */
function parallelSum(first: Matrix3, second: Matrix3, vectors: Float64Array, values: Float64Array, rank: number): Matrix3 {
  const inverse = new Float64Array(9);
  for (let k = 0; k < rank; k++) for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) {
    inverse[3 * i + j] += (vectors[3 * i + k] * vectors[3 * j + k]) / values[k];
  }
  return multiplyMatrix3(multiplyMatrix3(first, inverse), second);
}
