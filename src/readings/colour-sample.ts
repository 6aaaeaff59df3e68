import { correctBandpass, spectrumToXyz, weightsFor, xyzToLab } from '../colour/index.ts';
import type { Light, Observer, Spectrum } from '../colour/index.ts';
import type { Lab } from '../quantities.ts';
import type { CielabReading, DifferenceReading, SpectrumReading } from './reading.ts';
import type { ReadingGroup } from './reading-groups.ts';
import { sampleCovariance } from './sample-covariance.ts';
import { meanOfSpots, spotMeans } from './spots.ts';

/** A light to judge under, by the name readings and rule books use, with its observer. */
export interface JudgedLight {
  readonly name: string;
  readonly light: Light;
  readonly observer: Observer;
}

/** Absolute CIELAB of a master under a light, or nothing where it has none. */
export type MasterLab = (master: string, light: string, observer: Observer) => Lab | undefined;

/** What one side brings to a comparison under several lights. */
export interface ColourSample {
  readonly basis: 'spectrum' | 'cielab' | 'difference';
  readonly lights: readonly JudgedLight[];
  /** Mean colour under each light; undefined where the readings say nothing about it. */
  readonly means: readonly (Lab | undefined)[];
  /** Mean spectrum of the spots. */
  readonly spectrum: Spectrum | undefined;
  readonly spots: number;
  /**
   * Row-major 3K x 3K covariance from spot to spot, not divided by their number, lights in order; rows of a light without
   * data are zero, and all are zero below two spots.
   */
  readonly covariance: Float64Array;
  /** Readings of the group that were not used: another kind of data, another grid of wavelengths, an unknown master. */
  readonly unused: number;
}

/**
 * Mean colour and spread of a group of readings under several lights.
 * Spectra go before CIELAB, CIELAB before differences; kinds are never mixed. Spectra on several grids: the grid with the most
 * spots (ties: the finer) is used and the rest counted as unused, since no interpolation can make the two passbands alike. The
 * mean is the colour of the mean spectrum; the covariance is that of the colours of the spots. Spectra are corrected
 * for bandpass (ASTM E2729) only where a reading says that it is not. CIELAB readings and differences count under their own
 * light and observer only; where a group holds several, under each that is asked for with the spots it has, the spread
 * being that of the light with the most. Undefined where nothing can be used.
 */
export function colourSample(group: ReadingGroup, lights: readonly JudgedLight[], masterLab: MasterLab = () => undefined): ColourSample | undefined {
  const spectra = group.readings.filter((reading): reading is SpectrumReading => reading.quantity === 'spectrum');
  if (spectra.length > 0) return spectralSample(group, spectra, lights);
  const absolute = group.readings.filter((reading): reading is CielabReading => reading.quantity === 'cielab');
  if (absolute.length > 0) return tristimulusSample(group, 'cielab', absolute, (reading) => reading.lab, lights);
  const relative = group.readings.filter((reading): reading is DifferenceReading => reading.quantity === 'difference');
  const resolved = new Map(relative.flatMap((reading) => {
    const master = masterLab(reading.master, reading.light, reading.observer);
    return master === undefined ? [] : [[reading, sum(master, reading.difference)] as const];
  }));
  return tristimulusSample(group, 'difference', [...resolved.keys()], (reading) => resolved.get(reading) ?? [NaN, NaN, NaN], lights);
}

const spotNames = (readings: readonly (CielabReading | DifferenceReading)[]): string =>
  [...new Set(readings.map((reading) => reading.spot.name))].join('|');

const sum = (p: Lab, q: Lab): Lab => [p[0] + q[0], p[1] + q[1], p[2] + q[2]];

/** The spectra of a group that are used, averaged to spots: the same for every light, so made once for each group. */
interface SpotSpectra {
  readonly startNm: number;
  readonly stepNm: number;
  readonly spots: readonly number[][];
  readonly mean: readonly number[];
  readonly used: number;
}

