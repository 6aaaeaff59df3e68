type Triple = readonly [number, number, number];

/** Matrix times vector. */
export const transform = (m: readonly number[], v: Triple): Triple => [
  m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
  m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
  m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
];

/** Inverse of a row-major 3 x 3 matrix by cofactors; not finite for a singular one. */
export function inverse3(m: readonly number[]): readonly number[] {
  const minor = (a: number, b: number, c: number, d: number): number => m[a] * m[d] - m[b] * m[c];
  const first = minor(4, 5, 7, 8);
  const second = -minor(3, 5, 6, 8);
  const third = minor(3, 4, 6, 7);
  const determinant = m[0] * first + m[1] * second + m[2] * third;
  return [
    first, -minor(1, 2, 7, 8), minor(1, 2, 4, 5),
    second, minor(0, 2, 6, 8), -minor(0, 2, 3, 5),
    third, -minor(0, 1, 6, 7), minor(0, 1, 3, 4),
  ].map((cofactor) => cofactor / determinant);
}
