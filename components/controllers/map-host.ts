import type { ReactiveControllerHost } from 'lit';
import type { Selection } from '../../src/actions/selection.ts';
import type { Cabin, Part } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import type { CabinMapInput } from '../../src/report/figures/cabin-map.ts';
import type { MapPlace } from '../../src/report/figures/map-place.ts';
import type { Point } from '../../src/report/figures/polyline.ts';

/** The map as its controllers see it. */
export interface MapHost extends ReactiveControllerHost, HTMLElement {
  readonly cabin: Cabin;
  /** What is drawn of it; undefined before it is drawn first. */
  readonly input: CabinMapInput | undefined;
  /** Where the cabin is drawn; undefined while there is nothing to draw. */
  readonly place: MapPlace | undefined;
  /** Width and height, px. */
  readonly boxSize: Point;
  /** Joints that pass the filter, worst first. */
  readonly listed: readonly JointResult[];
  readonly selection: Selection;
  /** Choices that stand in the address. */
  readonly options: Readonly<Record<string, string>>;
  readonly editable: boolean;
  /** The part that tools work on, with the last edit in it. */
  readonly active: Part | undefined;
  /** The joint that is pointed at, here or on the wall. */
  readonly pointed: string | undefined;
  pointedPart: string | undefined;
}

/** Where the map lies in the window; undefined before it is shown first. */
export const mapBox = (host: MapHost): DOMRect | undefined => host.shadowRoot?.querySelector('.map')?.getBoundingClientRect();
