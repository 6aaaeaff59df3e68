import type { HeightMap } from './height-map.ts';
import { solveSymmetric } from './solve-symmetric.ts';
import type { Steps } from './steps.ts';

export const forms = ['none', 'plane', 'second-order'] as const;
/** What the F-operation takes off: nothing, a plane, or a surface of second order. */
export type Form = (typeof forms)[number];

/** Powers of x and y of each term of the form. */
const termsOf: Readonly<Record<Form, readonly (readonly [x: number, y: number])[]>> = {
  none: [],
  plane: [[0, 0], [1, 0], [0, 1]],
  'second-order': [[0, 0], [1, 0], [0, 1], [2, 0], [1, 1], [0, 2]],
};

/** The grid runs from -1 to 1 on both axes, which keeps the equations well conditioned. */
const position = (index: number, count: number): number => (count < 2 ? 0 : (2 * index) / (count - 1) - 1);

/**
 * F-operation: takes the form fitted by least squares off the heights; a new grid, missing points stay missing.
 *
 * The fit is of vertical distances over the measured points alone. Where they do not determine it (a single row, too few points) only
 * the terms that they do determine are fitted. `none` returns a copy. Source: ISO 25178-2, F-operation; ISO 25178-3 for its choice.
 */
export function* removeFormSteps(map: HeightMap, form: Form): Steps<Float64Array> {
  const result = new Float64Array(map.values);
  if (form === 'none') return result;
  yield 0.1;
  const { width, height } = map;
  const terms = termsOf[form];
  const coefficients = fitTerms(map, terms);
  yield 0.6;
  const across = new Float64Array(width);
  for (let x = 0; x < width; x += 1) across[x] = position(x, width);
  for (let y = 0; y < height; y += 1) {
    const down = position(y, height);
    const [c0, c1, c2] = [0, 1, 2].map((power) => terms.reduce((sum, [px, py], index) => (px === power ? sum + coefficients[index] * down ** py : sum), 0));
    const row = y * width;
    for (let x = 0; x < width; x += 1) result[row + x] -= c0 + across[x] * (c1 + across[x] * c2);
  }
  return result;
}

/** Mean square height, about its mean, of the plane that fits a map best: what levelling would take off. */
export function tiltSquare(map: HeightMap): number {
  const [, across, down] = fitTerms(map, termsOf.plane);
  // Places from -1 to 1 have a mean square of 1/3 (n + 1) / (n - 1).
  const spread = (count: number): number => (count < 2 ? 0 : (count + 1) / (3 * (count - 1)));
  return across ** 2 * spread(map.width) + down ** 2 * spread(map.height);
}

function fitTerms({ width, height, values }: HeightMap, terms: readonly (readonly [number, number])[]): Float64Array {
  const size = terms.length;
  const normal = new Float64Array(size * size);
  const right = new Float64Array(size);
  // A height near the middle of all is taken off first, so that a large offset does not eat the digits of the fit.
  const offset = values.find((value) => !Number.isNaN(value)) ?? 0;
  const across = new Float64Array(width);
  for (let x = 0; x < width; x += 1) across[x] = position(x, width);
  const powers = new Float64Array(5);
  const products = new Float64Array(3);
  for (let y = 0; y < height; y += 1) {
    powers.fill(0);
    products.fill(0);
    for (let x = 0, index = y * width; x < width; x += 1, index += 1) {
      const z = values[index] - offset;
      if (Number.isNaN(z)) continue;
      const at = across[x];
      const square = at * at;
      powers[0] += 1;
      powers[1] += at;
      powers[2] += square;
      powers[3] += square * at;
      powers[4] += square * square;
      products[0] += z;
      products[1] += z * at;
      products[2] += z * square;
    }
    const down = position(y, height);
    for (let row = 0; row < size; row += 1) {
      right[row] += products[terms[row][0]] * down ** terms[row][1];
      for (let column = 0; column < size; column += 1) {
        normal[row * size + column] += powers[terms[row][0] + terms[column][0]] * down ** (terms[row][1] + terms[column][1]);
      }
    }
  }
  const solution = solveSymmetric(normal, right);
  solution[0] += offset;
  return solution;
}
