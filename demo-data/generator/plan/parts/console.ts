import type { Colourway } from '../colourways.ts';
import { plus } from '../colourways.ts';
import { grains } from '../materials.ts';
import { sourceOf, unmeasured } from '../source-maker.ts';
import type { PartPlan } from '../types.ts';

/** The centre console. `troubled` notes the lid that misses its step. */
export function consoleParts(way: Colourway, troubled: boolean): PartPlan[] {
  const side = sourceOf('console-side-left', 'orvandel', 'moulded', plus(way.lower, [0.1, 0.01, 0.1]), 1.95, [12.7, 109000, 19], {
    grain: grains.coarse,
  });
  const zone = { zone: 'console' } as const;
  return [
    {
      ...zone,
      id: 'console-frame',
      name: 'Console frame',
      target: { master: 'master-paint' },
      sources: [
        sourceOf('console-frame', 'sundvale', 'painted', plus(way.paint, [-0.14, 0, 0.06]), 6.3, [34.6, 176000, 22], {
          status: 'series',
          sphereToo: true,
        }),
        sourceOf('console-frame', 'kestemoor', 'painted', plus(way.paint, [0.25, 0.03, -0.15]), 6, [32.9, 184000, 26], {
          status: 'candidate',
        }),
      ],
    },
    {
      ...zone,
      id: 'selector-surround',
      name: 'Selector surround',
      target: { master: 'master-black' },
      sources: [sourceOf('selector-surround', 'sundvale', 'gloss-black', plus(way.black, [-0.05, 0.03, 0]), 86.2, [11.9, 79000, 18])],
    },
    {
      ...zone,
      id: 'console-lid',
      name: 'Console lid',
      target: { master: 'master-lid' },
      ...(troubled ? { note: 'Its own, lighter tone: a step to the frame is wanted.' } : {}),
      sources: [
        sourceOf('console-lid', 'haddesk', 'leather', plus(way.lid, [0.1, 0.02, 0.1]), 2.05, [28.4, 33000, 14], {
          grain: grains.hide,
          status: 'series',
        }),
        sourceOf('console-lid', 'quillmoor', 'leather', plus(way.lid, [1.9, 0, 0.05]), 2, [27.2, 35000, 16], { grain: grains.hide }),
      ],
    },
    {
      ...zone,
      id: 'console-side-left',
      name: 'Console side, left',
      hand: 'left',
      target: { master: 'master-lower-moulded' },
      sources: [side],
    },
    {
      ...zone,
      id: 'console-side-right',
      name: 'Console side, right',
      hand: 'right',
      mirrorOf: 'console-side-left',
      sources: [unmeasured(side, 'console-side-right')],
    },
    {
      ...zone,
      id: 'lid-stitch',
      name: 'Console lid stitch',
      visibility: 0.6,
      target: { master: 'master-thread' },
      sources: [sourceOf('lid-stitch', 'quillmoor', 'thread', plus(way.thread, [0.2, -0.2, 0.1]), 1, [0.7, 0, 6])],
    },
  ];
}
