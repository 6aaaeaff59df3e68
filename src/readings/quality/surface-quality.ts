import { largestByInstrument } from '../gloss-sample.ts';
import type { Conditions, GlossAngle, GlossReading, Reading, TextureReading } from '../reading.ts';
import type { ArealName } from '../texture-sample.ts';
import { isRelative } from '../texture-sample.ts';
import type { ScalarQuality } from './scalar-quality.ts';
import { scalarQuality } from './scalar-quality.ts';

/** Gloss readings at one angle on one instrument. */
export interface GlossQuality extends ScalarQuality<GlossReading> {
  readonly angle: GlossAngle;
  readonly instrument: string;
}

/** Readings of one texture parameter on one instrument. */
export interface TextureQuality extends ScalarQuality<TextureReading> {
  readonly parameter: ArealName;
  readonly instrument: string;
  /** Values are logarithms: their spread is a share of the size. */
  readonly relative: boolean;
}

/** Spread of one reading of what is not a size: Str, and the class of VDI 3400, which is read in steps. Assumption, no source. */
const shapeSd = { str: 0.03, vdiClass: 0.3 } as const;
const parameters = ['saUm', 'salMm', 'str', 'vdiClass'] as const;

/**
 * Gloss by angle on the instrument with the most spots, as verdicts take it. Across the grain counts as turned by 90 degrees.
 * `assumedSd` is the spread of one reading that the material is assumed to have, GU. Readings marked as outliers are left out.
 */
export function glossQualities(readings: readonly Reading[], conditions: ReadonlyMap<string, Conditions>, assumedSd: number, priorReadings?: number): GlossQuality[] {
  const kept = readings.filter((reading): reading is GlossReading => reading.quantity === 'gloss' && reading.outlier !== true);
  return ([20, 60, 85] as const).flatMap((angle) => {
    const { instrument, readings: own } = largestByInstrument(kept.filter((reading) => reading.angle === angle), conditions);
    if (own.length === 0) return [];
    const placed = own.map((reading) => ({ reading, rotation: reading.rotationDeg ?? (reading.direction === 'across' ? 90 : 0), value: reading.gloss }));
    return [{ angle, instrument, ...scalarQuality(placed, `gloss at ${angle}°`, assumedSd, priorReadings) }];
  });
}

/**
 * Texture by parameter (Sa, Sal, Str, VDI 3400 class: those that are judged) on the instrument with the most spots.
 * `assumedRelativeSd` is the spread of one reading of a size, as a share of it.
 */
export function textureQualities(
  readings: readonly Reading[], conditions: ReadonlyMap<string, Conditions>, assumedRelativeSd: number, priorReadings?: number,
): TextureQuality[] {
  const kept = readings.filter((reading): reading is TextureReading =>
    reading.quantity === 'texture' && reading.outlier !== true && Object.keys(reading.parameters).length > 0);
  const { instrument, readings: own } = largestByInstrument(kept, conditions);
  return parameters.flatMap((parameter) => {
    const relative = isRelative(parameter);
    const placed = own.flatMap((reading) => {
      const value = reading.parameters[parameter];
      if (value === undefined || (relative && !(value > 0))) return [];
      return [{ reading, rotation: reading.rotationDeg ?? 0, value: relative ? Math.log(value) : value }];
    });
    const assumedSd = parameter === 'str' || parameter === 'vdiClass' ? shapeSd[parameter] : assumedRelativeSd;
    return placed.length === 0 ? [] : [{ parameter, instrument, relative, ...scalarQuality(placed, parameter, assumedSd, priorReadings) }];
  });
}
