import type { HeightMap } from '../../../src/texture/index.ts';
import { gaussianFilterSteps, heightMap, runSteps } from '../../../src/texture/index.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';

/** A square height map of a function of place in mm. */
export function surfaceOf(points: number, spacingMm: number, height: (x: number, y: number) => number): HeightMap {
  return heightMap(points, points, [spacingMm, spacingMm], Float64Array.from({ length: points * points }, (_, index) =>
    height((index % points) * spacingMm, Math.floor(index / points) * spacingMm)));
}

/** A random grain: noise between two Gaussian filters, of this root mean square height; the same for the same seed. */
export function grain(points: number, spacingMm: number, sizeMm: number, sqUm: number, seed: number): HeightMap {
  const random = seededNumbers(seed);
  const noise = Float64Array.from({ length: points * points }, () => random() + random() + random() + random() - 2);
  const fine = runSteps(gaussianFilterSteps(noise, points, points, [spacingMm, spacingMm], sizeMm));
  const coarse = runSteps(gaussianFilterSteps(noise, points, points, [spacingMm, spacingMm], 3 * sizeMm));
  let squares = 0;
  fine.forEach((value, index) => {
    fine[index] = value - coarse[index]!;
    squares += fine[index]! ** 2;
  });
  const scale = sqUm / Math.sqrt(squares / fine.length);
  return heightMap(points, points, [spacingMm, spacingMm], fine.map((value) => value * scale));
}
