import type { MapPoint } from '../../src/cabin/cabin.ts';
import type { MapPlace } from '../../src/report/figures/map-place.ts';
import type { Point } from '../../src/report/figures/polyline.ts';
import type { SceneElement } from '../../src/report/scene.ts';
import { isDrawn } from '../model/is-drawn.ts';
import { askSelection, doAction } from './edit-events.ts';
import type { MapHost } from './map-host.ts';
import { draftOutline, halfWay, keyMove, outlineHandles, rounded } from './map-outline.ts';

/** Px about the first point of an outline within which a click closes it. */
const closing = 10;

/** Draws the outline of the part in hand where it has none, and moves, inserts and deletes the points of one that is there; by pointer and by keys. */
export class MapOutlining {
  constructor(host: MapHost) {
    this.host = host;
  }

  /** The outline that is being drawn, and where the next point would be. */
  private draft: { readonly points: readonly MapPoint[]; readonly cross: MapPoint } | undefined;
  /** A point that is being dragged. */
  private moving: { readonly place: number; readonly to: MapPoint } | undefined;
  private readonly host: MapHost;

  get isDrawing(): boolean {
    return this.draft !== undefined;
  }

  /** Begins an outline where the part in hand has none; ends one that was begun for another part or tool. */
  begin(inHand: boolean): void {
    const { active: part, place, boxSize: [width, height], editable } = this.host;
    const wanted = inHand && part !== undefined && !isDrawn(part) && editable;
    this.draft = wanted && place !== undefined ? { points: [], cross: rounded(place.toCabin([width / 2, height / 2])) } : undefined;
    this.host.requestUpdate();
  }

  /** The pointer is elsewhere while an outline is drawn. */
  aim(at: Point): void {
    const { place } = this.host;
    if (this.draft === undefined || place === undefined) return;
    this.draft = { ...this.draft, cross: rounded(place.toCabin(at)) };
    this.host.requestUpdate();
  }

  /** Sets a point at a place of the box. */
  set(at: Point): void {
    const { place } = this.host;
    if (place !== undefined) this.add(rounded(place.toCabin(at)));
  }

  /** A point is dragged to a place of the box. */
  drag(point: number, at: Point): void {
    const { place } = this.host;
    if (place !== undefined) this.moving = { place: point, to: rounded(place.toCabin(at)) };
  }

  /** The point that was dragged stays where it is, or where it was before if `kept` is false. */
  drop(kept: boolean): void {
    const { moving } = this;
    this.moving = undefined;
    if (kept && moving !== undefined) this.move(moving.place, moving.to);
  }

  /** Returns whether the key was taken; `leave` is called for that which puts the tool down. */
  key(event: KeyboardEvent, leave: () => void): boolean {
    const { active: part, place } = this.host;
    if (part === undefined || place === undefined) return false;
    const by = keyMove(event, place.scale);
    return this.draft === undefined ? this.pointKey(event, by, leave) : this.draftKey(event, by, leave);
  }

  private draftKey({ key }: KeyboardEvent, by: Point | undefined, leave: () => void): boolean {
    const { draft } = this;
    if (draft === undefined) return false;
    if (by !== undefined) this.draft = { ...draft, cross: [draft.cross[0] + by[0], draft.cross[1] + by[1]] };
    else if (key === ' ') this.add(draft.cross);
    else if (key === 'Enter') this.finish();
    else if (key === 'Backspace') this.draft = { ...draft, points: draft.points.slice(0, -1) };
    else if (key === 'Escape') leave();
    else return false;
    this.host.requestUpdate();
    return true;
  }

  private pointKey({ key }: KeyboardEvent, by: Point | undefined, leave: () => void): boolean {
    const { active: part, selection } = this.host;
    const outline = part?.outline ?? [];
    const chosen = selection.point ?? 0;
    const choose = (point: number): void => { askSelection(this.host, { parts: selection.parts ?? [], point: (point + outline.length) % outline.length }); };
    const now = outline[chosen];
    if (part === undefined || now === undefined) return false;
    if (by !== undefined) this.move(chosen, rounded([now[0] + by[0], now[1] + by[1]]), `keys ${part.id} ${chosen}`);
    else if (key === 'PageDown' || key === '.') choose(chosen + 1);
    else if (key === 'PageUp' || key === ',') choose(chosen - 1);
    else if (key === 'Insert' || key === 'i') {
      doAction(this.host, 'part.insert-point', { part: part.id, point: chosen + 1, to: halfWay(outline, chosen) });
      choose(chosen + 1);
    } else if (key === 'Delete') doAction(this.host, 'part.delete-point', { part: part.id, point: chosen });
    else if (key === 'Escape') leave();
    else return false;
    return true;
  }

  private add(at: MapPoint): void {
    const { draft } = this;
    const { place } = this.host;
    if (draft === undefined || place === undefined) return;
    const [first] = draft.points;
    const [x, y] = place.toScreen(at);
    const [firstX, firstY] = first === undefined ? [Infinity, Infinity] : place.toScreen(first);
    if (draft.points.length > 2 && Math.hypot(firstX - x, firstY - y) < closing) this.finish();
    else this.draft = { points: [...draft.points, at], cross: at };
    this.host.requestUpdate();
  }

  private finish(): void {
    const { draft } = this;
    const { active: part } = this.host;
    if (draft === undefined || part === undefined || draft.points.length < 3) return;
    if (doAction(this.host, 'part.set-outline', { part: part.id, outline: draft.points })?.done === true) this.draft = undefined;
  }

  private move(point: number, to: MapPoint, key?: string): void {
    const { active: part } = this.host;
    if (part !== undefined) doAction(this.host, 'part.move-point', { part: part.id, point, to }, key === undefined ? {} : { key });
  }

  /** What is drawn over the map. */
  overlay(inHand: boolean, at: MapPlace): readonly (SceneElement | undefined)[] {
    const { active: part, editable, selection } = this.host;
    const { draft, moving } = this;
    const outline = part?.outline;
    return [
      inHand && editable && part !== undefined && outline !== undefined && draft === undefined
        ? outlineHandles(part, moving === undefined ? outline : outline.with(moving.place, moving.to), selection.point, at) : undefined,
      draft === undefined ? undefined : draftOutline(draft.points, draft.cross, at),
    ];
  }

  /** What can be done now. */
  get hint(): string {
    const { active: part } = this.host;
    if (part === undefined) return 'Choose the part to outline: by pointer, or by arrow keys and Enter.';
    if (this.draft !== undefined) return `Draw ${part.name}: click or Space sets a point, the first point again or Enter closes the outline, Backspace takes one back, Escape leaves.`;
    return 'Drag a point, or move it by arrow keys. Page Up and Page Down choose a point, Insert puts one in after it, Delete takes it out, Escape leaves.';
  }

  /** Where the point in hand is, in words. */
  get words(): string | undefined {
    const { active: part, selection } = this.host;
    const { draft, moving } = this;
    if (part === undefined) return undefined;
    if (draft !== undefined) return `${part.name}: ${draft.points.length} points set; at x ${draft.cross[0]}, y ${draft.cross[1]} mm`;
    const place = selection.point ?? 0;
    const point = moving?.to ?? part.outline?.[place];
    return point === undefined ? undefined : `${part.name}: point ${place + 1} of ${part.outline?.length ?? 0}, x ${point[0]}, y ${point[1]} mm`;
  }
}
