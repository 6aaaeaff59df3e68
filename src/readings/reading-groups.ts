import type { Degrees } from '../quantities.ts';
import type { Issue } from '../issue.ts';
import type { ApertureClass } from './aperture-class.ts';
import { apertureClass } from './aperture-class.ts';
import { geometryClass } from './geometry-class.ts';
import type { ColourReading, Conditions, Geometry, GeometryClass, Reading, UvState } from './reading.ts';

/** Colour readings of one specimen that may be averaged: one instrument, geometry class, aperture class and UV state. */
export interface ReadingGroup {
  /** Id of the instrument; '' where the conditions are not known. */
  readonly instrument: string;
  readonly geometryClass: GeometryClass;
  readonly geometries: readonly Geometry[];
  readonly apertureClass: ApertureClass;
  /** Diameters met, smallest first. */
  readonly aperturesMm: readonly number[];
  readonly uv: UvState;
  /** Multi-angle readings only. */
  readonly aspecularDeg: Degrees | undefined;
  readonly backings: readonly string[];
  readonly temperaturesC: readonly number[];
  readonly readings: readonly ColourReading[];
  /** Different spots among the readings. */
  readonly spots: number;
  /** Readings marked as outliers: left out above, counted here. */
  readonly outliers: number;
}

export const isColourReading = (reading: Reading): reading is ColourReading =>
  reading.quantity === 'spectrum' || reading.quantity === 'cielab' || reading.quantity === 'difference';

/**
 * Groups the colour readings of one specimen by what may be averaged.
 * A group has a single instrument: a specimen that two instruments measured gives two groups, which are never averaged, because the
 * deviation of each instrument is common to all its readings. Conditions that are not in the map count as unknown and are an issue.
 * Groups come in the order of their first reading; one whose readings are all outliers is left out.
 */
export function groupColourReadings(
  readings: readonly Reading[], conditions: ReadonlyMap<string, Conditions>,
): { readonly groups: readonly ReadingGroup[]; readonly issues: readonly Issue[] } {
  const members = new Map<string, { reading: ColourReading; conditions: Conditions | undefined }[]>();
  const unknown = new Set<string>();
  for (const reading of readings) {
    if (!isColourReading(reading)) continue;
    const own = conditions.get(reading.conditions);
    if (own === undefined) unknown.add(reading.conditions);
    const key = [
      own?.instrument ?? '', geometryClass(own?.geometry), apertureClass(own?.apertureMm), own?.uv ?? 'unknown',
      own?.geometry === 'multi-angle' ? own.aspecularDeg ?? '' : '',
    ].join('|');
    const list = members.get(key);
    if (list === undefined) members.set(key, [{ reading, conditions: own }]);
    else list.push({ reading, conditions: own });
  }
  return {
    groups: [...members.values()].map(makeGroup).filter((group) => group.readings.length > 0),
    issues: [...unknown].map((id): Issue => ({
      code: 'unknown-conditions', severity: 'warning', expected: 'the id of recorded conditions', found: id,
      hint: 'Readings without known conditions are not compared with others.',
    })),
  };
}

function makeGroup(members: readonly { reading: ColourReading; conditions: Conditions | undefined }[]): ReadingGroup {
  const kept = members.filter(({ reading }) => reading.outlier !== true);
  const own = members[0].conditions;
  const gather = <T>(pick: (conditions: Conditions) => T | undefined): T[] =>
    [...new Set(kept.flatMap(({ conditions }) => (conditions === undefined ? [] : [pick(conditions)])).filter((value) => value !== undefined))];
  return {
    instrument: own?.instrument ?? '',
    geometryClass: geometryClass(own?.geometry),
    geometries: gather((conditions) => conditions.geometry),
    apertureClass: apertureClass(own?.apertureMm),
    aperturesMm: gather((conditions) => conditions.apertureMm).sort((p, q) => p - q),
    uv: own?.uv ?? 'unknown',
    aspecularDeg: own?.geometry === 'multi-angle' ? own.aspecularDeg : undefined,
    backings: gather((conditions) => conditions.backing),
    temperaturesC: gather((conditions) => conditions.temperatureC).sort((p, q) => p - q),
    readings: kept.map(({ reading }) => reading),
    spots: new Set(kept.map(({ reading }) => reading.spot.name)).size,
    outliers: members.length - kept.length,
  };
}
