import { quasiNormalColumns } from '../../readings/quasi-normal.ts';

/** Coordinates that two parts scatter in: three of colour each. */
export const scatterDimension = 6;
/** Directions in all, powers of two: those that count, and those that are enough to look where to count. */
const counts = { fine: 2048, coarse: 256 } as const;

export type Fineness = keyof typeof counts;

const made = new Map<Fineness, Float64Array>();

/** Unit vectors in six dimensions, row after row, spread evenly and in opposite pairs. Seeded; shared and not to be written to. */
export function scatterDirections(fineness: Fineness): Float64Array {
  const known = made.get(fineness);
  if (known !== undefined) return known;
  const count = counts[fineness];
  const columns = quasiNormalColumns(scatterDimension, count, 1);
  const out = new Float64Array(count * scatterDimension);
  for (let pair = 0; pair < count / 2; pair++) {
    let square = 0;
    for (const column of columns) square += column[pair] * column[pair];
    const length = Math.sqrt(square);
    columns.forEach((column, axis) => {
      out[2 * pair * scatterDimension + axis] = column[pair] / length;
      out[(2 * pair + 1) * scatterDimension + axis] = -column[pair] / length;
    });
  }
  made.set(fineness, out);
  return out;
}

/** Share of a six-dimensional standard normal cloud that lies beyond a distance of its middle: chi-square with six degrees of freedom in closed form. */
export function shareBeyond(distance: number): number {
  const half = 0.5 * distance * distance;
  return half > 700 ? 0 : Math.exp(-half) * (1 + half + 0.5 * half * half);
}
