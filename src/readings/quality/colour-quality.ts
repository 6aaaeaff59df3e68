import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import { colourSample } from '../colour-sample.ts';
import type { ColourSample, JudgedLight, MasterLab } from '../colour-sample.ts';
import type { ColourReading } from '../reading.ts';
import type { ReadingGroup } from '../reading-groups.ts';
import { sampleCovariance } from '../sample-covariance.ts';
import { spotMeans } from '../spots.ts';
import type { OutlierSuggestion } from './outlier-suggestions.ts';
import { suggestOutliers } from './outlier-suggestions.ts';
import type { PlacedColour, Repeatability } from './repeatability.ts';
import { repeatability, withinPlaceCovariance } from './repeatability.ts';
import type { VarianceComponents } from './variance-components.ts';
import { varianceComponents } from './variance-components.ts';

/** How good the colour readings of one specimen under one set of conditions are, under one light. */
export interface ColourQuality {
  readonly light: string;
  readonly observer: 2 | 10;
  readonly basis: ColourSample['basis'];
  readonly readings: number;
  readonly spots: number;
  readonly rotations: number;
  /** Of all readings from their mean. */
  readonly all: Repeatability;
  /** Standard deviation of the spots' means in L*, a* and b*; 0 for one spot. */
  readonly spotSd: Lab;
  /** Covariance of the spots' means, not divided by their number; zero for one spot. */
  readonly spotCovariance: Matrix3;
  /** Of L*, a* and b*, in this order. */
  readonly components: readonly [VarianceComponents, VarianceComponents, VarianceComponents];
  /** Covariance of repeated readings at one place; undefined where no place was read twice. */
  readonly repeatCovariance: Matrix3 | undefined;
  /** Readings that stand out, with the reading itself. */
  readonly outliers: readonly (OutlierSuggestion & { readonly reading: ColourReading })[];
}

const axisNames = ['L*', 'a*', 'b*'] as const;

/**
 * Quality of a group of colour readings under one light. `readingSd` is the spread of L*, a* and b* that the material is assumed to have, worth
 * `priorReadings` when looking for outliers. Readings already marked as outliers are left out. Undefined where the readings say
 * nothing under the light.
 */
export function colourQuality(
  group: ReadingGroup, light: JudgedLight, readingSd: readonly [number, number, number], formula: DifferenceFormula, masterLab?: MasterLab,
  priorReadings?: number,
): ColourQuality | undefined {
  const sample = colourSample(group, [light], masterLab);
  if (sample === undefined) return undefined;
  const placed = group.readings.flatMap((reading): (PlacedColour & { readonly reading: ColourReading })[] => {
    if (!isOfSample(reading, sample)) return [];
    const lab = colourSample({ ...group, readings: [reading] }, [light], masterLab)?.means[0];
    return lab === undefined ? [] : [{ spot: reading.spot.name, rotation: reading.rotationDeg ?? 0, lab, reading }];
  });
  if (placed.length === 0) return undefined;
  const labOf = new Map(placed.map(({ reading, lab }) => [reading, lab]));
  const spots = spotMeans(placed.map(({ reading }) => reading), (reading) => labOf.get(reading) ?? [NaN, NaN, NaN]);
  const spotCovariance = Array.from(sampleCovariance(spots)) as readonly number[] as Matrix3;
  const onAxis = (axis: number): VarianceComponents =>
    varianceComponents(placed.map(({ spot, rotation, lab }) => ({ spot, rotation, value: lab[axis] })));
  return {
    light: light.name, observer: light.observer, basis: sample.basis,
    readings: placed.length, spots: spots.length, rotations: new Set(placed.map(({ rotation }) => rotation)).size,
    all: repeatability(placed.map(({ lab }) => lab), formula),
    spotSd: [Math.sqrt(spotCovariance[0]), Math.sqrt(spotCovariance[4]), Math.sqrt(spotCovariance[8])],
    spotCovariance,
    components: [onAxis(0), onAxis(1), onAxis(2)],
    repeatCovariance: withinPlaceCovariance(placed)?.covariance,
    outliers: suggestOutliers(
      placed.map(({ rotation, lab }) => ({ rotation, vector: lab })), axisNames.map((name, axis) => ({ name, assumedSd: readingSd[axis] })), priorReadings,
    )
      .map((found) => ({ ...found, reading: placed[found.index].reading })),
  };
}

/** Whether a reading is of the kind, and on the wavelengths, that the sample was made from. */
function isOfSample(reading: ColourReading, { basis, spectrum }: ColourSample): boolean {
  if (reading.quantity !== basis) return false;
  return reading.quantity !== 'spectrum' || spectrum === undefined
    || (reading.startNm === spectrum.startNm && reading.stepNm === spectrum.stepNm && reading.values.length === spectrum.values.length);
}
