import type { SourceStatus, SpecimenKind } from '../../../src/cabin/cabin.ts';
import type { Lab } from '../../../src/quantities.ts';
import { randomOf } from '../random.ts';
import { plus } from './colourways.ts';
import { modelOf } from './materials.ts';
import type { SessionName, SourcePlan, SpecimenPlan } from './types.ts';

/** Money and time of a source: piece price at 8,000 cabins a year, tool cost, lead time in weeks. */
export type Deal = readonly [piecePrice: number, toolCost: number, leadWeeks: number];

export interface SourceExtras extends Partial<
  Pick<SourcePlan, 'grain' | 'colouring' | 'surface' | 'share' | 'plant' | 'cavities' | 'namedColours' | 'note'>
> {
  readonly status?: SourceStatus;
  readonly kind?: SpecimenKind;
  readonly session?: SessionName;
  readonly spots?: number;
  readonly sphereToo?: boolean;
  /** Earlier lots beside the one that stands for the source. */
  readonly earlierLots?: number;
  /** Adds a specimen of the same lot after a light exposure, its CIELAB moved by this much. */
  readonly exposed?: Lab;
}

const lotField: Readonly<Record<string, 'resin' | 'paint' | 'dye' | 'hide' | 'roll'>> = {
  painted: 'paint',
  'gloss-black': 'paint',
  leather: 'hide',
  textile: 'dye',
  thread: 'dye',
  carpet: 'roll',
  headliner: 'roll',
  'decor-film': 'roll',
};

const daysBefore = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) - days * 86_400_000).toISOString().slice(0, 10);

/** One supplier's version of a part: the specimen that stands for it, earlier lots, a light-exposed one. */
export function sourceOf(
  part: string,
  supplier: string,
  material: string,
  lab: Lab,
  gloss60: number,
  [piecePrice, toolCost, leadWeeks]: Deal,
  extras: SourceExtras = {},
): SourcePlan {
  const id = `${part}-${supplier}`;
  const model = modelOf(material);
  const random = randomOf(`lots ${id}`);
  const status = extras.status ?? 'approved';
  const kind = extras.kind ?? (status === 'series' ? 'series part' : status === 'approved' ? 'tool part' : 'plaque');
  const spots = extras.spots ?? model.spots;
  const number = 100 + Math.floor(random.uniform() * 800);
  const standing: SpecimenPlan = {
    id: `${id}-1`,
    kind,
    session: extras.session ?? 'house',
    spots,
    lab,
    gloss60,
    lot: { id: `L${number}`, [lotField[material] ?? 'resin']: `${supplier.slice(0, 2).toUpperCase()}-${number}` },
    ...(kind === 'plaque' ? {} : { tool: `T-${part}`, cavity: '1' }),
    producedOn: daysBefore('2026-04-24', Math.floor(random.uniform() * 20)),
    ...(extras.sphereToo ? { sphereToo: true } : {}),
  };
  const earlier = Array.from({ length: extras.earlierLots ?? 0 }, (_, index): SpecimenPlan => ({
    ...standing,
    id: `${id}-${index + 2}`,
    lot: { id: `L${number - 9 * (index + 1)}` },
    lab: plus(lab, model.lotSd.map((sd) => sd * random.normal()) as unknown as Lab),
    gloss60: gloss60 + 0.04 * random.normal(),
    spots: 3,
    producedOn: daysBefore('2026-03-20', 31 * index + Math.floor(random.uniform() * 9)),
    sphereToo: false,
  }));
  const exposed: SpecimenPlan[] = extras.exposed
    ? [
        {
          ...standing,
          id: `${id}-exposed`,
          sphereToo: true,
          spots: Math.min(5, spots),
          lab: plus(lab, extras.exposed),
          exposure: { stage: 'light-exposed', method: 'xenon arc, interior trim, 0.55 W/(m² nm) at 340 nm', doseKjPerM2: 601.6 },
        },
      ]
    : [];
  return {
    id,
    supplier,
    material,
    status,
    piecePrice,
    toolCost,
    leadWeeks,
    setupCost: Math.round(toolCost * 0.04),
    volumePrices: [
      { fromVolume: 0, piecePrice: Math.round(piecePrice * 112) / 100 },
      { fromVolume: 5000, piecePrice },
      { fromVolume: 12000, piecePrice: Math.round(piecePrice * 93) / 100 },
    ],
    ...pick(extras, ['surface', 'grain', 'colouring', 'share', 'plant', 'cavities', 'namedColours', 'note']),
    ...(toolCost > 0 ? { tool: `T-${part}` } : {}),
    specimens: [standing, ...earlier, ...exposed],
  };
}

function pick<T extends object, K extends keyof T>(from: T, keys: readonly K[]): Partial<Pick<T, K>> {
  return Object.fromEntries(keys.filter((key) => from[key] !== undefined).map((key) => [key, from[key]])) as Partial<Pick<T, K>>;
}

/** The same source for the other hand, not measured: it borrows the readings of its mirror. */
export const unmeasured = (source: SourcePlan, part: string): SourcePlan => ({
  ...source,
  id: `${part}-${source.supplier}`,
  ...(source.tool ? { tool: `T-${part}` } : {}),
  specimens: [],
});
