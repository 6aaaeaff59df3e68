import type { Lab } from '../../../src/quantities.ts';
import type { Grid } from './grid.ts';
import { labOf, wavelengths } from './grid.ts';
import type { Vector3 } from './solve.ts';
import { solve3 } from './solve.ts';

const shapes: readonly ((nm: number) => number)[] = [
  () => 1,
  (nm) => 1 / (1 + Math.exp((nm - 492) / 24)),
  (nm) => Math.exp(-(((nm - 552) / 46) ** 2)),
];

/** Turns small changes of CIELAB at one spectrum into smooth relative changes of its reflectance: level, blue end and green middle. */
export function nudger(values: readonly number[], grid: Grid): (change: Lab) => number[] {
  const nm = wavelengths(grid);
  const base = labOf(values, grid);
  const width = 1e-4;
  const columns = shapes.map((shape) => {
    const moved = labOf(
      values.map((value, index) => value * (1 + width * shape(nm[index]))),
      grid,
    );
    return moved.map((value, axis) => (value - base[axis]) / width) as unknown as Vector3;
  });
  const rows = [0, 1, 2].map((row) => [columns[0][row], columns[1][row], columns[2][row]] as const) as unknown as [
    Vector3,
    Vector3,
    Vector3,
  ];
  return (change) => {
    const amounts = solve3(rows, [change[0], change[1], change[2]]);
    return values.map((value, index) => value * (1 + shapes.reduce((sum, shape, at) => sum + amounts[at] * shape(nm[index]), 0)));
  };
}
