import type { MapPoint } from '../../../src/cabin/cabin.ts';
import type { MapPart } from '../../../src/report/figures/cabin-map.ts';
import type { MapPlace } from '../../../src/report/figures/map-place.ts';
import { element } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import { tableInk } from '../../figures/inks.ts';

/** More boxes than this have no room for names. */
const mostNamed = 150;
const fontPx = 11;
/** Mean width of a letter, of the size of the font: an assumption that leaves room. */
const letter = 0.56;

/** Names of the parts whose place on the map is assumed: a box says nothing by its shape. Names that do not fit are cut, and left out where little would stay. */
export function boxNames(outlines: ReadonlyMap<string, readonly MapPoint[]>, parts: ReadonlyMap<string, MapPart>, { toScreen }: MapPlace): SceneElement | undefined {
  if (outlines.size === 0 || outlines.size > mostNamed) return undefined;
  const names = [...outlines].flatMap(([id, [first, , third]]) => {
    const part = parts.get(id);
    if (part === undefined || first === undefined || third === undefined) return [];
    const [[left, top], [right, bottom]] = [toScreen(first), toScreen(third)];
    const room = Math.floor((right - left - 8) / (fontPx * letter));
    if (room < 4 || bottom - top < fontPx + 4) return [];
    const text = part.name.length > room ? `${part.name.slice(0, room - 1)}…` : part.name;
    return [element('text', {
      x: (left + right) / 2, y: (top + bottom) / 2 + fontPx / 3, 'font-size': fontPx, 'text-anchor': 'middle', fill: tableInk.core, stroke: tableInk.casing, 'stroke-width': 3, 'stroke-linejoin': 'round', 'paint-order': 'stroke',
    }, text)];
  });
  return names.length === 0 ? undefined : element('g', { class: 'box-names', 'pointer-events': 'none', 'aria-hidden': 'true' }, names);
}
