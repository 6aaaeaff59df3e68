import type { Cabin } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { cabinReadings } from './cabin-readings.ts';
import type { ReadingSet } from './reading-set.ts';

/** The readings of one master alone, for a file that goes to a supplier; undefined where the cabin has no such master. */
export function masterReadings(cabin: Cabin, master: string): ReadingSet | undefined {
  const specimen = cabinIndex(cabin).masters.get(master);
  return specimen === undefined ? undefined : cabinReadings({ ...cabin, parts: [], joints: [], lights: [], masters: [specimen] });
}
