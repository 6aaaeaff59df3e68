import type { Reading } from '../readings/reading.ts';
import type { Source, Specimen, SpecimenKind } from './cabin.ts';

/** What is asked of a specimen: colour may come as spectra, CIELAB or differences. */
export type MeasuredQuantity = 'colour' | 'gloss' | 'texture';

export const measuredQuantity = (reading: Reading): MeasuredQuantity =>
  (reading.quantity === 'gloss' || reading.quantity === 'texture' ? reading.quantity : 'colour');

export const hasReadings = (specimen: Specimen, quantity?: MeasuredQuantity): boolean =>
  specimen.readings.some((reading) => quantity === undefined || measuredQuantity(reading) === quantity);

/** The stage of a specimen: `new` where it was exposed to nothing. */
export const stageOf = (specimen: Specimen): string => specimen.exposure?.stage ?? 'new';

/** Higher stands before lower; what is not listed never stands for a source. */
const rank: Readonly<Partial<Record<SpecimenKind, number>>> = { 'series part': 3, 'tool part': 2, plaque: 1 };

/**
 * The one specimen that stands for a source at a stage; specimens are never pooled.
 * An explicit pick stands, be it measured or not: `pick`, else the source's `standsBy` for the stage. Otherwise, among the specimens
 * with readings (of the quantity, where one is asked for): series part before tool part before plaque, then the latest by `producedOn`
 * (a dated one before an undated one), then the last in the document. Masters and boundary samples never stand.
 * Undefined where there is none.
 */
export function standingSpecimen(source: Source, stage: string, quantity?: MeasuredQuantity, pick?: string): Specimen | undefined {
  const candidates = source.specimens.filter((specimen) => rank[specimen.kind] !== undefined && stageOf(specimen) === stage);
  const picks = source.standsBy;
  const explicit = pick ?? (picks !== undefined && Object.hasOwn(picks, stage) ? picks[stage] : undefined);
  const picked = candidates.find((specimen) => specimen.id === explicit);
  if (picked !== undefined) return picked;
  let best: Specimen | undefined;
  for (const specimen of candidates) {
    if (hasReadings(specimen, quantity) && (best === undefined || compare(specimen, best) >= 0)) best = specimen;
  }
  return best;
}

function compare(a: Specimen, b: Specimen): number {
  const byKind = (rank[a.kind] ?? 0) - (rank[b.kind] ?? 0);
  if (byKind !== 0) return byKind;
  const [first, second] = [a.producedOn ?? '', b.producedOn ?? ''];
  return first < second ? -1 : first > second ? 1 : 0;
}
