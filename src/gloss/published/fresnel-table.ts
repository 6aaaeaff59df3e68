import { derived } from '../../colour/value-origin.ts';

/** One row of the table of polished surfaces: reflectance at angles of incidence and gloss at 20, 60 and 85 degrees. */
export interface FresnelRow {
  readonly n: number;
  /** [angle in degrees, reflectance printed to 6 decimals]. */
  readonly reflectance: readonly (readonly [number, number])[];
  readonly gloss: Readonly<Record<20 | 60 | 85, number>>;
}

/** Computed from Fresnel's equations by another program than this one, reflectance to 6 and gloss to 2 decimals. */
export const fresnelTableOrigin = derived('Fresnel equations, ISO 2813 reference n = 1.567 (computed independently)');

type SixAngles = readonly [number, number, number, number, number, number];

const row = (n: number, r: SixAngles, g: readonly [number, number, number]): FresnelRow => ({
  n,
  reflectance: [[0, r[0]], [8, r[1]], [20, r[2]], [45, r[3]], [60, r[4]], [85, r[5]]],
  gloss: { 20: g[0], 60: g[1], 85: g[2] },
});

export const fresnelTable: readonly FresnelRow[] = [
  row(1.46, [0.034966, 0.034972, 0.035215, 0.044694, 0.082454, 0.607860], [71.75, 82.41, 98.18]),
  row(1.49, [0.038725, 0.038731, 0.038987, 0.048845, 0.087521, 0.611656], [79.44, 87.47, 98.79]),
  row(1.50, [0.040000, 0.040006, 0.040266, 0.050240, 0.089187, 0.612800], [82.05, 89.14, 98.97]),
  row(1.54, [0.045198, 0.045205, 0.045479, 0.055869, 0.095734, 0.616845], [92.67, 95.68, 99.63]),
  row(1.567, [0.048788, 0.048795, 0.049078, 0.059708, 0.100056, 0.619148], [100, 100, 100]),
  row(1.59, [0.051892, 0.051900, 0.052189, 0.062998, 0.103679, 0.620873], [106.34, 103.62, 100.28]),
  row(1.60, [0.053254, 0.053262, 0.053554, 0.064434, 0.105238, 0.621561], [109.12, 105.18, 100.39]),
];
