import type { Colourway } from '../colourways.ts';
import { plus } from '../colourways.ts';
import { grains } from '../materials.ts';
import { sourceOf, unmeasured } from '../source-maker.ts';
import type { PartPlan } from '../types.ts';
import { agreedMasterLimit, upperDash } from './upper-dash.ts';

/** The instrument panel. `troubled` plants the metameric lid and the deeper grain. */
export function dashParts(way: Colourway, troubled: boolean): PartPlan[] {
  const skin = upperDash(way);
  const middleLeft = plus(way.lower, [0.18, 0.03, 0.05]);
  const middleRight = plus(way.lower, [-0.36, -0.02, 0.16]);
  const vent = sourceOf('vent-left', 'orvandel', 'moulded', plus(skin, [-0.33, -0.03, 0.14]), 2.2, [7.8, 88000, 17], {
    grain: grains.fine,
    status: 'series',
    cavities: 2,
  });
  const bead = sourceOf('bead-left', 'kestemoor', 'metallised', way.nickel, 58, [5.5, 64000, 21]);
  const upper = { zone: 'upper-dash' } as const;
  const dash = { zone: 'dash' } as const;
  return [
    {
      ...upper,
      id: 'upper-dash',
      name: 'Upper dash skin',
      curvatureRadiusMm: 900,
      target: { master: 'master-slate-skin', colourLimit: agreedMasterLimit },
      sources: [
        sourceOf('upper-dash', 'brennhalt', 'soft-skin', skin, 2.45, [62, 310000, 26], {
          grain: grains.fine,
          status: 'series',
          earlierLots: 3,
          sphereToo: true,
          exposed: [0.55, 0.03, 0.35],
          share: 0.7,
        }),
        sourceOf('upper-dash', 'orvandel', 'soft-skin', plus(way.slate, [0.1, 0.02, -0.1]), 1.6, [68.4, 345000, 30], {
          grain: grains.fine,
          share: 0.3,
        }),
      ],
    },
    {
      ...upper,
      id: 'demister-grille',
      name: 'Demister grille',
      visibility: 0.5,
      note: 'Colour reported as CIELAB for one light; the supplier keeps the spectra.',
      sources: [
        sourceOf('demister-grille', 'tulvering', 'moulded', plus(skin, [0.28, -0.05, 0.1]), 1.6, [8.9, 74000, 15], {
          grain: grains.fine,
          session: 'tri-filter',
        }),
      ],
    },
    {
      ...dash,
      id: 'instrument-hood',
      name: 'Instrument hood',
      target: { master: 'master-slate-skin' },
      sources: [
        sourceOf('instrument-hood', 'brennhalt', 'soft-skin', plus(skin, [-0.36, 0.04, 0.14]), 2.25, [13.6, 92000, 22], {
          grain: grains.fine,
          status: 'series',
          exposed: [0.5, 0.03, 0.3],
        }),
      ],
    },
    {
      ...dash,
      id: 'instrument-surround',
      name: 'Instrument surround',
      target: { master: 'master-black' },
      sources: [sourceOf('instrument-surround', 'sundvale', 'gloss-black', plus(way.black, [-0.28, 0.02, 0.04]), 86.4, [12.8, 84000, 18])],
    },
    {
      ...dash,
      id: 'display-surround',
      name: 'Display surround',
      module: 'display',
      target: { master: 'master-black' },
      sources: [
        sourceOf('display-surround', 'sundvale', 'gloss-black', plus(way.black, [0.1, -0.01, -0.04]), 87.3, [21.4, 132000, 20], {
          status: 'series',
          sphereToo: true,
        }),
        sourceOf('display-surround', 'kestemoor', 'gloss-black', plus(way.black, [0.5, 0.05, 0.1]), 84.1, [19.9, 141000, 24], {
          status: 'candidate',
        }),
      ],
    },
    ...(['left', 'right'] as const).map((hand): PartPlan => ({
      ...dash,
      id: `decor-dash-${hand}`,
      name: `Decor strip, ${hand === 'left' ? 'driver side' : 'passenger side'}`,
      hand,
      ...(hand === 'right' ? { mirrorOf: 'decor-dash-left' } : {}),
      note: 'Printed open-pore ash. The mean colour is no measure of the print: judge by eye against the boundary samples.',
      sources: [
        sourceOf(
          `decor-dash-${hand}`,
          'kestemoor',
          'decor-film',
          plus(way.ash, hand === 'left' ? [0.3, 0.1, 0.2] : [-0.5, -0.1, 0.1]),
          18,
          [16.7, 58000, 16],
          {
            surface: 'patterned',
            spots: 8,
            namedColours: [
              { name: 'ground', areaShare: 0.72, lab: plus(way.ash, [3, 1, 2]) },
              { name: 'pore', areaShare: 0.28, lab: plus(way.ash, [-7.7, -2.6, -5.1]) },
            ],
          },
        ),
      ],
    })),
    {
      ...dash,
      id: 'bead-left',
      name: 'Accent bead, driver side',
      hand: 'left',
      visibility: 0.7,
      target: { master: 'master-nickel' },
      sources: [bead],
    },
    {
      ...dash,
      id: 'bead-right',
      name: 'Accent bead, passenger side',
      hand: 'right',
      mirrorOf: 'bead-left',
      visibility: 0.7,
      sources: [unmeasured(bead, 'bead-right')],
    },
    {
      ...dash,
      id: 'mid-dash-left',
      name: 'Mid dash skin, driver side',
      hand: 'left',
      target: { master: 'master-lower-skin' },
      sources: [
        sourceOf('mid-dash-left', 'brennhalt', 'soft-skin', middleLeft, 2.15, [27.5, 146000, 24], {
          grain: grains.fine,
          status: 'series',
          sphereToo: true,
          exposed: [1.6, 0.06, 0.75],
        }),
      ],
    },
    {
      ...dash,
      id: 'mid-dash-right',
      name: 'Mid dash skin, passenger side',
      hand: 'right',
      mirrorOf: 'mid-dash-left',
      target: { master: 'master-lower-skin' },
      sources: [
        sourceOf('mid-dash-right', 'brennhalt', 'soft-skin', middleRight, 2.1, [29.8, 151000, 24], {
          grain: grains.fine,
          status: 'series',
          earlierLots: 2,
        }),
        sourceOf('mid-dash-right', 'orvandel', 'soft-skin', plus(way.lower, [0.35, 0.06, -0.3]), 1.9, [27.1, 158000, 27], {
          grain: grains.fine,
          status: 'candidate',
        }),
      ],
    },
    {
      ...dash,
      id: 'vent-left',
      name: 'Side vent, left',
      hand: 'left',
      visibility: 0.8,
      target: { master: 'master-slate-moulded' },
      sources: [vent],
    },
    {
      ...dash,
      id: 'vent-right',
      name: 'Side vent, right',
      hand: 'right',
      mirrorOf: 'vent-left',
      visibility: 0.8,
      sources: [unmeasured(vent, 'vent-right')],
    },
    {
      ...dash,
      id: 'climate-panel',
      name: 'Climate panel',
      module: 'display',
      target: { master: 'master-paint' },
      sources: [
        sourceOf('climate-panel', 'sundvale', 'painted', plus(way.paint, [0.1, 0.01, -0.05]), 6.1, [18.2, 97000, 19], { status: 'series' }),
        sourceOf('climate-panel', 'kestemoor', 'painted', plus(way.paint, [0.42, -0.04, 0.1]), 6.5, [17.3, 104000, 23], {
          status: 'candidate',
        }),
      ],
    },
    {
      ...dash,
      id: 'knee-panel',
      name: 'Knee panel',
      target: { master: 'master-lower-moulded' },
      sources: [
        sourceOf('knee-panel', 'tulvering', 'moulded', plus(middleLeft, [-0.44, -0.03, 0.12]), 1.95, [15.9, 133000, 20], {
          grain: grains.coarse,
          status: 'series',
          sphereToo: true,
          exposed: [0.25, 0.02, 0.2],
        }),
        sourceOf('knee-panel', 'orvandel', 'moulded', plus(way.lower, [0.1, 0.04, 0.2]), 2.1, [16.4, 139000, 22], { grain: grains.coarse }),
      ],
    },
    {
      ...dash,
      id: 'glovebox-lid',
      name: 'Glove box lid',
      target: { master: 'master-lower-moulded' },
      sources: [
        sourceOf('glovebox-lid', 'orvandel', 'moulded', plus(middleRight, [0.26, -0.03, -0.1]), 1.9, [21.3, 162000, 20], {
          grain: grains.coarse,
          ...(troubled ? { colouring: { kind: 'three-colour', strength: 0.85 }, note: 'Coloured without carbon black.' } : {}),
        }),
        sourceOf('glovebox-lid', 'tulvering', 'moulded', plus(middleRight, [0.2, 0.03, 0.08]), 2, [23.1, 170000, 24], {
          grain: grains.coarse,
        }),
        sourceOf('glovebox-lid', 'brennhalt', 'moulded', plus(middleRight, [-0.34, 0.05, 0.12]), 2.2, [20.6, 155000, 28], {
          grain: grains.coarse,
          status: 'candidate',
        }),
      ],
    },
    {
      ...dash,
      id: 'column-shroud',
      name: 'Steering column shroud',
      visibility: 0.8,
      target: { master: 'master-lower-moulded' },
      sources: [
        sourceOf('column-shroud', 'orvandel', 'moulded', plus(middleLeft, [0.04, -0.02, 0.2]), 1.85, [10.1, 82000, 17], {
          grain: troubled ? grains.deepCoarse : grains.coarse,
          status: 'series',
        }),
        sourceOf('column-shroud', 'tulvering', 'moulded', plus(middleLeft, [-0.2, 0.03, 0.1]), 1.95, [11.2, 88000, 18], {
          grain: grains.coarse,
        }),
      ],
    },
    {
      ...dash,
      id: 'dash-stitch',
      name: 'Dash top stitch',
      visibility: 0.7,
      target: { master: 'master-thread' },
      sources: [sourceOf('dash-stitch', 'quillmoor', 'thread', plus(way.thread, [0.4, 0.1, -0.3]), 1, [0.9, 0, 6])],
    },
  ];
}
