import { labelPoint } from '../../src/cabin/index.ts';
import type { MapPart } from '../../src/report/figures/cabin-map.ts';
import type { Point } from '../../src/report/figures/polyline.ts';

const middles = new WeakMap<readonly Point[], Point>();

/** The roomiest place inside an outline, mm; of a thread the point half way along its list. */
export function middleOf(part: MapPart): Point {
  const known = middles.get(part.outline);
  if (known !== undefined) return known;
  const count = part.outline.length;
  const made: Point = part.line || count < 3 ? part.outline[Math.floor(count / 2)] ?? [0, 0] : labelPoint(part.outline);
  middles.set(part.outline, made);
  return made;
}
