import type { MapLayer } from '../../src/report/figures/cabin-map.ts';
import type { MapPlace } from '../../src/report/figures/map-place.ts';
import type { SceneElement } from '../../src/report/scene.ts';

/** A layer as it is drawn by now. */
export interface DrawnLayer {
  readonly key: string;
  readonly made: SceneElement;
  /** Where it was drawn, which is another place than the present one as long as its turn has not come. */
  readonly place: MapPlace;
  /** It follows the pointer, and is drawn anew each time. */
  readonly follows: boolean;
}

interface Known extends DrawnLayer {
  readonly of: readonly unknown[];
}

/**
 * The layers of a map on a page, drawn over as many frames as they need: in each no more than the page bears. What is not drawn yet, or was
 * drawn when something was other, is shown as it was until its turn comes.
 */
export class DrawnLayers {
  private known = new Map<string, Known>();

  /** Draws layers up to so much weight and until it is late, one at least, and gives all that there are, from below to on top. */
  draw(layers: readonly MapLayer[], place: MapPlace, most: number, late: () => boolean = () => false): { readonly layers: readonly DrawnLayer[]; readonly finished: boolean } {
    const known = new Map<string, Known>();
    let weight = 0;
    let finished = true;
    for (const { key, of, weight: own, make } of layers) {
      const before = this.known.get(key);
      if (own > 0 && before !== undefined && samePlace(before.place, place) && sameItems(before.of, of)) {
        known.set(key, before.place === place ? before : { ...before, place });
        continue;
      }
      if (own === 0 || (most > 0 && (weight === 0 || (weight + own <= most && !late())))) {
        known.set(key, { key, of, place, made: make(), follows: own === 0 });
        weight += own;
        continue;
      }
      finished = false;
      if (before !== undefined) known.set(key, before);
    }
    this.known = known;
    return { layers: [...known.values()], finished };
  }

  /** Forgets what is drawn, as of another cabin. */
  clear(): void {
    this.known.clear();
  }
}

const samePlace = (a: MapPlace, b: MapPlace): boolean =>
  a === b || (a.scale === b.scale && a.view.zoom === b.view.zoom && a.view.centre[0] === b.view.centre[0] && a.view.centre[1] === b.view.centre[1]);

const sameItems = (before: readonly unknown[], now: readonly unknown[]): boolean => before.length === now.length && before.every((item, at) => item === now[at]);
