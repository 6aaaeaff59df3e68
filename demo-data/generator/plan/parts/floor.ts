import type { Colourway } from '../colourways.ts';
import { plus } from '../colourways.ts';
import { sourceOf } from '../source-maker.ts';
import type { PartPlan } from '../types.ts';

/** Both carpets. */
export function floorParts(way: Colourway): PartPlan[] {
  return (['left', 'right'] as const).map((hand): PartPlan => ({
    zone: 'floor',
    hand,
    id: `carpet-${hand}`,
    name: `Floor carpet, ${hand}`,
    visibility: 0.4,
    target: { master: 'master-carpet' },
    ...(hand === 'right' ? { mirrorOf: 'carpet-left' } : {}),
    sources: [
      sourceOf(
        `carpet-${hand}`,
        'pallendine',
        'carpet',
        plus(way.carpet, hand === 'left' ? [0.75, 0.03, 0.08] : [-0.4, -0.04, 0.12]),
        1,
        [31.5, 27000, 11],
        { session: 'carpet-line', status: 'series', ...(hand === 'left' ? { exposed: [2.1, 0.2, 1.3] as const } : {}) },
      ),
      sourceOf(`carpet-${hand}`, 'quillmoor', 'carpet', plus(way.carpet, [0.9, 0.1, 0.2]), 1, [29.7, 31000, 15], {
        session: 'carpet-line',
        status: 'candidate',
        spots: 5,
      }),
    ],
  }));
}
