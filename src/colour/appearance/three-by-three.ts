import type { Matrix3, Xyz } from '../../quantities.ts';

/** Matrix times column vector. */
export const transform = (m: Matrix3, v: Xyz): Xyz => [
  m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
  m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
  m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
];

/** Matrix product, left times right. */
export function multiply(left: Matrix3, right: Matrix3): Matrix3 {
  const entry = (row: number, column: number): number =>
    left[row * 3]! * right[column]! + left[row * 3 + 1]! * right[3 + column]! + left[row * 3 + 2]! * right[6 + column]!;
  return [
    entry(0, 0), entry(0, 1), entry(0, 2), entry(1, 0), entry(1, 1), entry(1, 2), entry(2, 0), entry(2, 1), entry(2, 2),
  ];
}

/** Inverse by cofactors; of a singular matrix all entries are not finite. */
export function inverse(m: Matrix3): Matrix3 {
  const [a, b, c, d, e, f, g, h, i] = m;
  const first = e * i - f * h;
  const second = f * g - d * i;
  const third = d * h - e * g;
  const scale = 1 / (a * first + b * second + c * third);
  return [
    first * scale, (c * h - b * i) * scale, (b * f - c * e) * scale,
    second * scale, (a * i - c * g) * scale, (c * d - a * f) * scale,
    third * scale, (b * g - a * h) * scale, (a * e - b * d) * scale,
  ];
}
