import type { MapPlace, MapView } from '../../src/report/figures/map-place.ts';
import type { Point } from '../../src/report/figures/polyline.ts';

export const mostZoom = 40;

/** The view after zooming by a factor about a point of the box, px, that stays where it is; not farther out than the whole. */
export function zoomedView({ view, toCabin }: MapPlace, factor: number, about: Point, size: Point): MapView | undefined {
  const zoom = Math.min(mostZoom, view.zoom * factor);
  if (zoom <= 1.001) return undefined;
  const share = view.zoom / zoom;
  const [x, y] = toCabin(about);
  const [middleX, middleY] = toCabin([size[0] / 2, size[1] / 2]);
  return { zoom, centre: [x + (middleX - x) * share, y + (middleY - y) * share] };
}

/** The view after the drawing was moved by px. */
export const movedView = ({ view, scale }: MapPlace, by: Point): MapView => ({ zoom: view.zoom, centre: [view.centre[0] - by[0] / scale, view.centre[1] - by[1] / scale] });

/** As in an address: `2.5,700,300`. */
export const viewText = (view: MapView | undefined): string =>
  (view === undefined ? '' : [view.zoom.toFixed(2), view.centre[0].toFixed(0), view.centre[1].toFixed(0)].join(','));

/** Undefined for what no map writes. */
export function parseView(text: string | undefined): MapView | undefined {
  const [zoom, x, y, ...rest] = (text ?? '').split(',').map((part) => (part === '' ? NaN : Number(part)));
  if (zoom === undefined || x === undefined || y === undefined || rest.length > 0 || ![zoom, x, y].every(Number.isFinite) || zoom <= 1) return undefined;
  return { zoom: Math.min(mostZoom, zoom), centre: [x, y] };
}

/** The viewBox through which what was drawn at one place shows as at another. */
export function viewBoxOf(drawn: MapPlace, now: MapPlace, size: Point): string {
  const share = drawn.scale / now.scale;
  const [x, y] = drawn.toScreen(now.toCabin([0, 0]));
  return [x, y, size[0] * share, size[1] * share].map((value) => value.toFixed(2)).join(' ');
}

/** The transform that shows what was drawn at one place as at another, about the upper left corner. */
export function transformBetween(drawn: MapPlace, now: MapPlace): string {
  const [x, y] = now.toScreen(drawn.toCabin([0, 0]));
  return `translate(${x.toFixed(2)}px, ${y.toFixed(2)}px) scale(${(now.scale / drawn.scale).toFixed(5)})`;
}

/** The nearest of some points in the direction of an arrow key, within 60 degrees of it; undefined where there is none. */
export function nearestTowards<T extends { readonly at: Point }>(from: Point, key: string, others: readonly T[]): T | undefined {
  const direction = ({ ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] } as Readonly<Record<string, Point>>)[key];
  if (direction === undefined) return undefined;
  let best: { readonly item: T; readonly score: number } | undefined;
  for (const item of others) {
    const [dx, dy] = [item.at[0] - from[0], item.at[1] - from[1]];
    const along = dx * direction[0] + dy * direction[1];
    const across = Math.abs(dx * direction[1] - dy * direction[0]);
    if (along <= 1e-6 || across > along * Math.sqrt(3)) continue;
    const score = along + across * 2;
    if (best === undefined || score < best.score) best = { item, score };
  }
  return best?.item;
}
