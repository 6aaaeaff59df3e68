import type { SceneElement } from '../../src/report/scene.ts';

/** One drawing of a map that lie on each other. */
export interface MapLayer {
  readonly key: string;
  readonly svg: SceneElement;
}

/**
 * The groups of a map as drawings of their own on each other: a browser paints a drawing anew as a whole where anything in it changes, and
 * a large cabin has tens of thousands of lines. The first has the name of the map.
 */
export function mapLayers(map: SceneElement): readonly MapLayer[] {
  const { role: _role, 'aria-label': _label, ...plain } = map.attributes;
  const groups = map.children.filter((child) => typeof child === 'object');
  if (groups.length === 0) return [{ key: '', svg: map }];
  return groups.map((group, place) => ({
    key: `${group.attributes['data-layer'] ?? place}`,
    svg: { tag: map.tag, attributes: place === 0 ? map.attributes : { ...plain, 'aria-hidden': 'true' }, children: [group] },
  }));
}
