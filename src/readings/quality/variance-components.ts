import type { PlacedValue } from './placed-values.ts';
import { placedCells } from './placed-values.ts';

/** The part of the variance that one level of the hierarchy brings. */
export interface VarianceComponent {
  /** Estimate, units squared; 0 where the estimate came out below zero. */
  readonly variance: number;
  readonly sd: number;
  /** Degrees of freedom of the mean square that the estimate begins from. */
  readonly freedom: number;
  /** The unbiased estimate was below zero: nothing of this level can be told apart from the levels below it. */
  readonly belowZero: boolean;
}

/** How the readings of one specimen were laid out. */
export type SpreadDesign = 'single reading' | 'spots' | 'spots by rotations' | 'rotations within spots';

/** Where the spread of the readings of one specimen comes from; levels that the layout cannot tell are left out. */
export interface VarianceComponents {
  readonly design: SpreadDesign;
  /** From spot to spot. */
  readonly spot?: VarianceComponent;
  /** From rotation to rotation, the same on every spot where all spots were turned alike. */
  readonly rotation?: VarianceComponent;
  /** What a spot and a rotation make together that neither makes alone. */
  readonly spotByRotation?: VarianceComponent;
  /** Between readings at one rotation of one spot, a reading as it was recorded (a mean of flashes counts once). */
  readonly flash?: VarianceComponent;
  /** No place was read twice, so the lowest level present holds the scatter of the flashes as well. */
  readonly flashHidden: boolean;
}

/**
 * Variance components of the readings of one specimen: analysis of variance of unweighted cell means, method of moments.
 * Spots that were all read at the same rotations are a two-way random layout with interaction; other rotations are nested within
 * their spots; without rotations the spots are one-way. Exact for balanced layouts, where it is the classical analysis; for unequal numbers
 * of flashes the expectations of the mean squares still hold. S. R. Searle, G. Casella and C. E. McCulloch, Variance Components
 * (1992), chapters 3 to 5 (unweighted means after F. Yates, J. Am. Stat. Assoc. 29 (1934) 51).
 */
export function varianceComponents(values: readonly PlacedValue[]): VarianceComponents {
  const spots = [...placedCells(values).values()].map((rotations) =>
    new Map([...rotations].map(([rotation, cell]) => [rotation, summary(cell.map(({ value }) => value))])));
  const cells = spots.flatMap((rotations) => [...rotations.values()]);
  const flash = pooledWithin(cells);
  const within = flash?.variance ?? 0;
  const base = { flashHidden: flash === undefined, ...(flash === undefined ? {} : { flash: component(flash.variance, flash.freedom) }) };
  if (cells.length < 2) return { design: 'single reading', ...base };
  const names = new Set(spots.flatMap((rotations) => [...rotations.keys()]));
  const oneEach = spots.every((rotations) => rotations.size === 1);
  if (oneEach) {
    const mean = varianceOf(cells.map((cell) => cell.mean));
    return { design: 'spots', spot: component(mean.variance - within * meanInverse(cells), mean.freedom), ...base };
  }
  const crossed = spots.length > 1 && spots.every((rotations) => rotations.size === names.size);
  return { ...(crossed ? twoWay(spots, [...names], within) : nested(spots, within)), ...base };
}

interface Cell {
  readonly mean: number;
  readonly count: number;
  readonly squares: number;
}

type SpotCells = ReadonlyMap<number, Cell>;

const meanOf = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0) / numbers.length;

function summary(values: readonly number[]): Cell {
  const mean = meanOf(values);
  return { mean, count: values.length, squares: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) };
}

const varianceOf = (numbers: readonly number[]): { readonly variance: number; readonly freedom: number } =>
  ({ variance: summary(numbers).squares / (numbers.length - 1), freedom: numbers.length - 1 });

const component = (variance: number, freedom: number): VarianceComponent =>
  ({ variance: Math.max(0, variance), sd: Math.sqrt(Math.max(0, variance)), freedom, belowZero: variance < 0 });

function pooledWithin(cells: readonly Cell[]): { readonly variance: number; readonly freedom: number } | undefined {
  const freedom = cells.reduce((sum, { count }) => sum + count - 1, 0);
  return freedom === 0 ? undefined : { variance: cells.reduce((sum, { squares }) => sum + squares, 0) / freedom, freedom };
}

/** Mean of 1 / n over the cells: what of the flashes' variance is left in a cell's mean, on average. */
const meanInverse = (cells: readonly Cell[]): number => meanOf(cells.map(({ count }) => 1 / count));

function twoWay(spots: readonly SpotCells[], rotations: readonly number[], within: number): Pick<VarianceComponents, 'design' | 'spot' | 'rotation' | 'spotByRotation'> {
  const means = spots.map((cells) => rotations.map((rotation) => cells.get(rotation)?.mean ?? NaN));
  const bySpot = means.map(meanOf);
  const byRotation = rotations.map((_, column) => meanOf(means.map((row) => row[column])));
  const grand = meanOf(bySpot);
  const freedom = (spots.length - 1) * (rotations.length - 1);
  const residual = means.reduce((sum, row, spot) =>
    sum + row.reduce((inner, mean, column) => inner + (mean - bySpot[spot] - byRotation[column] + grand) ** 2, 0), 0) / freedom;
  const spot = varianceOf(bySpot);
  const rotation = varianceOf(byRotation);
  return {
    design: 'spots by rotations',
    spot: component(spot.variance - residual / rotations.length, spot.freedom),
    rotation: component(rotation.variance - residual / spots.length, rotation.freedom),
    spotByRotation: component(residual - within * meanInverse(spots.flatMap((cells) => [...cells.values()])), freedom),
  };
}

function nested(spots: readonly SpotCells[], within: number): Pick<VarianceComponents, 'design' | 'spot' | 'rotation'> {
  const perSpot = spots.map((cells) => [...cells.values()]);
  const summaries = perSpot.map((cells) => summary(cells.map(({ mean }) => mean)));
  const freedom = summaries.reduce((sum, { count }) => sum + count - 1, 0);
  const mean = summaries.reduce((sum, { squares }) => sum + squares, 0) / freedom;
  const turned = perSpot.filter((cells) => cells.length > 1);
  const weight = turned.reduce((sum, cells) => sum + meanInverse(cells) * (cells.length - 1), 0) / freedom;
  const rotation = mean - within * weight;
  const rotationComponent = { rotation: component(rotation, freedom) };
  if (spots.length < 2) return { design: 'rotations within spots', ...rotationComponent };
  const between = varianceOf(summaries.map((spot) => spot.mean));
  const belowSpot = meanOf(perSpot.map((cells) => (rotation + within * meanInverse(cells)) / cells.length));
  return { design: 'rotations within spots', spot: component(between.variance - belowSpot, between.freedom), ...rotationComponent };
}
