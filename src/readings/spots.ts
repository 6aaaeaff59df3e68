/** A reading that stands for one flash or an average of several, somewhere on a specimen. */
interface Placed {
  readonly spot: { readonly name: string };
  readonly rotationDeg?: number;
  readonly averagedFrom?: number;
}

/** Mean of several vectors of one length by weights. */
function weightedMean(vectors: readonly ArrayLike<number>[], weights: readonly number[]): number[] {
  const size = vectors[0].length;
  const mean = new Array<number>(size).fill(0);
  let total = 0;
  for (let k = 0; k < vectors.length; k++) {
    const vector = vectors[k];
    const weight = weights[k];
    total += weight;
    for (let i = 0; i < size; i++) mean[i] += weight * vector[i];
  }
  for (let i = 0; i < size; i++) mean[i] /= total;
  return mean;
}

/**
 * One vector for every spot, in the order the spots first occur.
 * Flashes at one rotation of a spot are averaged by the number of flashes each stands for, then the rotations equally, so
 * that a direction measured twice does not weigh double.
 */
export function spotMeans<R extends Placed>(readings: readonly R[], vectorOf: (reading: R) => ArrayLike<number>): number[][] {
  const spots = new Map<string, Map<number, R[]>>();
  for (const reading of readings) {
    const rotations = spots.get(reading.spot.name) ?? new Map<number, R[]>();
    spots.set(reading.spot.name, rotations);
    const rotation = reading.rotationDeg ?? 0;
    rotations.set(rotation, [...(rotations.get(rotation) ?? []), reading]);
  }
  return [...spots.values()].map((rotations) => {
    const perRotation = [...rotations.values()].map((list) =>
      weightedMean(list.map(vectorOf), list.map((reading) => Math.max(1, reading.averagedFrom ?? 1))));
    return weightedMean(perRotation, perRotation.map(() => 1));
  });
}

/** Mean of the spots. */
export const meanOfSpots = (spots: readonly ArrayLike<number>[]): number[] => weightedMean(spots, spots.map(() => 1));

/**
 * How many rotations a spot was read at, on average over the spots: 1 where nothing was rotated. Rotations of one spot are readings
 * of their own, so the spread that is assumed for one reading counts over them before it counts over the spots.
 */
export function rotationsPerSpot(readings: readonly Placed[]): number {
  const spots = new Map<string, Set<number>>();
  for (const reading of readings) spots.set(reading.spot.name, (spots.get(reading.spot.name) ?? new Set()).add(reading.rotationDeg ?? 0));
  const total = [...spots.values()].reduce((sum, rotations) => sum + rotations.size, 0);
  return spots.size === 0 ? 1 : total / spots.size;
}
