import type { ArealParameters, Conditions, Reading, TextureReading } from './reading.ts';
import { largestByInstrument } from './gloss-sample.ts';
import { sampleCovariance } from './sample-covariance.ts';
import { meanOfSpots, spotMeans } from './spots.ts';
import type { VisibleSample } from './visible-sample.ts';
import { visibleSamples } from './visible-sample.ts';

export type ArealName = keyof ArealParameters;

/** Areal parameters of one specimen. */
export interface TextureSample {
  /** Means over the spots: geometric for the sizes, arithmetic for the shape numbers, circular for the direction. */
  readonly parameters: ArealParameters;
  /** Standard deviation from spot to spot (n - 1), of the logarithm for the sizes; 0 for a single spot. */
  readonly sd: Partial<Record<ArealName, number>>;
  readonly spots: number;
  readonly outliers: number;
  readonly instrument: string;
  /** How it looks, by the light it was seen in. */
  readonly visible: readonly VisibleSample[];
}

/** Sizes are compared by their ratio, so their logarithm is averaged; the rest are compared by their difference. */
const sizes: readonly ArealName[] = ['saUm', 'sqUm', 'spUm', 'svUm', 'szUm', 'salMm', 'sdq', 'sdr', 'raUm', 'rzUm', 'rsmMm'];
const shapes: readonly ArealName[] = ['ssk', 'sku', 'str', 'vdiClass'];

/** True for the parameters whose spread is that of the logarithm. */
export const isRelative = (name: ArealName): boolean => sizes.includes(name);

/**
 * Mean texture of a specimen over its spots, each parameter over the spots that have it; undefined without readings.
 * Std, the direction of the lay, repeats every 180 degrees and is averaged on the doubled angle (N. I. Fisher, Statistical
 * Analysis of Circular Data, 1993, section 2.4). A size that is not above zero makes its mean NaN. Several instruments: the one with the most spots.
 * Readings without parameters, of textures that were only photographed, count where there are no others.
 */
export function textureSample(readings: readonly Reading[], conditions?: ReadonlyMap<string, Conditions>): TextureSample | undefined {
  const all = readings.filter((reading): reading is TextureReading => reading.quantity === 'texture');
  const usable = all.filter((reading) => reading.outlier !== true);
  const measured = usable.filter((reading) => Object.keys(reading.parameters).length > 0);
  const kept = largestByInstrument(measured.length > 0 ? measured : usable, conditions);
  if (kept.readings.length === 0) return undefined;
  const parameters: Partial<Record<ArealName, number>> = {};
  const sd: Partial<Record<ArealName, number>> = {};
  for (const name of [...sizes, ...shapes]) {
    const own = kept.readings.filter((reading) => reading.parameters[name] !== undefined);
    if (own.length === 0) continue;
    const relative = isRelative(name);
    const spots = spotMeans(own, ({ parameters: { [name]: value = NaN } }) => [relative ? Math.log(value) : value]);
    const mean = meanOfSpots(spots)[0];
    parameters[name] = relative ? Math.exp(mean) : mean;
    sd[name] = Math.sqrt(sampleCovariance(spots)[0]);
  }
  const directed = kept.readings.filter((reading) => reading.parameters.stdDeg !== undefined);
  if (directed.length > 0) {
    const [cos, sin] = meanOfSpots(spotMeans(directed, ({ parameters: { stdDeg = NaN } }) => {
      const doubled = (stdDeg * Math.PI) / 90;
      return [Math.cos(doubled), Math.sin(doubled)];
    }));
    const half = (Math.atan2(sin, cos) * 90) / Math.PI;
    parameters.stdDeg = half < 0 ? half + 180 : half;
  }
  return {
    parameters,
    sd,
    spots: new Set(kept.readings.map((reading) => reading.spot.name)).size,
    outliers: all.filter((reading) => reading.outlier === true).length,
    instrument: kept.instrument,
    visible: visibleSamples(readings, conditions),
  };
}
