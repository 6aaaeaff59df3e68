import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import { difference } from '../../colour/index.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import { sampleCovariance } from '../sample-covariance.ts';
import { placedCells } from './placed-values.ts';

/** How far readings lie from their mean. */
export interface Repeatability {
  readonly readings: number;
  readonly mean: Lab;
  /** Mean colour difference from the mean: the average over the readings of the difference of each from the mean reading. */
  readonly mcdm: number;
  /** The largest of these differences. */
  readonly largest: number;
  /** Standard deviation (n - 1) of L*, a* and b*; 0 for a single reading. */
  readonly sd: Lab;
}

/**
 * Mean colour difference from the mean (MCDM) and standard deviations of colours under one light. At least one colour. The mean
 * is taken in CIELAB. ASTM E2214-20 (repeatability of instruments): MCDM and the multivariate view of it.
 */
export function repeatability(colours: readonly Lab[], formula: DifferenceFormula = { name: 'ciede2000' }): Repeatability {
  const mean = [0, 1, 2].map((axis) => colours.reduce((sum, colour) => sum + colour[axis], 0) / colours.length) as readonly number[] as Lab;
  const distances = colours.map((colour) => difference(formula, mean, colour));
  const covariance = sampleCovariance(colours);
  return {
    readings: colours.length, mean,
    mcdm: distances.reduce((sum, distance) => sum + distance, 0) / distances.length,
    largest: Math.max(...distances),
    sd: [Math.sqrt(covariance[0]), Math.sqrt(covariance[4]), Math.sqrt(covariance[8])],
  };
}

/** A colour with the place it was read at. */
export interface PlacedColour {
  readonly spot: string;
  readonly rotation: number;
  readonly lab: Lab;
}

/** Covariance between readings at one rotation of one spot, pooled over the places that were read more than once; undefined where none was. */
export function withinPlaceCovariance(colours: readonly PlacedColour[]): { readonly covariance: Matrix3; readonly freedom: number } | undefined {
  let freedom = 0;
  const sum = new Float64Array(9);
  for (const rotations of placedCells(colours).values()) {
    for (const cell of rotations.values()) {
      if (cell.length < 2) continue;
      freedom += cell.length - 1;
      sampleCovariance(cell.map(({ lab }) => lab)).forEach((entry, index) => { sum[index] += entry * (cell.length - 1); });
    }
  }
  if (freedom === 0) return undefined;
  return { covariance: Array.from(sum, (entry) => entry / freedom) as readonly number[] as Matrix3, freedom };
}
