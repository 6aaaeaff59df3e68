import type { MapPlace } from '../../src/report/figures/map-place.ts';
import type { Point } from '../../src/report/figures/polyline.ts';
import { drawing } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';
import { viewBoxOf } from '../model/map-gestures.ts';
import type { DrawnLayer } from './drawn-layers.ts';

/** One drawing of a map that lie on each other. */
export interface MapSheet {
  readonly key: string;
  readonly svg: SceneElement;
}

/**
 * The layers of a map as drawings of their own on each other: a browser paints a drawing anew as a whole where anything in it changes.
 * One that was drawn at another place is shown as it lies from the present one. The first has the name of the map.
 */
export function mapSheets(layers: readonly DrawnLayer[], now: MapPlace, [width, height]: Point, title: string): readonly MapSheet[] {
  return layers.map(({ key, made, place }, at) => {
    const svg = drawing(width, height, at === 0 ? title : undefined, made);
    return { key, svg: place === now ? svg : { ...svg, attributes: { ...svg.attributes, viewBox: viewBoxOf(place, now, [width, height]) } } };
  });
}
