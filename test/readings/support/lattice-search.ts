/**
 * Finds the generating vector of src/readings/lattice.ts, component by component: run with
 * `node --import tsx test/readings/support/lattice-search.ts`; prints the vector (some seconds).
 *
 * Criterion: the squared worst-case error P2 of a rank-1 lattice, every coordinate of weight 0.05, so that pairs of coordinates
 * count most and no late pair is poor
 * (I. H. Sloan and S. Joe, Lattice Methods for Multiple Integration, 1994; weights after F. Y. Kuo, J. Complexity 19 (2003) 301).
 * One vector serves every power of two from 2^8 to 2^14: per component the candidate with the smallest
 * worst ratio to the best of its size is taken (R. Cools, F. Y. Kuo, D. Nuyens, SIAM J. Sci. Comput. 28 (2006) 2162).
 */
import { pathToFileURL } from 'node:url';

const SMALLEST = 8;
const LARGEST = 14;
const CANDIDATES = 600;
const WEIGHT = 0.05;

const bernoulli2 = (x: number): number => x * x - x + 1 / 6;

/** P2 of a lattice with 2^m points. */
export function latticeError(vector: readonly number[], m: number): number {
  const size = 2 ** m;
  let sum = 0;
  for (let i = 0; i < size; i++) {
    let product = 1;
    vector.forEach((z) => {
      product *= 1 + WEIGHT * 2 * Math.PI ** 2 * bernoulli2(((i * z) % size) / size);
    });
    sum += product;
  }
  return sum / size - 1;
}

export function searchLattice(dimensions: number): number[] {
  let state = 20231;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const sizes = Array.from({ length: LARGEST - SMALLEST + 1 }, (_, k) => 2 ** (SMALLEST + k));
  const products = sizes.map((size) => new Float64Array(size).fill(1));
  const kernels = sizes.map((size) => Float64Array.from({ length: size }, (_, i) => 2 * Math.PI ** 2 * bernoulli2(i / size)));
  const vector: number[] = [];
  for (let j = 0; j < dimensions; j++) {
    const weight = WEIGHT;
    const candidates = j === 0 ? [1] : Array.from({ length: CANDIDATES }, () => 1 + 2 * Math.floor(random() * 2 ** (LARGEST - 1)));
    const errors = candidates.map((z) => sizes.map((size, s) => {
      let sum = 0;
      for (let i = 0; i < size; i++) sum += products[s][i] * (1 + weight * kernels[s][(i * z) & (size - 1)]);
      return sum / size - 1;
    }));
    const best = sizes.map((_, s) => Math.min(...errors.map((row) => row[s])));
    const worst = errors.map((row) => Math.max(...row.map((error, s) => error / best[s])));
    const chosen = candidates[worst.indexOf(Math.min(...worst))];
    vector.push(chosen);
    sizes.forEach((size, s) => {
      for (let i = 0; i < size; i++) products[s][i] *= 1 + weight * kernels[s][(i * chosen) & (size - 1)];
    });
  }
  return vector;
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) console.log(searchLattice(12).join(', '));
