import type { Cabin, Joint, Part } from '../../../src/cabin/cabin.ts';
import { doorOutlines } from '../map/cabin-map.ts';
import { plus, slateColourway as way } from '../plan/colourways.ts';
import { grains } from '../plan/materials.ts';
import { conditions, instruments } from '../plan/registers.ts';
import { sourceOf } from '../plan/source-maker.ts';
import type { PartPlan } from '../plan/types.ts';
import { asOf, masterDocument, sourceDocument } from './cabin-builder.ts';
import { fileLog } from './file-log.ts';
import { sharedLength } from './shared-border.ts';

const outlineOf: Readonly<Record<string, string>> = {
  'top-roll': 'door-roll-left',
  'decor-strip': 'door-decor-left',
  insert: 'door-insert-left',
  armrest: 'door-armrest-left',
  'map-pocket': 'map-pocket-left',
  sill: 'sill-left',
};

const plans: readonly PartPlan[] = [
  {
    id: 'top-roll',
    name: 'Top roll',
    zone: 'door',
    target: { master: 'master-skin' },
    sources: [
      sourceOf('top-roll', 'skins', 'soft-skin', plus(way.slate, [0.2, 0.03, -0.1]), 1.9, [19, 120000, 22], { grain: grains.fine }),
    ],
  },
  {
    id: 'decor-strip',
    name: 'Decor strip',
    zone: 'door',
    sources: [sourceOf('decor-strip', 'surfaces', 'decor-film', way.bronze, 24, [10, 52000, 15], {})],
  },
  {
    id: 'insert',
    name: 'Insert',
    zone: 'door',
    sources: [sourceOf('insert', 'weaving', 'textile', way.cloth, 1, [13, 44000, 12], { surface: 'melange', spots: 3 })],
  },
  {
    id: 'armrest',
    name: 'Armrest',
    zone: 'door',
    sources: [
      sourceOf('armrest', 'hides', 'leather', plus(way.slate, [0.5, 0.02, 0.05]), 2, [25, 39000, 13], { grain: grains.hide, spots: 2 }),
    ],
  },
  {
    id: 'map-pocket',
    name: 'Map pocket panel',
    zone: 'door',
    sources: [
      sourceOf('map-pocket', 'mouldings', 'moulded', plus(way.slate, [0.05, 0, 0.1]), 1.9, [22, 188000, 21], {
        grain: grains.coarse,
        spots: 3,
      }),
    ],
  },
  {
    id: 'sill',
    name: 'Sill trim',
    zone: 'door',
    sources: [
      sourceOf('sill', 'mouldings', 'moulded', plus(way.slate, [0.15, 0.05, 1.3]), 2, [7, 68000, 15], { grain: grains.coarse, spots: 3 }),
    ],
  },
];

const outlines = doorOutlines();

const joint = (first: string, second: string, colour: 'match' | 'tone-step' | 'contrast', kind: Joint['kind'], gapMm: number): Joint => ({
  id: `${first}--${second}`,
  parts: [first, second],
  kind,
  gapMm,
  lengthMm: Math.round(sharedLength(outlines[outlineOf[first]], outlines[outlineOf[second]], 9) / 5) * 5,
  viewMm: 650,
  intent: { colour },
});

/** Six parts of a door, six joints: one clashes, one is open, the others hold. */
export function buildFirstSteps(): Cabin {
  const log = fileLog();
  const parts = plans.map(({ sources, ...plan }): Part => ({
    ...plan,
    outline: outlines[outlineOf[plan.id]],
    sources: sources.map((source) => sourceDocument({ ...source, volumePrices: undefined }, log)),
  }));
  const masters = [
    masterDocument(
      { id: 'master-skin', name: 'Master, upper tone, skin', material: 'soft-skin', lab: way.slate, gloss60: 1.9, issue: '1' },
      log,
    ),
  ];
  return {
    format: 'adjoin-cabin',
    version: 1,
    id: 'first-steps',
    name: 'First steps: a door of six parts',
    colourway: 'Slate',
    phase: 'B1',
    revision: '1',
    asOf,
    stage: 'new',
    note:
      'Invented, for learning: six parts of a door and six joints. ' +
      'One joint clashes, one is open because a hide was measured at two spots only, the others hold.',
    volume: 8000,
    zones: [{ id: 'door', name: 'Door' }],
    suppliers: [
      { id: 'skins', name: 'A supplier of skins (invented)' },
      { id: 'surfaces', name: 'A supplier of decor (invented)' },
      { id: 'weaving', name: 'A weaver (invented)' },
      { id: 'hides', name: 'A supplier of hides (invented)' },
      { id: 'mouldings', name: 'A moulder (invented)' },
    ],
    instruments: instruments
      .filter(({ id }) => id === 'sp-1' || id === 'gl-1' || id === 'ap-1')
      .map((instrument) => {
        const { agreement } = instrument;
        return agreement ? { ...instrument, agreement: { ...agreement, shared: undefined } } : instrument;
      }),
    conditions: conditions.filter(({ instrument }) => instrument === 'sp-1' || instrument === 'gl-1' || instrument === 'ap-1'),
    files: log.files(),
    masters,
    parts,
    joints: [
      joint('top-roll', 'decor-strip', 'contrast', 'edge', 0.3),
      joint('decor-strip', 'insert', 'contrast', 'edge', 0.3),
      joint('insert', 'armrest', 'tone-step', 'step', 1.2),
      joint('insert', 'map-pocket', 'tone-step', 'gap', 0.8),
      joint('armrest', 'map-pocket', 'match', 'step', 1),
      joint('map-pocket', 'sill', 'match', 'gap', 4),
    ],
    ruleBook: 'ciede2000',
  };
}
