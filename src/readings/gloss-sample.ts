import type { GlossUnits } from '../quantities.ts';
import type { Conditions, GlossAngle, GlossReading, Reading } from './reading.ts';
import { sampleCovariance } from './sample-covariance.ts';
import { meanOfSpots, spotMeans } from './spots.ts';

/** Gloss of one specimen at one angle. */
export interface GlossSample {
  readonly angle: GlossAngle;
  readonly mean: GlossUnits;
  /** Standard deviation from spot to spot (n - 1); 0 for a single spot. */
  readonly sd: GlossUnits;
  readonly spots: number;
  /** Mean haze of the spots that have it. */
  readonly haze?: number;
  readonly outliers: number;
  /** Ids of the instruments; one sample has one unless the conditions are unknown. */
  readonly instruments: readonly string[];
}

/**
 * Gloss by angle, 20, 60 and 85 degrees in this order, spots and not flashes counted.
 * Along and across the grain on one spot are averaged like two rotations, each direction weighing the same. Where several
 * instruments measured one angle, the one with the most spots is used (ties: the first by id), since means over
 * instruments hide their deviation. Without a map of conditions the ids of the conditions stand for the instruments.
 */
export function glossSamples(readings: readonly Reading[], conditions?: ReadonlyMap<string, Conditions>): GlossSample[] {
  const gloss = readings.filter((reading): reading is GlossReading => reading.quantity === 'gloss');
  return ([20, 60, 85] as const).flatMap((angle) => {
    const all = gloss.filter((reading) => reading.angle === angle);
    const kept = largestByInstrument(all.filter((reading) => reading.outlier !== true), conditions);
    if (kept.readings.length === 0) return [];
    const spots = spotMeans(kept.readings.map(directionAsRotation), (reading) => [reading.gloss]);
    const hazy = kept.readings.filter((reading) => reading.haze !== undefined);
    return [{
      angle,
      mean: meanOfSpots(spots)[0],
      sd: Math.sqrt(sampleCovariance(spots)[0]),
      spots: spots.length,
      ...(hazy.length === 0 ? {} : { haze: meanOfSpots(spotMeans(hazy.map(directionAsRotation), (reading) => [reading.haze ?? NaN]))[0] }),
      outliers: all.filter((reading) => reading.outlier === true).length,
      instruments: [kept.instrument],
    }];
  });
}

const directionAsRotation = (reading: GlossReading): GlossReading =>
  ({ ...reading, rotationDeg: reading.rotationDeg ?? (reading.direction === 'across' ? 90 : 0) });

/** The readings of the instrument that has the most spots. */
export function largestByInstrument<R extends Reading>(
  readings: readonly R[], conditions?: ReadonlyMap<string, Conditions>,
): { readonly instrument: string; readonly readings: readonly R[] } {
  const byInstrument = new Map<string, R[]>();
  for (const reading of readings) {
    const instrument = conditions === undefined ? reading.conditions : conditions.get(reading.conditions)?.instrument ?? '';
    byInstrument.set(instrument, [...(byInstrument.get(instrument) ?? []), reading]);
  }
  const spotCount = (list: readonly R[]): number => new Set(list.map((reading) => reading.spot.name)).size;
  const [instrument, own] = [...byInstrument].sort(([p, first], [q, second]) => spotCount(second) - spotCount(first) || (p < q ? -1 : 1))[0] ?? ['', []];
  return { instrument, readings: own };
}
