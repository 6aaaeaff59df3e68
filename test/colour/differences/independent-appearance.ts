import type { Lab, Xyz } from '../../../src/quantities.ts';

/*
 * CIECAM02, CAM16 and their uniform space once more, written from the published equations (CIE 159:2004; Li et al.,
 * Color Research and Application 42, 703 (2017); Luo, Cui, Li, Color Research and Application 31, 320 (2006)) and in another way
 * than the program: linear systems by elimination instead of inverse matrices, hues as unit vectors instead of angles, powers by
 * logarithms, the constant 0.1 of the responses kept, and XYZ found from CIELAB by bisection of the forward function.
 */

type Rows = readonly (readonly [number, number, number])[];

const cat02: Rows = [[0.7328, 0.4296, -0.1624], [-0.7036, 1.6975, 0.0061], [0.0030, 0.0136, 0.9834]];
const cat16: Rows = [[0.401288, 0.650173, -0.051461], [-0.250268, 1.204414, 0.045854], [-0.002079, 0.048952, 0.953127]];
const hunt: Rows = [[0.38971, 0.68898, -0.07868], [-0.22981, 1.18340, 0.04641], [0, 0, 1]];

const times = (m: Rows, v: readonly number[]): number[] => m.map((row) => row.reduce((sum, entry, i) => sum + entry * v[i]!, 0));

/** Solution of m x = v by Gaussian elimination with row exchange. */
export function solve(m: Rows, v: readonly number[]): number[] {
  const work = m.map((row, i) => [...row, v[i]!]);
  for (let column = 0; column < 3; column++) {
    const size = (row: number): number => Math.abs(work[row]![column]!);
    const pivot = [0, 1, 2].slice(column).reduce((best, row) => (size(row) > size(best) ? row : best), column);
    [work[column], work[pivot]] = [work[pivot]!, work[column]!];
    for (let row = 0; row < 3; row++) {
      if (row === column) continue;
      const factor = work[row]![column]! / work[column]![column]!;
      work[row] = work[row]!.map((entry, i) => entry - factor * work[column]![i]!);
    }
  }
  return work.map((row, i) => row[3]! / row[i]!);
}

const power = (base: number, exponent: number): number =>
  (base === 0 ? 0 : Math.sign(base) * Math.exp(exponent * Math.log(Math.abs(base))));

export interface Correlates { readonly J: number; readonly C: number; readonly M: number; readonly hueVector: readonly [number, number] }

export function correlates(model: 'CIECAM02' | 'CAM16', xyz: Xyz, white: Xyz, LA: number, Yb: number): Correlates {
  const F = 1, c = 0.69, Nc = 1;
  const sharpen = model === 'CAM16' ? cat16 : cat02;
  const k = 1 / (5 * LA + 1);
  const FL = (k ** 4 * 5 * LA) / 5 + ((1 - k ** 4) ** 2 * (5 * LA) ** (1 / 3)) / 10;
  const n = Yb / white[1];
  const Nbb = 0.725 / n ** 0.2;
  const z = 1.48 + n ** 0.5;
  const D = F - (F / 3.6) * Math.exp(-(LA + 42) / 92);
  const whiteSharp = times(sharpen, white);
  const respond = (v: Xyz): number[] => {
    const adapted = times(sharpen, v).map((value, i) => ((D * 100) / whiteSharp[i]!) * (white[1] / 100) * value + (1 - D) * value);
    const cones = model === 'CAM16' ? adapted : times(hunt, solve(cat02, adapted));
    return cones.map((cone) => {
      const raised = power((FL * Math.abs(cone)) / 100, 0.42);
      return Math.sign(cone) * (400 - (400 * 27.13) / (raised + 27.13)) + 0.1;
    });
  };
  const [r, g, b] = respond(xyz) as [number, number, number];
  const [rw, gw, bw] = respond(white) as [number, number, number];
  const red = (11 * r - 12 * g + b) / 11;
  const yellow = (r + g - 2 * b) / 9;
  const size = Math.sqrt(red ** 2 + yellow ** 2);
  const hueVector: [number, number] = size === 0 ? [1, 0] : [red / size, yellow / size];
  const e = 0.25 * (hueVector[0] * Math.cos(2) - hueVector[1] * Math.sin(2) + 3.8);
  const A = (2 * r + g + 0.05 * b - 0.305) * Nbb;
  const Aw = (2 * rw + gw + 0.05 * bw - 0.305) * Nbb;
  const J = 100 * power(A / Aw, c * z);
  const t = ((50000 / 13) * Nc * Nbb * e * size) / (r + g + (21 * b) / 20);
  const C = power(t, 0.9) * power(J / 100, 0.5) * power(1.64 - 0.29 ** n, 0.73);
  return { J, C, M: C * power(FL, 0.25), hueVector };
}

/** Inverse of the CIELAB function by bisection of its forward form. */
function ratioOf(f: number): number {
  const forward = (t: number): number => (t > (6 / 29) ** 3 ? Math.pow(t, 1 / 3) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  let low = -1;
  let high = 8;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (forward(middle) < f) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export function uniformDifference(model: 'CIECAM02' | 'CAM16', pair: readonly [Lab, Lab], white: Xyz, LA: number, Yb: number): number {
  const [first, second] = pair.map(([L, a, b]) => {
    const fy = (L + 16) / 116;
    const xyz: Xyz = [white[0] * ratioOf(fy + a / 500), white[1] * ratioOf(fy), white[2] * ratioOf(fy - b / 200)];
    const { J, M, hueVector } = correlates(model, xyz, white, LA, Yb);
    const reach = (Math.sign(M) * Math.log(1 + 0.0228 * Math.abs(M))) / 0.0228;
    return [(1.7 * J) / (1 + 0.007 * J), reach * hueVector[0], reach * hueVector[1]];
  }) as [number[], number[]];
  return Math.sqrt(first.reduce((sum, value, i) => sum + (value - second[i]!) ** 2, 0));
}
