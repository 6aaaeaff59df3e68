import { difference, lightByName } from '../../colour/index.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import { assumedLight, assumedObserver } from '../lab-carrier.ts';
import type { Conditions, GeometryClass, GlossAngle } from '../reading.ts';
import type { InstrumentComparison } from './compare-instruments.ts';
import { compareInstruments } from './compare-instruments.ts';
import type { ReadTile, TileMean } from './tile-readings.ts';
import { tileColours, tileGlosses, tileTextures } from './tile-readings.ts';

/** One instrument against the mean of all, in colour. Differences are instrument minus mean, under D65 and the 10 degree observer. */
export interface ColourDeviation {
  readonly instrument: string;
  /** By tile: deviation in L*, a*, b*, and its size in CIEDE2000. */
  readonly tiles: readonly { readonly tile: string; readonly deviation: Lab; readonly size: number }[];
  readonly mean: Lab;
  readonly meanSize: number;
  readonly largestSize: number;
  /** Of the instrument's deviation, bias included. */
  readonly covariance: Matrix3;
  /** The tiles cannot tell some direction from zero; it was given one standard error. */
  readonly raised: boolean;
}

/** Two instruments side by side, second minus first. */
export interface ColourPairing {
  readonly first: string;
  readonly second: string;
  readonly mean: Lab;
  /** Mean and largest CIEDE2000 over the tiles. */
  readonly meanSize: number;
  readonly largestSize: number;
  readonly covarianceOfDifference: Matrix3;
  readonly shared: Matrix3;
}

/** Colour agreement within one class of geometry. */
export interface ColourAgreement extends Pick<InstrumentComparison, 'tiles' | 'tilesLeftOut' | 'instrumentsLeftOut'> {
  readonly geometryClass: GeometryClass;
  /** Empty where there was nobody to compare with, or fewer than three tiles. */
  readonly instruments: readonly ColourDeviation[];
  readonly pairs: readonly ColourPairing[];
}

/** Agreement in one number: gloss in GU at an angle, texture as the logarithm of Sa. */
export interface ScalarAgreement extends Pick<InstrumentComparison, 'tiles' | 'tilesLeftOut' | 'instrumentsLeftOut'> {
  readonly angle?: GlossAngle;
  readonly instruments: readonly {
    readonly instrument: string;
    readonly tiles: readonly { readonly tile: string; readonly deviation: number }[];
    readonly mean: number;
    readonly sd: number;
    readonly raised: boolean;
  }[];
}

/** What a set of tiles says about the instruments that read it. */
export interface AgreementStudy {
  readonly colour: readonly ColourAgreement[];
  readonly gloss: readonly ScalarAgreement[];
  readonly texture: ScalarAgreement | undefined;
}

/**
 * How well instruments agree on a shared set of tiles: colour by class of geometry, gloss by angle, texture by Sa. Estimator as documented at
 * `estimateAgreement`. ASTM E2214-20 asks for inter-instrument agreement from a set of stable tiles and recommends the multivariate view.
 */
export function agreementStudy(tiles: readonly ReadTile[], conditions: ReadonlyMap<string, Conditions>): AgreementStudy {
  const light = lightByName(assumedLight);
  const colours = light === undefined ? new Map<GeometryClass, readonly TileMean[]>()
    : tileColours(tiles, conditions, { name: assumedLight, light, observer: assumedObserver });
  const textures = tileTextures(tiles, conditions);
  return {
    colour: [...colours].map(([geometryClass, means]) => colourAgreement(geometryClass, compareInstruments(means))),
    gloss: [...tileGlosses(tiles, conditions)].sort(([p], [q]) => p - q).map(([angle, means]) => ({ angle, ...scalarAgreement(compareInstruments(means)) })),
    texture: textures.length === 0 ? undefined : scalarAgreement(compareInstruments(textures)),
  };
}

const asMatrix = (matrix: Float64Array): Matrix3 => Array.from(matrix) as readonly number[] as Matrix3;
const asLab = (vector: readonly number[]): Lab => [vector[0], vector[1], vector[2]];
const meanOf = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
const meanVector = (vectors: readonly (readonly number[])[]): Lab => [0, 1, 2].map((axis) => meanOf(vectors.map((vector) => vector[axis]))) as readonly number[] as Lab;
const formula = { name: 'ciede2000' } as const;

function colourAgreement(geometryClass: GeometryClass, comparison: InstrumentComparison): ColourAgreement {
  const { instruments, tiles, tilesLeftOut, instrumentsLeftOut, means, estimate } = comparison;
  const base = { geometryClass, tiles, tilesLeftOut, instrumentsLeftOut };
  if (estimate === undefined) return { ...base, instruments: [], pairs: [] };
  const centres = tiles.map((_, tile) => meanVector(means.map((own) => own[tile])));
  const sizes = (own: readonly (readonly number[])[], others: readonly Lab[]): number[] => own.map((vector, tile) => difference(formula, others[tile], asLab(vector)));
  return {
    ...base,
    instruments: instruments.map((instrument, index) => {
      const size = sizes(means[index], centres);
      return {
        instrument,
        tiles: tiles.map((tile, at) => ({ tile, deviation: asLab(estimate.deviations[index][at]), size: size[at] })),
        mean: meanVector(estimate.deviations[index]), meanSize: meanOf(size), largestSize: Math.max(...size),
        covariance: asMatrix(estimate.covariances[index]), raised: estimate.raised[index],
      };
    }),
    pairs: instruments.flatMap((first, i) => instruments.slice(i + 1).map((second, offset): ColourPairing => {
      const j = i + 1 + offset;
      const size = sizes(means[j], means[i].map(asLab));
      return {
        first, second, meanSize: meanOf(size), largestSize: Math.max(...size),
        mean: meanVector(means[j].map((vector, tile) => vector.map((value, axis) => value - means[i][tile][axis]))),
        covarianceOfDifference: asMatrix(estimate.ofDifference[i][j]), shared: asMatrix(estimate.shared[i][j]),
      };
    })),
  };
}

function scalarAgreement({ instruments, tiles, tilesLeftOut, instrumentsLeftOut, estimate }: InstrumentComparison): ScalarAgreement {
  return {
    tiles, tilesLeftOut, instrumentsLeftOut,
    instruments: estimate === undefined ? [] : instruments.map((instrument, index) => ({
      instrument,
      tiles: tiles.map((tile, at) => ({ tile, deviation: estimate.deviations[index][at][0] })),
      mean: meanOf(estimate.deviations[index].map(([value]) => value)),
      sd: Math.sqrt(estimate.covariances[index][0]), raised: estimate.raised[index],
    })),
  };
}
