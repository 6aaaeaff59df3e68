import type { ReactiveControllerHost } from 'lit';
import type { Selection } from '../../src/actions/selection.ts';
import type { Part } from '../../src/cabin/cabin.ts';
import type { MapPlace } from '../../src/report/figures/map-place.ts';
import type { Point } from '../../src/report/figures/polyline.ts';

/** The map as its controllers see it. */
export interface MapHost extends ReactiveControllerHost, HTMLElement {
  /** Where the cabin is drawn; undefined while there is nothing to draw. */
  readonly place: MapPlace | undefined;
  /** Width and height, px. */
  readonly boxSize: Point;
  readonly selection: Selection;
  readonly editable: boolean;
  /** The part that tools work on, with the last edit in it. */
  readonly active: Part | undefined;
}
