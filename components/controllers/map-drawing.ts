import type { ReactiveController } from 'lit';
import { mapLayers } from '../../src/report/figures/cabin-map.ts';
import type { CabinMapInput, CabinMapSize } from '../../src/report/figures/cabin-map.ts';
import { MapMemory } from '../../src/report/figures/map-memory.ts';
import { DrawnLayers } from '../figures/drawn-layers.ts';
import { tableInk } from '../figures/inks.ts';
import { mapSheets } from '../figures/map-sheets.ts';
import type { MapSheets } from '../figures/map-sheets.ts';
import type { MapHost } from './map-host.ts';
import { MapLie } from './map-lie.ts';
import type { MapLooking } from './map-looking.ts';

/** Faces, or as much else, that are drawn in one frame. */
const mostInFrame = 512;
/** Ms that may go by in a frame before no more is drawn in it. The browser needs about twice as long for what was drawn. */
const mostOfFrame = 5;

/** The map as it is drawn by now: in every frame as much as the page bears, the rest in the next ones; while one looks about nothing but what follows the pointer. */
export class MapDrawing implements ReactiveController {
  constructor(host: MapHost, looking: MapLooking) {
    this.host = host;
    this.looking = looking;
    this.lie = new MapLie(host, looking);
    host.addController(this);
  }

  private readonly host: MapHost;
  private readonly looking: MapLooking;
  private readonly lie: MapLie;
  private readonly memory = new MapMemory();
  private readonly drawn = new DrawnLayers();
  private drawnFor = '';
  private frame = 0;

  hostDisconnected(): void {
    cancelAnimationFrame(this.frame);
  }

  /** The sheets of the map, with what is marked on it; undefined while there is nothing to draw. */
  sheets(input: CabinMapInput, overlay: CabinMapSize['overlay'] & {}): MapSheets | undefined {
    const { place, boxSize, cabin } = this.host;
    const { settling, view } = this.looking;
    if (place === undefined) return undefined;
    const [width, height] = boxSize;
    const box = `${cabin.id} ${width} ${height}`;
    if (box !== this.drawnFor) this.drawn.clear();
    this.drawnFor = box;
    const layers = mapLayers(input, { width, height, interactive: true, memory: this.memory, overlay, view }, tableInk);
    const begun = performance.now();
    const { layers: drawn, finished } = this.drawn.draw(layers, place, settling ? 0 : mostInFrame, () => performance.now() - begun > mostOfFrame);
    if (!finished && !settling) this.goOn();
    return mapSheets(drawn, this.lie.at(place), boxSize, input.title);
  }

  /** Draws what is left in the next frame. */
  private goOn(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.host.requestUpdate());
  }
}
