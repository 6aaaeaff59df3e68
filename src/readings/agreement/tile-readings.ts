import { colourSample } from '../colour-sample.ts';
import type { JudgedLight } from '../colour-sample.ts';
import { glossSamples } from '../gloss-sample.ts';
import { groupColourReadings } from '../reading-groups.ts';
import type { Conditions, GeometryClass, GlossAngle, Reading } from '../reading.ts';
import { textureSample } from '../texture-sample.ts';

/** A tile as far as the comparison of instruments needs it. */
export interface ReadTile {
  readonly id: string;
  readonly name?: string;
  readonly readings: readonly Reading[];
}

/** The mean reading of one tile by one instrument, as a vector. */
export interface TileMean {
  readonly tile: string;
  readonly instrument: string;
  readonly value: readonly number[];
}

/** Colour of every tile on every instrument by class of geometry: only readings of one class can be set side by side. */
export function tileColours(tiles: readonly ReadTile[], conditions: ReadonlyMap<string, Conditions>, light: JudgedLight): ReadonlyMap<GeometryClass, readonly TileMean[]> {
  const found = new Map<GeometryClass, TileMean[]>();
  for (const tile of tiles) {
    const best = new Map<string, { spots: number; geometryClass: GeometryClass; mean: TileMean }>();
    for (const group of groupColourReadings(tile.readings, conditions).groups) {
      const value = colourSample(group, [light])?.means[0];
      if (value === undefined || group.geometryClass === 'unknown' || group.geometryClass === 'multi-angle') continue;
      const key = `${group.geometryClass} ${group.instrument}`;
      // Two apertures of one instrument are not averaged: the one with more spots speaks for it.
      if ((best.get(key)?.spots ?? 0) >= group.spots) continue;
      best.set(key, { spots: group.spots, geometryClass: group.geometryClass, mean: { tile: tile.id, instrument: group.instrument, value } });
    }
    for (const { geometryClass, mean } of best.values()) found.set(geometryClass, [...(found.get(geometryClass) ?? []), mean]);
  }
  return found;
}

/** The readings of a tile by instrument. */
function byInstrument(readings: readonly Reading[], conditions: ReadonlyMap<string, Conditions>): ReadonlyMap<string, readonly Reading[]> {
  const found = new Map<string, Reading[]>();
  for (const reading of readings) {
    const instrument = conditions.get(reading.conditions)?.instrument;
    if (instrument !== undefined) found.set(instrument, [...(found.get(instrument) ?? []), reading]);
  }
  return found;
}

/** Gloss of every tile on every instrument by angle. */
export function tileGlosses(tiles: readonly ReadTile[], conditions: ReadonlyMap<string, Conditions>): ReadonlyMap<GlossAngle, readonly TileMean[]> {
  const found = new Map<GlossAngle, TileMean[]>();
  for (const tile of tiles) {
    for (const [instrument, readings] of byInstrument(tile.readings, conditions)) {
      for (const { angle, mean } of glossSamples(readings, conditions)) {
        found.set(angle, [...(found.get(angle) ?? []), { tile: tile.id, instrument, value: [mean] }]);
      }
    }
  }
  return found;
}

/** Logarithm of Sa of every tile on every instrument. */
export function tileTextures(tiles: readonly ReadTile[], conditions: ReadonlyMap<string, Conditions>): readonly TileMean[] {
  return tiles.flatMap((tile) => [...byInstrument(tile.readings, conditions)].flatMap(([instrument, readings]): TileMean[] => {
    const sa = textureSample(readings, conditions)?.parameters.saUm;
    return sa === undefined || !(sa > 0) ? [] : [{ tile: tile.id, instrument, value: [Math.log(sa)] }];
  }));
}
