import { largestLattice, latticeVector } from './lattice.ts';
import { normalQuantile } from './normal-distribution.ts';
import { seededBits } from './seeded-random.ts';

const cache = new Map<string, Float64Array>();
const CACHED_TABLES = 64;

/**
 * Seeded low-discrepancy standard normals: `points` rows of `dimension` values, row-major.
 * A randomly shifted rank-1 lattice through the normal quantile; rows come in pairs z, -z, so that odd moments
 * are exactly zero and a swap of the two sides of a joint meets the same draws.
 * Domain: `points` a power of two 4..32768, else RangeError; `dimension` >= 0 (columns after the 12th are seeded
 * pseudo-random). The table is shared and must not be written to.
 */
export function quasiNormal(dimension: number, points: number, seed: number): Float64Array {
  const half = points / 2;
  if (!(half >= 2 && half <= largestLattice && Number.isInteger(Math.log2(half)))) {
    throw new RangeError(`points must be a power of two from 4 to ${2 * largestLattice}, not ${points}`);
  }
  const key = `${dimension} ${points} ${seed}`;
  const known = cache.get(key);
  if (known !== undefined) return known;
  const table = shiftedLattice(dimension, half, seed);
  if (cache.size >= CACHED_TABLES) cache.delete(cache.keys().next().value ?? '');
  cache.set(key, table);
  return table;
}

function shiftedLattice(dimension: number, half: number, seed: number): Float64Array {
  const bits = seededBits(seed);
  const table = new Float64Array(2 * half * dimension);
  for (let column = 0; column < dimension; column++) {
    const inLattice = column < latticeVector.length;
    // An odd multiple of 2^-33 keeps every coordinate off 0, 1/2 and 1.
    const shift = (bits() + 0.5) / 2 ** 32;
    for (let i = 0; i < half; i++) {
      const u = inLattice ? ((i * latticeVector[column]) % half) / half + shift : (bits() + 0.5) / 2 ** 32;
      const z = normalQuantile(u - Math.floor(u));
      table[2 * i * dimension + column] = z;
      table[(2 * i + 1) * dimension + column] = -z;
    }
  }
  return table;
}
