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

/** The sheets of a map that lie where the map lies, and above them those that follow the pointer. */
export interface MapSheets {
  readonly lying: readonly MapSheet[];
  readonly above: readonly MapSheet[];
}

/**
 * The layers of a map as drawings of their own on each other: a browser paints a drawing anew as a whole where anything in it changes.
 * One that was drawn at another place than the sheets lie at is shown as it lies from there. The first has the name of the map.
 */
export function mapSheets(layers: readonly DrawnLayer[], lie: MapPlace, [width, height]: Point, title: string): MapSheets {
  const sheetOf = ({ key, made, place, follows }: DrawnLayer, at: number): MapSheet => {
    const svg = drawing(width, height, at === 0 ? title : undefined, made);
    return { key, svg: place === lie || follows ? svg : { ...svg, attributes: { ...svg.attributes, viewBox: viewBoxOf(place, lie, [width, height]) } } };
  };
  const sheets = layers.map(sheetOf);
  return { lying: sheets.filter((_, at) => layers[at]?.follows === false), above: sheets.filter((_, at) => layers[at]?.follows === true) };
}
