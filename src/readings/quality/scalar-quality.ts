import type { Reading } from '../reading.ts';
import { meanOfSpots, spotMeans } from '../spots.ts';
import { sampleCovariance } from '../sample-covariance.ts';
import type { OutlierSuggestion } from './outlier-suggestions.ts';
import { suggestOutliers } from './outlier-suggestions.ts';
import type { VarianceComponents } from './variance-components.ts';
import { varianceComponents } from './variance-components.ts';

/** How good readings of one number are: gloss in GU, a size of texture as its logarithm. */
export interface ScalarQuality<R extends Reading = Reading> {
  readonly readings: number;
  readonly spots: number;
  readonly mean: number;
  /** Standard deviation of all readings (n - 1); 0 for one. */
  readonly sd: number;
  /** Standard deviation of the spots' means; 0 for one spot. */
  readonly spotSd: number;
  readonly components: VarianceComponents;
  /** Standard deviation of repeated readings at one place; undefined where no place was read twice. */
  readonly repeatSd: number | undefined;
  readonly outliers: readonly (OutlierSuggestion & { readonly reading: R })[];
}

/** A reading of one number. `rotation` stands for the direction too. */
export interface ScalarReading<R extends Reading> {
  readonly reading: R;
  readonly rotation: number;
  readonly value: number;
}

/**
 * Quality of readings of one number on one specimen, at least one. `assumedSd` is the spread of one reading that the material is assumed to
 * have, in the unit of the values, and `priorReadings` what it is worth when looking for outliers; `name` names the number.
 */
export function scalarQuality<R extends Reading>(
  readings: readonly ScalarReading<R>[], name: string, assumedSd: number, priorReadings?: number,
): ScalarQuality<R> {
  const spots = spotMeans(
    readings.map(({ reading, rotation, value }) => ({ spot: reading.spot, averagedFrom: reading.averagedFrom, rotationDeg: rotation, value })),
    ({ value }) => [value],
  );
  const components = varianceComponents(readings.map(({ reading, rotation, value }) => ({ spot: reading.spot.name, rotation, value })));
  return {
    readings: readings.length,
    spots: spots.length,
    mean: meanOfSpots(spots)[0],
    sd: Math.sqrt(sampleCovariance(readings.map(({ value }) => [value]))[0]),
    spotSd: Math.sqrt(sampleCovariance(spots)[0]),
    components,
    repeatSd: components.flash?.sd,
    outliers: suggestOutliers(readings.map(({ rotation, value }) => ({ rotation, vector: [value] })), [{ name, assumedSd }], priorReadings)
      .map((found) => ({ ...found, reading: readings[found.index].reading })),
  };
}
