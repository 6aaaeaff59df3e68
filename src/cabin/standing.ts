import type { Cabin, Part, Source, Specimen } from './cabin.ts';
import { cabinIndex } from './cabin-index.ts';
import { sourceOf } from './source-of.ts';
import type { MeasuredQuantity } from './standing-specimen.ts';
import { hasReadings, standingSpecimen } from './standing-specimen.ts';

/** What stands behind a part. */
export interface Standing {
  readonly source: Source;
  readonly specimen: Specimen;
  /** Id of the mirror part whose readings these are; to be said wherever the value is shown. */
  readonly borrowedFrom?: string;
}

/**
 * The specimen that stands for a part at a stage, for one quantity.
 * A part whose source has no readings of the quantity at that stage borrows those of its other hand, from a source of the same
 * supplier, material and grain: the one with the same id, else the one that part stands by, else the first. Undefined where nothing was measured.
 */
export function standingOf(cabin: Cabin, part: Part, stage: string, quantity: MeasuredQuantity = 'colour', pick?: string): Standing | undefined {
  const source = sourceOf(part, pick);
  const specimen = standingSpecimen(source, stage, quantity);
  if (specimen !== undefined && hasReadings(specimen, quantity)) return { source, specimen };
  const mirror = cabinIndex(cabin).mirrors.get(part.id);
  if (mirror !== undefined) {
    const chosen = sourceOf(mirror);
    const order = (candidate: Source): number => (candidate.id === source.id ? 0 : candidate === chosen ? 1 : 2);
    const alike = mirror.sources.filter((candidate) => isAlike(candidate, source)).sort((a, b) => order(a) - order(b));
    for (const candidate of alike) {
      const borrowed = standingSpecimen(candidate, stage, quantity);
      if (borrowed !== undefined && hasReadings(borrowed, quantity)) return { source: candidate, specimen: borrowed, borrowedFrom: mirror.id };
    }
  }
  return specimen === undefined ? undefined : { source, specimen };
}

const isAlike = (a: Source, b: Source): boolean =>
  a.supplier === b.supplier && a.material === b.material && (a.grain === undefined || b.grain === undefined || a.grain.id === b.grain.id);
