import { jointUnder } from '../../src/report/figures/cabin-map.ts';
import type { Point } from '../../src/report/figures/polyline.ts';
import { askSelection } from './edit-events.ts';
import { mapBox } from './map-host.ts';
import type { MapHost } from './map-host.ts';
import type { MapLooking } from './map-looking.ts';
import type { MapPicks, MapThing } from './map-picks.ts';
import type { MapToolInHand } from './map-tool-in-hand.ts';

interface Under extends MapThing {
  /** Place of a point in the outline in hand. */
  readonly point: number | undefined;
}

/** What a pointer was put down on, and where it is now, px. */
interface Pulled extends Under {
  readonly pointer: number;
  readonly from: Point;
  at: Point;
  moved: boolean;
}

/** Px that a pointer may stray and still click. */
const steady = 4;

/** Mouse, pen and fingers on the map: they point, click, pull the map or what the tool in hand takes hold of, pinch, turn the wheel and ask for a menu. */
export class MapPointers {
  constructor(host: MapHost, looking: MapLooking, picks: MapPicks, inHand: MapToolInHand) {
    this.host = host;
    this.looking = looking;
    this.picks = picks;
    this.inHand = inHand;
  }

  private readonly host: MapHost;
  private readonly looking: MapLooking;
  private readonly picks: MapPicks;
  private readonly inHand: MapToolInHand;
  private readonly pointers = new Map<number, Point>();
  private pressed: Pulled | undefined;
  /** Where a pointer went over the map since the last frame. */
  private over: PointerEvent | undefined;

  /** A button is pressed or a finger lies on the map. */
  get down(): boolean {
    return this.pointers.size > 0;
  }

  /** What is pulled, and where to, px; undefined while a press may still be a click. */
  get pulled(): { readonly part: string | undefined; readonly at: Point } | undefined {
    return this.pressed?.moved === true ? this.pressed : undefined;
  }

  readonly press = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    const at = this.at(event);
    this.pointers.set(event.pointerId, at);
    this.pressed = this.pointers.size === 1 ? { pointer: event.pointerId, from: at, at, ...this.under(event), moved: false } : undefined;
    if (this.pressed?.point !== undefined) askSelection(this.host, { parts: this.host.selection.parts ?? [], point: this.pressed.point });
  };

  readonly move = (event: PointerEvent): void => {
    const before = this.pointers.get(event.pointerId);
    if (before === undefined) {
      this.hoverSoon(event);
      return;
    }
    const now = this.at(event);
    const other = [...this.pointers].find(([id]) => id !== event.pointerId)?.[1];
    if (this.pointers.size === 2 && other !== undefined) this.looking.pinch(before, now, other);
    this.pointers.set(event.pointerId, now);
    const { pressed } = this;
    if (pressed?.pointer !== event.pointerId) return;
    if (!pressed.moved) {
      if (Math.hypot(now[0] - pressed.from[0], now[1] - pressed.from[1]) < steady) return;
      pressed.moved = true;
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    }
    pressed.at = now;
    const { tool, outlining } = this.inHand;
    if (tool === 'outline' && pressed.point !== undefined) outlining.drag(pressed.point, now);
    else if (tool !== 'join' || pressed.part === undefined) this.looking.move([now[0] - before[0], now[1] - before[1]]);
    this.host.requestUpdate();
  };

  readonly lift = (event: PointerEvent): void => {
    this.pointers.delete(event.pointerId);
    const { pressed, inHand: { tool, outlining, joining } } = this;
    this.pressed = undefined;
    const kept = pressed !== undefined && pressed.pointer === event.pointerId && event.type !== 'pointercancel';
    outlining.drop(kept && pressed.moved);
    if (kept && !pressed.moved) {
      this.click(pressed, event);
      return;
    }
    const onto = kept && tool === 'join' && pressed.part !== undefined ? this.under(event).part : undefined;
    if (onto !== undefined && onto !== pressed?.part) joining.join(pressed?.part as string, onto);
    this.host.requestUpdate();
  };

  readonly leave = (): void => {
    if (this.down) return;
    this.over = undefined;
    this.host.pointedPart = undefined;
    this.picks.point(undefined);
  };

  readonly wheel = (event: WheelEvent): void => this.looking.turn(event, this.at(event));

  readonly menu = (event: MouseEvent): void => {
    if (!this.host.editable) return;
    const thing = this.under(event);
    if (thing.part === undefined && thing.joint === undefined) return;
    event.preventDefault();
    this.picks.menu(event.clientX, event.clientY, thing);
  };

  private click({ part, joint, point, at }: Pulled, event: PointerEvent): void {
    const { tool, outlining, joining } = this.inHand;
    if (outlining.isDrawing) outlining.set(at);
    else if (point !== undefined) return;
    else if (tool === 'join') {
      if (part !== undefined) joining.pick(part);
    } else if (joint !== undefined) this.picks.open(joint);
    else if (part !== undefined) this.picks.select(part, event.shiftKey || event.ctrlKey || event.metaKey);
    else this.picks.clear();
  }

  /** What lies under a pointer is looked for once in a frame, where it was last: each look has the browser lay out what the one before changed. */
  private hoverSoon(event: PointerEvent): void {
    const isAsked = this.over !== undefined;
    this.over = event;
    if (isAsked) return;
    requestAnimationFrame(() => {
      const { over } = this;
      this.over = undefined;
      if (over !== undefined && !this.down && this.host.isConnected) this.hover(over);
    });
  }

  private hover(event: PointerEvent): void {
    const { part, joint } = this.under(event);
    this.inHand.outlining.aim(this.at(event));
    if (part !== this.host.pointedPart) this.host.pointedPart = part;
    if (joint !== this.host.pointed) this.picks.point(joint);
  }

  private at(event: MouseEvent): Point {
    const box = mapBox(this.host);
    return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
  }

  /** Parts and points are found by the browser; joints, many of which lie in one path, by their lines. Only who looks about points at joints. */
  private under(event: MouseEvent): Under {
    const target = this.host.shadowRoot?.elementFromPoint(event.clientX, event.clientY);
    const data = (name: string): string | undefined => target?.closest<SVGElement>(`[data-${name}]`)?.dataset[name];
    const point = data('point');
    const { input, place } = this.host;
    const joint = this.inHand.tool === 'look' && input !== undefined && place !== undefined ? jointUnder(input, place, this.at(event))?.id : undefined;
    return { part: data('part'), joint, point: point === undefined ? undefined : Number(point) };
  }
}
