import type { Colourway } from '../colourways.ts';
import { placedAt, plus } from '../colourways.ts';
import { grains } from '../materials.ts';
import { sourceOf, unmeasured } from '../source-maker.ts';
import type { PartPlan } from '../types.ts';
import { agreedMasterLimit, towardYellow, upperDash } from './upper-dash.ts';

/** Both doors with their sills. `troubled` plants the glossy sill and the sill of the other instrument. */
export function doorParts(way: Colourway, troubled: boolean): PartPlan[] {
  const panel = sourceOf('door-switch-left', 'sundvale', 'gloss-black', plus(way.black, [0.15, -0.02, 0.05]), 86.9, [8.4, 61000, 17], {
    cavities: 2,
  });
  const stitch = sourceOf('roll-stitch-left', 'quillmoor', 'thread', plus(way.thread, [-0.3, 0.2, 0.2]), 1, [0.8, 0, 6]);
  return (['left', 'right'] as const).flatMap((hand): PartPlan[] => {
    const left = hand === 'left';
    const door = { zone: `door-${hand}`, hand } as const;
    const other = (id: string) => (left ? {} : { mirrorOf: `${id}-left` });
    const named = (name: string) => `${name}, ${hand}`;
    const roll = left ? placedAt(way.slate, towardYellow, 0.7 * agreedMasterLimit) : plus(upperDash(way), [-0.26, -0.02, 0.17]);
    const pocket = plus(way.lower, left ? [0.4, 0.02, -0.12] : [-0.36, -0.03, 0.02]);
    return [
      {
        ...door,
        ...other('door-roll'),
        id: `door-roll-${hand}`,
        name: named('Door top roll'),
        target: { master: 'master-slate-skin', colourLimit: agreedMasterLimit },
        sources: [
          sourceOf(`door-roll-${hand}`, 'brennhalt', 'soft-skin', roll, 2.2, [18.9, 121000, 22], {
            grain: grains.fine,
            status: 'series',
            earlierLots: 2,
            ...(left ? { exposed: [0.6, 0.05, 0.5] as const } : {}),
            share: 0.6,
          }),
          sourceOf(
            `door-roll-${hand}`,
            'orvandel',
            'soft-skin',
            plus(way.slate, left ? [0.05, 0.03, -0.3] : [0.2, 0.03, -0.4]),
            2.05,
            [20.2, 127000, 25],
            { grain: grains.fine, share: 0.4 },
          ),
          ...(left
            ? [
                sourceOf('door-roll-left', 'tulvering', 'soft-skin', plus(way.slate, [-0.4, 0.08, 0.3]), 1.9, [17.2, 119000, 29], {
                  grain: grains.fine,
                  status: 'candidate',
                }),
              ]
            : []),
        ],
      },
      {
        ...door,
        ...other('door-decor'),
        id: `door-decor-${hand}`,
        name: named('Door decor strip'),
        target: { master: 'master-bronze' },
        sources: [
          sourceOf(
            `door-decor-${hand}`,
            'kestemoor',
            'decor-film',
            plus(way.bronze, left ? [0.2, 0.1, -0.2] : [-0.15, -0.1, 0.25]),
            left ? 24.3 : 23.6,
            [9.9, 52000, 15],
          ),
          ...(left
            ? [
                sourceOf('door-decor-left', 'sundvale', 'decor-film', plus(way.bronze, [-0.6, 0.3, 0.5]), 25.6, [9.1, 57000, 18], {
                  status: 'candidate',
                }),
              ]
            : []),
        ],
      },
      {
        ...door,
        ...other('door-insert'),
        id: `door-insert-${hand}`,
        name: named('Door insert'),
        module: `door-trim-${hand}`,
        target: { master: 'master-cloth' },
        sources: [
          sourceOf(
            `door-insert-${hand}`,
            'quillmoor',
            'textile',
            plus(way.cloth, left ? [0.7, 0.02, -0.14] : [-0.45, -0.05, 0.14]),
            1,
            [13.2, 44000, 12],
            { surface: 'melange', status: 'series' },
          ),
          ...(left
            ? [
                sourceOf('door-insert-left', 'haddesk', 'textile', plus(way.cloth, [-0.7, 0.1, 0.2]), 1, [12.4, 47000, 14], {
                  surface: 'melange',
                  status: 'candidate',
                }),
              ]
            : []),
        ],
      },
      {
        ...door,
        ...other('door-armrest'),
        id: `door-armrest-${hand}`,
        name: named('Door armrest'),
        module: `door-trim-${hand}`,
        target: { master: 'master-hide' },
        sources: [
          sourceOf(
            `door-armrest-${hand}`,
            'quillmoor',
            'leather',
            plus(way.hide, left ? [0.2, 0.03, 0.1] : [-0.16, -0.04, -0.05]),
            2,
            [24.8, 39000, 13],
            { grain: grains.hide, status: 'series' },
          ),
          ...(left
            ? [
                sourceOf('door-armrest-left', 'haddesk', 'leather', plus(way.hide, [0.1, 0.02, 0.05]), 2.1, [26.9, 36000, 15], {
                  grain: grains.hide,
                }),
              ]
            : []),
        ],
      },
      {
        ...door,
        ...other('door-switch'),
        id: `door-switch-${hand}`,
        name: named('Switch panel'),
        visibility: 0.7,
        ...(left ? { target: { master: 'master-black' } } : {}),
        sources: [left ? panel : unmeasured(panel, 'door-switch-right')],
      },
      {
        ...door,
        ...other('map-pocket'),
        id: `map-pocket-${hand}`,
        name: named('Map pocket panel'),
        target: { master: 'master-lower-moulded' },
        sources: [
          sourceOf(`map-pocket-${hand}`, 'orvandel', 'moulded', pocket, 1.85, [22.6, 188000, 21], {
            grain: grains.coarse,
            status: 'series',
            earlierLots: 2,
          }),
          ...(left
            ? [
                sourceOf('map-pocket-left', 'tulvering', 'moulded', plus(way.lower, [-0.1, 0.04, 0.15]), 2, [23.8, 196000, 23], {
                  grain: grains.coarse,
                }),
              ]
            : []),
        ],
      },
      {
        ...door,
        ...other('sill'),
        zone: 'floor',
        id: `sill-${hand}`,
        name: named('Sill trim'),
        visibility: 0.5,
        target: { master: 'master-lower-moulded', glossLimit: 0.8 },
        sources: [
          left
            ? sourceOf('sill-left', 'tulvering', 'moulded', plus(pocket, [-0.24, -0.03, 0.14]), troubled ? 2.6 : 2, [7.3, 68000, 15], {
                grain: grains.coarse,
              })
            : sourceOf(
                'sill-right',
                'tulvering',
                'moulded',
                plus(pocket, troubled ? [0.58, 0.03, -0.05] : [0.2, 0.03, -0.05]),
                1.9,
                [7.3, 68000, 15],
                { grain: grains.coarse, ...(troubled ? { session: 'yard' } : {}) },
              ),
          sourceOf(`sill-${hand}`, 'orvandel', 'moulded', plus(pocket, [0.2, 0.02, -0.1]), 1.95, [7.9, 72000, 17], {
            grain: grains.coarse,
          }),
          ...(left
            ? [
                sourceOf('sill-left', 'pallendine', 'moulded', plus(pocket, [-0.4, 0.06, 0.25]), 2.3, [6.8, 65000, 20], {
                  grain: grains.coarse,
                  status: 'candidate',
                }),
              ]
            : []),
        ],
      },
      {
        ...door,
        ...other('roll-stitch'),
        id: `roll-stitch-${hand}`,
        name: named('Top roll stitch'),
        visibility: 0.6,
        ...(left ? { target: { master: 'master-thread' } } : {}),
        sources: [left ? stitch : unmeasured(stitch, 'roll-stitch-right')],
      },
    ];
  });
}
