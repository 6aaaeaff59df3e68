import type { Point } from '../../src/report/figures/polyline.ts';
import { element } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';
import { tableInk } from '../figures/inks.ts';
import { askAction } from './edit-events.ts';
import type { MapHost } from './map-host.ts';

/** Draws a joint from one part to another: two are picked, or one is pulled onto the other. */
export class MapJoining {
  constructor(host: MapHost) {
    this.host = host;
  }

  /** The part that was picked first. */
  first: string | undefined;
  private readonly host: MapHost;

  begin(first: string | undefined): void {
    this.first = first;
    this.host.requestUpdate();
  }

  /** Takes the first part, or joins it with the second. */
  pick(part: string): void {
    const { first } = this;
    if (first === undefined) this.begin(part);
    else if (part !== first) {
      this.begin(undefined);
      this.join(first, part);
    }
  }

  join(first: string, second: string): void {
    askAction(this.host, 'joint.add', { first, second });
  }

  /** The line from the first part to where the second is looked for, px. */
  overlay(from: Point | undefined, to: Point | undefined): SceneElement | undefined {
    return from === undefined ? undefined : joiningLine(from, to);
  }

  /** What can be done now; `nameOf` gives the name of a part. */
  hint(nameOf: (part: string) => string | undefined): string {
    const first = this.first === undefined ? undefined : nameOf(this.first);
    return first === undefined ? 'Drag from one part to another, or pick two: by pointer, or by arrow keys and Enter.' : `${first} and …? Pick the second part. Escape leaves.`;
  }
}

function joiningLine(from: Point, to: Point | undefined): SceneElement {
  const line = to === undefined ? undefined : { x1: from[0], y1: from[1], x2: to[0], y2: to[1] };
  return element(
    'g', { class: 'joining', 'pointer-events': 'none' },
    line === undefined ? undefined : element('line', { ...line, stroke: tableInk.casing, 'stroke-width': 6 }),
    line === undefined ? undefined : element('line', { ...line, stroke: tableInk.core, 'stroke-width': 2, 'stroke-dasharray': '3 5', 'stroke-linecap': 'round' }),
    element('circle', { cx: from[0], cy: from[1], r: 7, fill: tableInk.core, stroke: tableInk.casing, 'stroke-width': 2 }),
  );
}
