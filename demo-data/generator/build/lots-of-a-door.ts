import type { Cabin, Joint, Part } from '../../../src/cabin/cabin.ts';
import type { Lab } from '../../../src/quantities.ts';
import { doorOutlines } from '../map/cabin-map.ts';
import { plus, slateColourway as way } from '../plan/colourways.ts';
import { conditions, instruments } from '../plan/registers.ts';
import { sourceOf } from '../plan/source-maker.ts';
import type { SourcePlan } from '../plan/types.ts';
import { randomOf } from '../random.ts';
import { asOf, masterDocument, sourceDocument } from './cabin-builder.ts';
import { fileLog } from './file-log.ts';
import { sharedLength } from './shared-border.ts';

/** How a part's lots come about: how many, from where they start, what each adds, and what one of them has beside that. */
interface LotsPlan {
  readonly id: string;
  readonly name: string;
  readonly outline: string;
  readonly supplier: string;
  readonly material: 'soft-skin' | 'moulded';
  readonly count: number;
  readonly start: Lab;
  readonly perLot?: Lab;
  readonly own?: (lot: number) => Lab;
  readonly glossPerLot?: number;
}

const lotDays = 18;
const firstDay = Date.parse('2025-11-10T00:00:00Z');
const none: Lab = [0, 0, 0];
/** The two shades of a resin that comes from two makers. */
const shade: Lab = [0.1, 0.02, 0.95];

const plans: readonly LotsPlan[] = [
  { id: 'top-roll', name: 'Top roll', outline: 'door-roll-left', supplier: 'skins', material: 'soft-skin', count: 10, start: plus(way.slate, [0.1, 0.02, -0.2]), perLot: [-0.005, 0.004, 0.058], glossPerLot: 0.012 },
  { id: 'upper-panel', name: 'Upper panel', outline: 'door-decor-left', supplier: 'mouldings', material: 'moulded', count: 10, start: plus(way.slate, [0.05, 0, -0.15]), own: (lot) => (lot === 6 ? [0.45, 0, -0.12] : none) },
  { id: 'insert', name: 'Insert', outline: 'door-insert-left', supplier: 'skins', material: 'soft-skin', count: 8, start: plus(way.slate, [0.1, 0.02, -0.05]) },
  { id: 'armrest', name: 'Armrest', outline: 'door-armrest-left', supplier: 'skins', material: 'soft-skin', count: 1, start: plus(way.slate, [0.15, 0.02, 0]) },
  { id: 'map-pocket', name: 'Map pocket panel', outline: 'map-pocket-left', supplier: 'mouldings', material: 'moulded', count: 8, start: plus(way.slate, [0.05, 0, -0.2]), own: (lot) => (lot % 2 === 1 ? shade : none) },
  { id: 'sill', name: 'Sill trim', outline: 'sill-left', supplier: 'trims', material: 'moulded', count: 8, start: plus(way.slate, [0.1, 0.01, -0.25]), own: (lot) => (lot > 1 && lot < 6 ? shade : none) },
];

/** One specimen a lot, kept back from production and read in one session, so that no day of measuring is in the series. */
function lotsSource(plan: LotsPlan): SourcePlan {
  const { id, supplier, material, count, start, perLot = none, own = () => none, glossPerLot = 0 } = plan;
  const made = sourceOf(id, supplier, material, start, 1.9, [20, 100000, 12], { status: 'series', spots: 4 });
  const random = randomOf(`series of ${id}`);
  const [standing] = made.specimens;
  return {
    ...made, volumePrices: undefined,
    specimens: Array.from({ length: count }, (_, lot) => {
      const scatter: Lab = [0.05 * random.normal(), 0.02 * random.normal(), 0.03 * random.normal()];
      const drift: Lab = [lot * perLot[0], lot * perLot[1], lot * perLot[2]];
      // Parts with few lots have started late.
      const day = firstDay + 86_400_000 * (lotDays * (lot + 10 - count) + Math.floor(4 * random.uniform()));
      return {
        ...standing, id: `${id}-${lot + 1}`, lot: { id: `${id.slice(0, 1).toUpperCase()}${id.slice(1, 2)}-${lot + 1}` }, producedOn: new Date(day).toISOString().slice(0, 10),
        lab: plus(plus(plus(start, drift), own(lot)), scatter), gloss60: 1.9 + lot * glossPerLot + 0.01 * random.normal(),
      };
    }),
  };
}

const outlines = doorOutlines();

function joint(first: string, second: string, gapMm: number): Joint {
  const [one, other] = [first, second].map((id) => plans.find((plan) => plan.id === id)?.outline ?? '');
  return {
    id: `${first}--${second}`, parts: [first, second], kind: 'gap', gapMm, viewMm: 650, intent: { colour: 'match' },
    lengthMm: Math.round(sharedLength(outlines[one], outlines[other], 9) / 5) * 5,
  };
}

/** Six parts of a door in series: one drifts towards a clash, one had a lot astray, two are of a resin in two shades. */
export function buildLotsOfADoor(): Cabin {
  const log = fileLog();
  const parts = plans.map((plan): Part => ({
    id: plan.id, name: plan.name, zone: 'door', outline: outlines[plan.outline], target: { master: plan.material === 'moulded' ? 'master-moulded' : 'master-skin' },
    sources: [sourceDocument(lotsSource(plan), log)],
  }));
  const master = (id: string, material: string) => masterDocument({ id, name: `Master, ${material}`, material, lab: way.slate, gloss60: 1.9, issue: '1' }, log);
  return {
    format: 'adjoin-cabin', version: 1, id: 'lots', name: 'Lots of a door in series', colourway: 'Slate', phase: 'Series', revision: '1', asOf, stage: 'new',
    note: 'Invented, for the series: six parts of a door with up to ten lots each. The top roll becomes yellower from lot to lot and comes towards a clash with the upper panel; '
      + 'one lot of the upper panel is astray; map pocket and sill are of a resin in two shades, which clash where they are mixed.',
    volume: 8000,
    zones: [{ id: 'door', name: 'Door' }],
    suppliers: [{ id: 'skins', name: 'A supplier of skins (invented)' }, { id: 'mouldings', name: 'A moulder (invented)' }, { id: 'trims', name: 'Another moulder (invented)' }],
    instruments: instruments.filter(({ id }) => id === 'sp-1' || id === 'gl-1')
      .map((instrument) => (instrument.agreement ? { ...instrument, agreement: { ...instrument.agreement, shared: undefined } } : instrument)),
    conditions: conditions.filter(({ instrument }) => instrument === 'sp-1' || instrument === 'gl-1'),
    files: log.files(),
    masters: [master('master-skin', 'soft-skin'), master('master-moulded', 'moulded')],
    parts,
    joints: [
      joint('top-roll', 'upper-panel', 0.5), joint('upper-panel', 'insert', 0.5), joint('insert', 'armrest', 1), joint('insert', 'map-pocket', 0.8),
      joint('armrest', 'map-pocket', 1), joint('map-pocket', 'sill', 4),
    ],
    ruleBook: 'ciede2000',
  };
}
