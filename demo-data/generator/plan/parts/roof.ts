import type { Colourway } from '../colourways.ts';
import { plus } from '../colourways.ts';
import { grains } from '../materials.ts';
import { sourceOf, unmeasured } from '../source-maker.ts';
import type { PartPlan } from '../types.ts';

/** Headliner, visors, overhead console, pillars. */
export function roofParts(way: Colourway): PartPlan[] {
  const visor = sourceOf('visor-left', 'ostrelund', 'headliner', plus(way.roof, [-1.05, 0.08, 0.22]), 1, [9.4, 52000, 14]);
  const pillar = sourceOf('b-pillar-left', 'tulvering', 'moulded', plus(way.roof, [0.55, -0.08, 0.2]), 1.9, [6.1, 118000, 20], {
    grain: grains.linen,
    status: 'series',
  });
  const roof = { zone: 'roof', visibility: 0.6 } as const;
  return [
    {
      ...roof,
      id: 'headliner',
      name: 'Headliner',
      target: { master: 'master-roof' },
      sources: [
        sourceOf('headliner', 'ostrelund', 'headliner', way.roof, 1, [48.5, 165000, 18], { status: 'series', earlierLots: 2 }),
        sourceOf('headliner', 'quillmoor', 'headliner', plus(way.roof, [-0.9, 0.12, 0.5]), 1, [45.2, 180000, 22], { status: 'candidate' }),
      ],
    },
    { ...roof, id: 'visor-left', name: 'Sun visor, left', hand: 'left', target: { master: 'master-roof' }, sources: [visor] },
    {
      ...roof,
      id: 'visor-right',
      name: 'Sun visor, right',
      hand: 'right',
      mirrorOf: 'visor-left',
      sources: [unmeasured(visor, 'visor-right')],
    },
    {
      ...roof,
      id: 'overhead-console',
      name: 'Overhead console',
      target: { master: 'master-roof-moulded' },
      note: 'Measured by the supplier with a sphere only.',
      sources: [
        sourceOf('overhead-console', 'orvandel', 'moulded', plus(way.roof, [0.9, -0.05, -0.1]), 1.8, [14.3, 96000, 19], {
          grain: grains.linen,
          session: 'sphere',
          sphereToo: true,
        }),
      ],
    },
    {
      ...roof,
      id: 'a-pillar-left',
      name: 'A-pillar trim, left',
      hand: 'left',
      target: { master: 'master-roof' },
      sources: [sourceOf('a-pillar-left', 'ostrelund', 'headliner', plus(way.roof, [1.15, 0.05, -0.2]), 1, [11.2, 71000, 16])],
    },
    {
      ...roof,
      id: 'a-pillar-right',
      name: 'A-pillar trim, right',
      hand: 'right',
      mirrorOf: 'a-pillar-left',
      target: { master: 'master-roof' },
      sources: [sourceOf('a-pillar-right', 'ostrelund', 'headliner', plus(way.roof, [-0.8, -0.05, 0.34]), 1, [11.2, 71000, 16])],
    },
    {
      ...roof,
      id: 'b-pillar-left',
      name: 'B-pillar trim, left',
      hand: 'left',
      target: { master: 'master-roof-moulded' },
      sources: [pillar],
    },
    {
      ...roof,
      id: 'b-pillar-right',
      name: 'B-pillar trim, right',
      hand: 'right',
      mirrorOf: 'b-pillar-left',
      sources: [unmeasured(pillar, 'b-pillar-right')],
    },
  ];
}