const spotSpectraOf = new WeakMap<ReadingGroup, SpotSpectra>();

function spotSpectra(group: ReadingGroup, spectra: readonly SpectrumReading[]): SpotSpectra {
  const known = spotSpectraOf.get(group);
  if (known !== undefined) return known;
  const grids = new Map<string, SpectrumReading[]>();
  for (const reading of spectra) {
    const key = `${reading.startNm} ${reading.stepNm} ${reading.values.length}`;
    const own = grids.get(key);
    if (own === undefined) grids.set(key, [reading]);
    else own.push(reading);
  }
  const spotCount = (list: readonly SpectrumReading[]): number => new Set(list.map((reading) => reading.spot.name)).size;
  const used = [...grids.values()].sort((p, q) => spotCount(q) - spotCount(p) || p[0].stepNm - q[0].stepNm)[0];
  const { startNm, stepNm } = used[0];
  const spots = spotMeans(used, (reading) => (reading.bandpassCorrected === false ? correctBandpass(reading.values) : reading.values));
  const made = { startNm, stepNm, spots, mean: meanOfSpots(spots), used: used.length };
  spotSpectraOf.set(group, made);
  return made;
}

function spectralSample(group: ReadingGroup, spectra: readonly SpectrumReading[], lights: readonly JudgedLight[]): ColourSample {
  const { startNm, stepNm, spots, mean, used } = spotSpectra(group, spectra);
  const weights = lights.map(({ light, observer }) => weightsFor(light, observer, startNm, stepNm, mean.length));
  const labOf = (values: ArrayLike<number>, index: number): Lab => xyzToLab(spectrumToXyz(values, weights[index]), weights[index].white);
  return {
    basis: 'spectrum',
    lights,
    means: lights.map((_, index) => labOf(mean, index)),
    spectrum: { startNm, stepNm, values: mean },
    spots: spots.length,
    covariance: sampleCovariance(spots.map((values) => lights.flatMap((_, index) => labOf(values, index)))),
    unused: group.readings.length - used,
  };
}

function tristimulusSample<R extends CielabReading | DifferenceReading>(
  group: ReadingGroup, basis: 'cielab' | 'difference', readings: readonly R[], labOf: (reading: R) => Lab, lights: readonly JudgedLight[],
): ColourSample | undefined {
  const perLight = lights.map(({ name, observer }) => {
    const own = readings.filter((reading) => reading.light === name && reading.observer === observer);
    return { own, spots: own.length === 0 ? [] : spotMeans(own, labOf) };
  });
  const most = Math.max(0, ...perLight.map(({ spots }) => spots.length));
  if (most === 0) return undefined;
  const used = new Set(perLight.flatMap(({ own }) => own));
  return {
    basis,
    lights,
    means: perLight.map(({ spots }): Lab | undefined => {
      if (spots.length === 0) return undefined;
      const [L, a, b] = meanOfSpots(spots);
      return [L, a, b];
    }),
    spectrum: undefined,
    spots: most,
    covariance: stackedSpread(perLight.map(({ own, spots }) => ({ names: spotNames(own), spots }))),
    unused: group.readings.length - used.size,
  };
}

/** Joint covariance where every light with data has the same spots, else each light by itself with nothing known between them. */
function stackedSpread(perLight: readonly { readonly names: string; readonly spots: readonly number[][] }[]): Float64Array {
  const present = perLight.filter(({ spots }) => spots.length > 0);
  if (present.every(({ names }) => names === present[0].names)) {
    return sampleCovariance(present[0].spots.map((_, spot) => perLight.flatMap(({ spots }) => spots[spot] ?? [0, 0, 0])));
  }
  const size = 3 * perLight.length;
  const covariance = new Float64Array(size * size);
  perLight.forEach(({ spots }, light) => {
    sampleCovariance(spots).forEach((entry, index) => {
      covariance[(3 * light + Math.floor(index / 3)) * size + 3 * light + (index % 3)] = entry;
    });
  });
  return covariance;
}
