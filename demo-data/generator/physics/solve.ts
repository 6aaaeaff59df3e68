import type { Lab } from '../../../src/quantities.ts';

export type Vector3 = readonly [number, number, number];

/** Solves three linear equations by Cramer's rule; rows of the matrix first. */
export function solve3(rows: readonly [Vector3, Vector3, Vector3], right: Vector3): Vector3 {
  const determinant = (a: Vector3, b: Vector3, c: Vector3): number =>
    a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  const whole = determinant(...rows);
  const withColumn = (column: number): number => {
    const replaced = rows.map((row, index) => row.map((value, at) => (at === column ? right[index] : value))) as unknown as [
      Vector3,
      Vector3,
      Vector3,
    ];
    return determinant(...replaced) / whole;
  };
  return [withColumn(0), withColumn(1), withColumn(2)];
}

/**
 * Finds the three parameters that give a wanted CIELAB: Newton's method with numerical derivatives, the step
 * halved while it does not come nearer. Throws where it ends further than 0.0005 from the colour.
 */
export function parametersFor(labAt: (parameters: Vector3) => Lab, wanted: Lab, start: Vector3): Vector3 {
  const miss = (lab: Lab): Vector3 => [wanted[0] - lab[0], wanted[1] - lab[1], wanted[2] - lab[2]];
  const size = (vector: Vector3): number => Math.hypot(...vector);
  let parameters = start;
  let gap = miss(labAt(parameters));
  for (let turn = 0; turn < 60 && size(gap) > 1e-7; turn += 1) {
    const slopes = [0, 1, 2].map((axis) => {
      const width = 1e-5;
      const moved = parameters.map((value, index) => (index === axis ? value + width : value)) as unknown as Vector3;
      const shifted = miss(labAt(moved));
      return gap.map((value, index) => (value - shifted[index]) / width) as unknown as Vector3;
    });
    const rows = [0, 1, 2].map((row) => [slopes[0][row], slopes[1][row], slopes[2][row]] as const) as unknown as [
      Vector3,
      Vector3,
      Vector3,
    ];
    const step = solve3(rows, gap);
    let scale = 1;
    let next = parameters;
    let nextGap = gap;
    for (let halving = 0; halving < 20; halving += 1) {
      next = parameters.map((value, index) => value + scale * step[index]) as unknown as Vector3;
      nextGap = miss(labAt(next));
      if (size(nextGap) < size(gap)) break;
      scale /= 2;
    }
    parameters = next;
    gap = nextGap;
  }
  if (!(size(gap) < 5e-4)) throw new RangeError(`no recipe gives L* a* b* ${wanted.join(' ')}: ${size(gap).toFixed(3)} short`);
  return parameters;
}
