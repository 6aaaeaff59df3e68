import type { Cabin, Part, Specimen } from '../../../src/cabin/cabin.ts';
import type { Lab } from '../../../src/quantities.ts';
import { glosses, partOf, twoPartCabin } from '../../support/two-part-cabin.ts';

/** Invented: a day so many days after the first of January 2026. */
export const dayOf = (days: number): string => new Date(Date.UTC(2026, 0, 1 + days)).toISOString().slice(0, 10);

export interface PlannedLot {
  readonly id: string;
  readonly day?: number;
  readonly lab: Lab;
  readonly spots?: number;
  readonly gloss?: number;
  readonly conditions?: string;
}

/** One specimen a lot, all spots alike, read as CIELAB under D65, so that what is judged can be reckoned by hand. */
export const lotSpecimen = (part: string, { id, day, lab, spots = 4, gloss = 2, conditions = 'annular' }: PlannedLot): Specimen => ({
  id: `${part}-${id}`, kind: 'series part', lot: { id }, ...(day === undefined ? {} : { producedOn: dayOf(day) }),
  readings: [
    ...Array.from({ length: spots }, (_, spot) => ({ quantity: 'cielab' as const, spot: { name: `s${spot}` }, conditions, lab, light: 'D65', observer: 10 as const })),
    ...glosses(gloss, 3),
  ],
});

export const lotPart = (id: string, name: string, lots: readonly PlannedLot[], more: Partial<Part> = {}): Part =>
  ({ ...partOf(id, name, { specimens: lots.map((lot) => lotSpecimen(id, lot)) }), ...more });

/** Panel A and panel B with a joint between them, each with lots of its own. */
export function lotCabin(first: readonly PlannedLot[], second: readonly PlannedLot[], more: Partial<Cabin> = {}): Cabin {
  return twoPartCabin({}, {}, {}, { asOf: '2026-12-01', parts: [lotPart('a', 'Panel A', first), lotPart('b', 'Panel B', second)], ...more });
}
