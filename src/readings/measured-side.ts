import type { MeasuredSide } from './instrument-correlation.ts';
import type { Instrument, Reading } from './reading.ts';
import type { ReadingGroup } from './reading-groups.ts';

/** First and last day of readings; undefined as soon as one of them has no date. */
export function measuredDays(readings: readonly Reading[]): { readonly from: string; readonly to: string } | undefined {
  const days = readings.map((reading) => reading.measuredAt?.slice(0, 10));
  if (days.length === 0 || days.includes(undefined)) return undefined;
  const sorted = days.filter((day) => day !== undefined).sort();
  return { from: sorted[0], to: sorted[sorted.length - 1] };
}

/** How the readings of a group were taken. Unlike geometries or apertures inside one group are left undefined. */
export function measuredSide(group: ReadingGroup, instruments: ReadonlyMap<string, Instrument>): MeasuredSide {
  return {
    instrument: instruments.get(group.instrument),
    geometry: group.geometries.length === 1 ? group.geometries[0] : undefined,
    apertureMm: group.aperturesMm.length === 1 ? group.aperturesMm[0] : undefined,
    ...measuredDays(group.readings),
  };
}
