import type { Intent, JointKind } from '../../../src/cabin/cabin.ts';
import type { JointPlan } from './types.ts';

type Row = readonly [
  first: string,
  second: string,
  kind: JointKind,
  gapMm: number,
  colour?: Intent['colour'],
  surfaces?: Pick<Intent, 'gloss' | 'texture'>,
];

const glossFree = { gloss: 'free' } as const;

/** Left and right joints of parts that come in two hands; `@` stands for the hand. */
const handed: readonly Row[] = [
  ['headliner', 'visor-@', 'gap', 3, 'match'],
  ['headliner', 'a-pillar-@', 'gap', 1.5, 'match'],
  ['headliner', 'b-pillar-@', 'gap', 1.5, 'match'],
  ['a-pillar-@', 'upper-dash', 'gap', 2.5, 'contrast'],
  ['a-pillar-@', 'door-roll-@', 'gap', 4, 'contrast'],
  ['b-pillar-@', 'door-roll-@', 'gap', 4, 'contrast'],
  ['upper-dash', 'door-roll-@', 'gap', 5, 'match'],
  ['upper-dash', 'vent-@', 'gap', 0.8, 'match'],
  ['upper-dash', 'decor-dash-@', 'edge', 0.4],
  ['upper-dash', 'mid-dash-@', 'sightline', 0, 'tone-step'],
  ['decor-dash-@', 'bead-@', 'edge', 0],
  ['decor-dash-@', 'vent-@', 'gap', 0.6],
  ['bead-@', 'mid-dash-@', 'edge', 0.3],
  ['vent-@', 'mid-dash-@', 'gap', 0.8, 'tone-step'],
  ['display-surround', 'decor-dash-@', 'gap', 0.7, undefined, glossFree],
  ['display-surround', 'mid-dash-@', 'gap', 0.8, 'contrast'],
  ['climate-panel', 'mid-dash-@', 'gap', 0.8, 'tone-step', glossFree],
  ['door-roll-@', 'door-decor-@', 'edge', 0.3, 'contrast'],
  ['door-roll-@', 'roll-stitch-@', 'seam', 0, 'contrast'],
  ['door-decor-@', 'door-insert-@', 'edge', 0.3, 'contrast'],
  ['door-insert-@', 'door-armrest-@', 'step', 1.2, 'tone-step'],
  ['door-insert-@', 'door-switch-@', 'gap', 0.6, 'contrast'],
  ['door-armrest-@', 'door-switch-@', 'gap', 0.6, 'contrast'],
  ['door-armrest-@', 'map-pocket-@', 'step', 1, 'tone-step'],
  ['map-pocket-@', 'sill-@', 'gap', 4, 'match'],
  ['map-pocket-@', 'mid-dash-@', 'sightline', 0, 'match'],
  ['sill-@', 'carpet-@', 'gap', 1, 'tone-step'],
  ['console-frame', 'console-side-@', 'gap', 0.7, 'tone-step', glossFree],
  ['headrest-@', 'seat-bolster-@', 'gap', 6, 'match'],
  ['seat-bolster-@', 'seat-back-@', 'seam', 0, 'tone-step'],
  ['seat-bolster-@', 'seat-cushion-@', 'gap', 8, 'tone-step'],
  ['seat-back-@', 'seat-cushion-@', 'gap', 8, 'match'],
  ['seat-bolster-@', 'seat-stitch-@', 'seam', 0, 'contrast'],
  ['seat-cushion-@', 'carpet-@', 'gap', 30, 'tone-step'],
];

const single: readonly Row[] = [
  ['headliner', 'overhead-console', 'gap', 1.2, 'match'],
  ['upper-dash', 'demister-grille', 'gap', 0.8, 'match', glossFree],
  ['upper-dash', 'instrument-hood', 'gap', 1, 'match'],
  ['upper-dash', 'display-surround', 'gap', 0.8, 'contrast'],
  ['upper-dash', 'dash-stitch', 'seam', 0, 'contrast'],
  ['instrument-hood', 'instrument-surround', 'gap', 0.6, 'contrast'],
  ['instrument-surround', 'decor-dash-left', 'gap', 0.6, undefined, glossFree],
  ['instrument-surround', 'display-surround', 'sightline', 0, 'match'],
  ['decor-dash-left', 'decor-dash-right', 'sightline', 0, 'match'],
  ['mid-dash-left', 'mid-dash-right', 'sightline', 0, 'match'],
  ['mid-dash-left', 'knee-panel', 'gap', 1, 'match'],
  ['mid-dash-left', 'column-shroud', 'gap', 5, 'match'],
  ['knee-panel', 'column-shroud', 'gap', 5, 'match'],
  ['mid-dash-right', 'glovebox-lid', 'gap', 1, 'match'],
  ['display-surround', 'climate-panel', 'gap', 0.6, 'contrast'],
  ['climate-panel', 'console-frame', 'gap', 1, 'match'],
  ['climate-panel', 'selector-surround', 'gap', 1, 'contrast'],
  ['console-frame', 'selector-surround', 'edge', 0.2, 'contrast'],
  ['console-frame', 'console-lid', 'gap', 2, 'tone-step', glossFree],
  ['console-lid', 'lid-stitch', 'seam', 0, 'contrast'],
  ['door-decor-left', 'door-decor-right', 'sightline', 0, 'match'],
  ['door-insert-left', 'door-insert-right', 'sightline', 0, 'match'],
  ['door-armrest-left', 'door-armrest-right', 'sightline', 0, 'match'],
  ['seat-bolster-left', 'seat-bolster-right', 'sightline', 0, 'match'],
  ['carpet-left', 'carpet-right', 'seam', 0, 'match'],
];

const viewing: readonly (readonly [pattern: RegExp, viewMm: number])[] = [
  [/headliner|pillar|visor/, 550],
  [/carpet|sill/, 1200],
  [/seat|headrest/, 900],
  [/console|selector|lid|door|map-pocket/, 650],
];

/** A tone step is a step between tones of one family; between a dark part and a light one it becomes a contrast. */
export function jointPlans(isLight: (part: string) => boolean): JointPlan[] {
  const rows = [
    ...single,
    ...handed.flatMap((row) =>
      ['left', 'right'].map((hand): Row => {
        const [first, second, ...rest] = row;
        return [first.replace('@', hand), second.replace('@', hand), ...rest];
      }),
    ),
  ];
  return rows.map(([first, second, kind, gapMm, colour, surfaces]): JointPlan => {
    const wanted = colour === 'tone-step' && isLight(first) !== isLight(second) ? 'contrast' : colour;
    return {
      id: `${first}--${second}`,
      parts: [first, second],
      kind,
      ...(kind === 'sightline' ? {} : { gapMm }),
      viewMm: kind === 'sightline' ? 1100 : (viewing.find(([pattern]) => pattern.test(first) || pattern.test(second))?.[1] ?? 700),
      ...(kind === 'step' ? { stepMm: 3 } : {}),
      ...(wanted || surfaces ? { intent: { ...(wanted ? { colour: wanted } : {}), ...surfaces } } : {}),
    };
  });
}
