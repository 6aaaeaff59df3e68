import { largestLattice, latticeVector } from './lattice.ts';
import { normalQuantile } from './normal-distribution.ts';
import { seededBits } from './seeded-random.ts';

const tables = new Map<string, Float64Array>();
const CACHED_TABLES = 64;
const columns = new Map<string, Float64Array>();
const CACHED_COLUMNS = 256;

/**
 * Seeded low-discrepancy standard normals: `points` rows of `dimension` values, row-major.
 * A randomly shifted rank-1 lattice through the normal quantile; rows come in pairs z, -z, so that odd moments
 * are exactly zero and a swap of the two sides of a joint meets the same draws.
 * Domain: `points` a power of two 4..32768, else RangeError; `dimension` >= 0 (columns after the 12th are seeded
 * pseudo-random). The table is shared and must not be written to.
 */
export function quasiNormal(dimension: number, points: number, seed: number): Float64Array {
  const key = `${dimension} ${points} ${seed}`;
  const known = tables.get(key);
  if (known !== undefined) return known;
  const own = quasiNormalColumns(dimension, points, seed);
  const table = new Float64Array(points * dimension);
  for (let column = 0; column < dimension; column++) {
    for (let i = 0; 2 * i < points; i++) {
      table[2 * i * dimension + column] = own[column][i];
      table[(2 * i + 1) * dimension + column] = -own[column][i];
    }
  }
  keep(tables, key, table, CACHED_TABLES);
  return table;
}

/**
 * The same by columns, each with the first value of every pair only. A column does not depend on how many there are.
 * The arrays are shared and must not be written to.
 */
export function quasiNormalColumns(dimension: number, points: number, seed: number): readonly Float64Array[] {
  const half = points / 2;
  if (!(half >= 2 && half <= largestLattice && Number.isInteger(Math.log2(half)))) {
    throw new RangeError(`points must be a power of two from 4 to ${2 * largestLattice}, not ${points}`);
  }
  return dimension <= latticeVector.length ? latticeColumns(dimension, half, seed) : mixedColumns(dimension, half, seed);
}

function latticeColumns(dimension: number, half: number, seed: number): readonly Float64Array[] {
  const shifts = seededBits(seed);
  return Array.from({ length: dimension }, (_, column) => {
    const shift = unitInterval(shifts());
    const key = `${column} ${half} ${seed}`;
    const known = columns.get(key);
    if (known !== undefined) return known;
    const made = latticeColumn(column, half, shift);
    keep(columns, key, made, CACHED_COLUMNS);
    return made;
  });
}

/** Columns beyond the lattice draw from the same stream as the shifts, in order. */
function mixedColumns(dimension: number, half: number, seed: number): readonly Float64Array[] {
  const bits = seededBits(seed);
  return Array.from({ length: dimension }, (_, column) => {
    const shift = unitInterval(bits());
    return column < latticeVector.length ? latticeColumn(column, half, shift) : Float64Array.from({ length: half }, () => normalQuantile(unitInterval(bits())));
  });
}

/** An odd multiple of 2^-33, which keeps every coordinate off 0, 1/2 and 1. */
const unitInterval = (bits: number): number => (bits + 0.5) / 2 ** 32;

function latticeColumn(column: number, half: number, shift: number): Float64Array {
  const out = new Float64Array(half);
  for (let i = 0; i < half; i++) {
    const u = ((i * latticeVector[column]) % half) / half + shift;
    out[i] = normalQuantile(u - Math.floor(u));
  }
  return out;
}

function keep(store: Map<string, Float64Array>, key: string, made: Float64Array, most: number): void {
  if (store.size >= most) store.delete(store.keys().next().value ?? '');
  store.set(key, made);
}
