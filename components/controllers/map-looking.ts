import type { ReactiveController } from 'lit';
import type { MapView } from '../../src/report/figures/map-place.ts';
import type { Point } from '../../src/report/figures/polyline.ts';
import { mostZoom, movedView, parseView, viewText, zoomedView } from '../model/map-gestures.ts';
import type { MapHost } from './map-host.ts';

/** How long the map rests before it is drawn anew where one looks, ms. */
const settleMs = 140;
/** What is brought into sight keeps this far from the edge, px. */
const margin = 48;

/** Where one looks on a map: moved, zoomed, fitted, by keys, wheel and two fingers. While it moves, what is drawn is only shown elsewhere. */
export class MapLooking implements ReactiveController {
  constructor(host: MapHost, told: (at: string) => void) {
    this.host = host;
    this.told = told;
    host.addController(this);
  }

  /** Undefined where all of the cabin is seen. */
  view: MapView | undefined;
  private readonly host: MapHost;
  private readonly told: (at: string) => void;
  private timer: ReturnType<typeof setTimeout> | undefined;

  hostDisconnected(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  /** It moves, and what is drawn is that of a while ago. */
  get settling(): boolean {
    return this.timer !== undefined;
  }

  /** Takes what the address says, unless one moves it just now. */
  read(at: string | undefined): void {
    if (!this.settling) this.view = parseView(at);
  }

  /** Looks elsewhere at once through what is drawn, and has it drawn anew when the eye rests. */
  look(view: MapView | undefined): void {
    this.view = view;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.timer = undefined;
      this.host.requestUpdate();
      this.told(viewText(this.view));
    }, settleMs);
    this.host.requestUpdate();
  }

  zoom(factor: number, about: Point = [this.host.boxSize[0] / 2, this.host.boxSize[1] / 2]): void {
    const { place, boxSize } = this.host;
    if (place !== undefined) this.look(zoomedView(place, factor, about, boxSize));
  }

  move(by: Point): void {
    const { place } = this.host;
    if (place !== undefined) this.look(movedView(place.view.zoom > 1 ? place : { ...place, view: { ...place.view, zoom: 1.0011 } }, by));
  }

  /** One of two fingers moves, the other rests. */
  pinch(before: Point, now: Point, other: Point): void {
    const apart = (point: Point): number => Math.hypot(point[0] - other[0], point[1] - other[1]);
    if (apart(before) > 0) this.zoom(apart(now) / apart(before), [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2]);
  }

  turn(event: WheelEvent, at: Point): void {
    // Where the map scrolls with the page, turning the wheel scrolls on; with Ctrl, and as a pinch on a pad, it zooms everywhere.
    if (!event.ctrlKey && matchMedia('(max-width: 1080px)').matches) return;
    event.preventDefault();
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    this.zoom(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0015)), at);
  }

  /** Returns whether the key was taken. */
  key({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent): boolean {
    if ((ctrlKey || metaKey) && !shiftKey && key.startsWith('Arrow')) {
      const by = ({ ArrowLeft: [60, 0], ArrowRight: [-60, 0], ArrowUp: [0, 60], ArrowDown: [0, -60] } as Readonly<Record<string, Point>>)[key];
      if (by !== undefined) this.move(by);
      return true;
    }
    if (ctrlKey || metaKey || altKey) return false;
    switch (key) {
      case '+': case '=': this.zoom(1.4); return true;
      case '-': this.zoom(1 / 1.4); return true;
      case '0': this.look(undefined); return true;
      default: return false;
    }
  }

  /** Brings a point of the cabin into the box where it lies outside. */
  reveal(point: Point): void {
    const { place, boxSize: [width, height] } = this.host;
    if (place === undefined || this.view === undefined) return;
    const [x, y] = place.toScreen(point);
    if (x > margin && y > margin && x < width - margin && y < height - margin) return;
    this.look({ zoom: place.view.zoom, centre: point });
  }

  /** Goes so near to an outline that its points can be told apart. */
  near(outline: readonly Point[]): void {
    const { place, boxSize: [width, height] } = this.host;
    if (place === undefined || outline.length < 2) return;
    const points = outline.map(place.toScreen);
    const closest = points.map((point, index) => Math.hypot(point[0] - (points.at(index - 1)?.[0] ?? 0), point[1] - (points.at(index - 1)?.[1] ?? 0))).sort((a, b) => a - b);
    if ((closest[Math.floor(closest.length / 4)] ?? Infinity) > 14) return;
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
    const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const scale = Math.min(width / Math.max(1, right - left), height / Math.max(1, bottom - top)) * 0.8;
    const zoom = (place.view.zoom * scale) / place.scale;
    if (zoom > place.view.zoom) this.look({ zoom: Math.min(mostZoom, zoom), centre: [(left + right) / 2, (top + bottom) / 2] });
  }
}
