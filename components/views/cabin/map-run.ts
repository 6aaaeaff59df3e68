import type { RunResult } from '../../../src/harmony/judgement.ts';
import type { MapPart } from '../../../src/report/figures/cabin-map.ts';
import type { MapPlace } from '../../../src/report/figures/map-place.ts';
import { element, pathThrough } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import { tableInk } from '../../figures/inks.ts';
import { middleOf } from '../../model/part-middle.ts';

/** Id of a run in an address: its own, or the ends of one that was found. */
export const runKey = ({ id, parts }: RunResult): string => id ?? `${parts[0]}..${parts.at(-1)}`;

const bead = { least: 4, most: 13 } as const;

/** A run across the map: a bead on every part, as large as the part is far from the first one; the limit is the ring. */
export function runOverlay(run: RunResult, parts: ReadonlyMap<string, MapPart>, { toScreen }: MapPlace): SceneElement {
  const stops = run.parts.flatMap((id, index) => {
    const part = parts.get(id);
    return part === undefined ? [] : [{ at: toScreen(middleOf(part)), step: index === 0 ? 0 : run.steps[index] }];
  });
  const d = pathThrough(stops.map(({ at }) => at));
  const size = (step: number): number => Math.min(bead.most, bead.least + ((bead.most - 4 - bead.least) * step) / (run.limit ?? 1));
  return element(
    'g', { class: 'run', 'pointer-events': 'none' },
    element('path', { d, fill: 'none', stroke: tableInk.casing, 'stroke-width': 6, 'stroke-linejoin': 'round' }),
    element('path', { d, fill: 'none', stroke: tableInk.core, 'stroke-width': 2, 'stroke-linejoin': 'round' }),
    stops.map(({ at: [cx, cy], step }) => (step === undefined
      ? element('circle', { cx, cy, r: 5, fill: tableInk.casing, stroke: tableInk.core, 'stroke-width': 1.5, 'stroke-dasharray': '2 2' })
      : element('circle', { cx, cy, r: size(step), fill: tableInk.core, stroke: tableInk.casing, 'stroke-width': 2 }))),
    run.limit === undefined ? undefined : stops.map(({ at: [cx, cy] }) => element('circle', { cx, cy, r: bead.most - 4, fill: 'none', stroke: tableInk.casing, 'stroke-width': 1, 'stroke-dasharray': '2 2.5' })),
  );
}
