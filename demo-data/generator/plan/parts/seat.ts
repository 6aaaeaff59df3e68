import type { Colourway } from '../colourways.ts';
import { plus } from '../colourways.ts';
import { grains } from '../materials.ts';
import { sourceOf, unmeasured } from '../source-maker.ts';
import type { PartPlan } from '../types.ts';

/** Both seats. `troubled` plants the headrest with too few spots. */
export function seatParts(way: Colourway, troubled: boolean): PartPlan[] {
  const stitch = sourceOf('seat-stitch-left', 'quillmoor', 'thread', plus(way.thread, [0.1, -0.1, 0.3]), 1, [1.4, 0, 6]);
  return (['left', 'right'] as const).flatMap((hand): PartPlan[] => {
    const left = hand === 'left';
    const seat = { zone: 'seats', hand } as const;
    const other = (id: string) => (left ? {} : { mirrorOf: `${id}-left` });
    const bolster = plus(way.hide, left ? [0.3, 0.02, 0.05] : [-0.2, -0.02, 0.14]);
    const rest = plus(bolster, left ? (troubled ? [-0.68, -0.03, 0.05] : [-0.3, -0.03, 0.05]) : [-0.45, 0.05, 0.02]);
    return [
      {
        ...seat,
        ...other('headrest'),
        id: `headrest-${hand}`,
        name: `Headrest, ${hand}`,
        module: `seat-${hand}`,
        target: { master: 'master-hide' },
        sources: [
          sourceOf(`headrest-${hand}`, 'haddesk', 'leather', rest, 1.95, [19.8, 28000, 12], {
            grain: grains.hide,
            status: 'series',
            ...(left && troubled ? { spots: 3 } : {}),
          }),
        ],
      },
      {
        ...seat,
        ...other('seat-bolster'),
        id: `seat-bolster-${hand}`,
        name: `Seat bolster, ${hand}`,
        module: `seat-${hand}`,
        target: { master: 'master-hide' },
        sources: [
          sourceOf(`seat-bolster-${hand}`, 'haddesk', 'leather', bolster, 2.05, [58.2, 46000, 14], {
            grain: grains.hide,
            status: 'series',
          }),
        ],
      },
      {
        ...seat,
        ...other('seat-back'),
        id: `seat-back-${hand}`,
        name: `Backrest centre, ${hand}`,
        module: `seat-cover-${hand}`,
        target: { master: 'master-cloth' },
        sources: [
          sourceOf(
            `seat-back-${hand}`,
            'quillmoor',
            'textile',
            plus(way.cloth, left ? [-0.55, 0.03, 0.06] : [0.35, 0.05, -0.08]),
            1,
            [16.3, 21000, 10],
            { surface: 'melange', status: 'series' },
          ),
          ...(left
            ? [
                sourceOf('seat-back-left', 'haddesk', 'textile', plus(way.cloth, [0.8, 0.1, 0.3]), 1, [15.1, 24000, 13], {
                  surface: 'melange',
                  status: 'candidate',
                }),
              ]
            : []),
        ],
      },
      {
        ...seat,
        ...other('seat-cushion'),
        id: `seat-cushion-${hand}`,
        name: `Seat cushion, ${hand}`,
        module: `seat-cover-${hand}`,
        target: { master: 'master-cloth' },
        sources: [
          sourceOf(
            `seat-cushion-${hand}`,
            'quillmoor',
            'textile',
            plus(way.cloth, left ? [0.62, 0.02, -0.12] : [-0.6, -0.05, 0.14]),
            1,
            [18.8, 23000, 10],
            { surface: 'melange', status: 'series' },
          ),
          ...(left
            ? [
                sourceOf('seat-cushion-left', 'haddesk', 'textile', plus(way.cloth, [0.5, 0.12, 0.2]), 1, [17.6, 25000, 13], {
                  surface: 'melange',
                  status: 'candidate',
                }),
              ]
            : []),
        ],
      },
      {
        ...seat,
        ...other('seat-stitch'),
        id: `seat-stitch-${hand}`,
        name: `Seat stitch, ${hand}`,
        visibility: 0.6,
        ...(left ? { target: { master: 'master-thread' } } : {}),
        sources: [left ? stitch : unmeasured(stitch, 'seat-stitch-right')],
      },
    ];
  });
}
