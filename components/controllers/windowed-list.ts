import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { grownSpan, ListHeights, shownItems } from '../model/list-window.ts';
import type { Shown, Span } from '../model/list-window.ts';
import { roveStep } from './roving-focus.ts';

export interface WindowedListOptions {
  /** Finds the list in the host's shadow root, or in the host where it has none. Its rendered children carry `data-place`. */
  readonly list: string;
  /** Height of an item, px, until it is measured. */
  readonly usual: number;
  /** What of an item takes the focus. */
  readonly focusable: string;
  /** Items that go on paper; those of a table all do. */
  readonly printed?: number;
  /** Up to so many items are all rendered. */
  readonly whole?: number;
}

/** Px beyond the edges of what is seen that are rendered too, and that may be missing before more is rendered. */
const ahead = 900;
const short = 350;
/** Px that are added in one frame to what is seen, so that no frame has to make all of it. */
const step = 300;
/** Items rendered before the list has a place on the screen: about as many as it will show. */
const atFirst = ({ usual }: WindowedListOptions): number => Math.max(8, Math.ceil(innerHeight / usual));
/** Items that go on paper; a list of thousands would take hundreds of sheets. */
export const mostPrinted = 200;

/**
 * Renders of a long list only what is near the part that is seen, with the room of the others left bare, so that the list scrolls as if all of it
 * were there. The item that has the focus, or had it last, stays rendered wherever one scrolls. Moves the focus by the arrow keys through
 * all items, rendered or not.
 */
export class WindowedList implements ReactiveController {
  constructor(host: ReactiveControllerHost & HTMLElement, options: WindowedListOptions) {
    this.host = host;
    this.options = options;
    this.heights = new ListHeights(options.usual);
    this.span = { from: 0, to: atFirst(options) };
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly options: WindowedListOptions;
  private readonly heights: ListHeights;
  private ids: readonly string[] = [];
  private places: ReadonlyMap<string, number> = new Map();
  private span: Span;
  private printing = false;
  /** The item that has the focus, or had it last. */
  private current: string | undefined;
  private firstSeen = 0;
  private looking = 0;
  /** Less is rendered than is to be. */
  private growing = false;
  /** The frame in which more was rendered last, by the time of the page. */
  private grownIn: CSSNumberish | null = null;
  /** Put back on the page, and not yet where it was scrolled to. */
  private returning = false;
  /** What is to be brought into sight once it is rendered. */
  private wanted: { readonly id: string; readonly focus: boolean; readonly block: ScrollLogicalPosition } | undefined;
  /** What was gone to last. */
  private kept: HTMLElement | undefined;
  private watched = new Set<Element>();
  private left: { readonly scroller: Element; readonly top: number } | undefined;
  private ways: AbortController | undefined;
  private readonly sizes = new ResizeObserver((entries) => {
    for (const { target, borderBoxSize: [box] } of entries) {
      const id = this.ids[placeOf(target)];
      if (id !== undefined && box !== undefined && box.blockSize > 0) this.heights.measure(id, box.blockSize);
    }
    // Rendering more within the frame that measured would make the observer loop.
    this.growOn();
  });

  /** To be called before every drawing with the ids of the list; the same array where they are the same. */
  setItems(ids: readonly string[]): void {
    if (ids === this.ids) return;
    this.ids = ids;
    this.places = new Map(ids.map((id, place) => [id, place]));
    this.heights.setItems(ids);
    if (this.current !== undefined && !this.places.has(this.current)) this.current = undefined;
  }

  /** The items to render now. */
  get items(): readonly Shown[] {
    return this.shown.items;
  }

  /** Px left bare after the last item that is rendered. */
  get after(): number {
    return this.shown.after;
  }

  /** The item that Tab stops at: the one focused last, else the first that is seen. */
  get stop(): string | undefined {
    return this.current ?? this.ids[Math.min(this.heights.length - 1, this.firstSeen)];
  }

  private get list(): HTMLElement | undefined {
    return (this.host.shadowRoot ?? this.host).querySelector<HTMLElement>(this.options.list) ?? undefined;
  }

  private targetIn(item: HTMLElement): HTMLElement {
    return item.querySelector<HTMLElement>(this.options.focusable) ?? item;
  }

  private get shown(): ReturnType<typeof shownItems> {
    const beside = [this.wanted?.id, this.current].flatMap((id) => (id === undefined ? [] : this.places.get(id) ?? []));
    const { printed = mostPrinted, whole = 0 } = this.options;
    return shownItems(this.heights, this.printing ? { from: 0, to: printed } : this.heights.length <= whole ? { from: 0, to: whole } : this.span, beside);
  }

  /** Brings an item into sight, and the focus to it. */
  goTo(id: string, { focus = false, block = 'nearest' as ScrollLogicalPosition } = {}): void {
    if (!this.places.has(id)) return;
    this.wanted = { id, focus, block };
    this.host.requestUpdate();
  }

  /** To be told of an item that got the focus. */
  focused(id: string): void {
    if (id === this.current) return;
    this.current = id;
    this.host.requestUpdate();
  }

  /** Moves the focus from item to item; returns whether the key was taken. */
  key(event: KeyboardEvent): boolean {
    const here = event.composedPath().find((target) => target instanceof HTMLElement && target.dataset['place'] !== undefined);
    const to = roveStep(event, here === undefined ? -1 : placeOf(here as HTMLElement), this.heights.length, 'vertical');
    const id = to === undefined ? undefined : this.ids[to];
    if (id === undefined) return false;
    event.preventDefault();
    const rendered = [...(this.list?.children ?? [])].find((item): item is HTMLElement => placeOf(item) === to);
    if (rendered === undefined) this.goTo(id, { focus: true });
    else {
      this.wanted = undefined;
      const target = this.targetIn(rendered);
      target.focus();
      void this.keepInSight(target);
    }
    return true;
  }

  /** Goes where one was once the list is drawn: to an item, and with the focus where nothing else has it. */
  returnTo(id: string): void {
    this.current = id;
    this.returning = true;
  }

  /** Goes to the top again, as for another document. */
  reset(): void {
    this.current = undefined;
    this.firstSeen = 0;
    this.wanted = undefined;
    this.left = undefined;
    this.span = { from: 0, to: atFirst(this.options) };
    if (this.host.scrollTop > 0) this.host.scrollTop = 0;
  }

  hostConnected(): void {
    this.ways = new AbortController();
    const { signal } = this.ways;
    const scrolled = (event: Event): void => {
      if (!this.host.checkVisibility()) return;
      const scroller = event.currentTarget instanceof Element ? event.currentTarget : document.scrollingElement;
      if (scroller !== null && !this.returning) this.left = { scroller, top: scroller.scrollTop };
      this.looked();
    };
    for (const ancestor of ancestorsOf(this.host)) ancestor.addEventListener('scroll', scrolled, { passive: true, signal });
    addEventListener('resize', () => this.looked(), { signal });
    addEventListener('beforeprint', () => this.print(true), { signal });
    addEventListener('afterprint', () => this.print(false), { signal });
    this.wake();
  }

  /** After the list was taken off the page and put back, or lay at rest on it: what scrolls it may be scrolled elsewhere by now. */
  wake(): void {
    this.returning = this.left !== undefined || this.current !== undefined;
    if (this.returning) this.host.requestUpdate();
  }

  hostDisconnected(): void {
    this.ways?.abort();
    cancelAnimationFrame(this.looking);
    this.sizes.disconnect();
    this.watched = new Set();
  }

  hostUpdated(): void {
    const { list } = this;
    if (list === undefined) return;
    const { items, after } = this.shown;
    const rooms = new Map(items.map(({ place, before }) => [place, before]));
    const rendered = ([...list.children] as HTMLElement[]).filter(({ dataset }) => dataset['place'] !== undefined);
    // Rows of a table have no margins: bare rows keep their room (`windowedRows()`).
    const isTable = list instanceof HTMLTableSectionElement;
    for (const item of rendered) {
      if (!isTable) setPx(item, 'marginTop', rooms.get(placeOf(item)) ?? 0);
      if (!this.watched.has(item)) this.sizes.observe(item);
    }
    if (isTable) for (const room of list.querySelectorAll<HTMLElement>(':scope > [data-room]')) setPx(room, 'height', Number(room.dataset['room']));
    else setPx(list, 'paddingBottom', after);
    for (const item of this.watched) if (item.parentNode !== list) this.sizes.unobserve(item);
    this.watched = new Set(rendered);
    this.sizes.observe(list);
    if (this.returning) this.restore();
    void this.arrive(rendered);
  }

  private restore(): void {
    this.returning = false;
    const { left, current } = this;
    if (left !== undefined) left.scroller.scrollTop = left.top;
    if (current !== undefined && !isFocused()) this.goTo(current, { focus: true });
  }

  private async arrive(rendered: readonly HTMLElement[]): Promise<void> {
    const { wanted } = this;
    const item = rendered.find((one) => this.ids[placeOf(one)] === wanted?.id);
    if (wanted === undefined || item === undefined) return;
    const target = this.targetIn(item);
    // An element that was just made has nothing in it yet that could take the focus.
    await (target as Partial<ReactiveControllerHost>).updateComplete;
    if (this.wanted !== wanted) return;
    this.wanted = undefined;
    if (wanted.focus) target.focus({ preventScroll: true });
    target.scrollIntoView({ block: wanted.block });
    await this.keepInSight(target);
  }

  /** The items about what was gone to are measured only as they are seen, and may be of another height than they were taken to have. */
  private async keepInSight(target: HTMLElement): Promise<void> {
    this.kept = target;
    for (let frame = 0; frame < 3; frame += 1) {
      await new Promise(requestAnimationFrame);
      if (this.wanted !== undefined || this.kept !== target || !target.isConnected) return;
      target.scrollIntoView({ block: 'nearest' });
    }
  }

  /** Px of the list that are on the screen. */
  private get view(): { readonly top: number; readonly bottom: number } | undefined {
    const { list } = this;
    if (list === undefined) return undefined;
    const [frame, box] = [this.host.getBoundingClientRect(), list.getBoundingClientRect()];
    const [top, bottom] = [Math.max(0, frame.top), Math.min(innerHeight, frame.bottom)];
    return frame.width === 0 || bottom <= top ? undefined : { top: top - box.top, bottom: bottom - box.top };
  }

  private between(top: number, bottom: number): Span {
    return { from: this.heights.at(Math.max(0, top)), to: this.heights.at(bottom) + 1 };
  }

  /** Renders more, or elsewhere, where what is rendered runs short. */
  private looked(): void {
    // To ask where it is would have a list at rest laid out.
    const view = this.host.checkVisibility() ? this.view : undefined;
    if (view === undefined || this.heights.length === 0) return;
    this.firstSeen = this.heights.at(Math.max(0, view.top));
    const needed = this.between(view.top - short, view.bottom + short);
    const { from, to } = this.span;
    if (!this.growing && needed.from >= from && needed.to <= to && to - from <= 4 * (needed.to - needed.from) + 16) return;
    const seen = this.between(view.top, view.bottom);
    // A scroll and what was asked for by the frame before come in one frame: to render for both has it laid out twice. What is seen is not put off.
    if (document.timeline.currentTime === this.grownIn && seen.from >= from && seen.to <= to) {
      this.growOn();
      return;
    }
    const all = this.between(view.top - ahead, view.bottom + ahead);
    const span = grownSpan(this.heights, this.span, seen, all, step);
    this.growing = span.from > all.from || span.to < all.to;
    if (span.from !== from || span.to !== to) {
      this.span = span;
      this.grownIn = document.timeline.currentTime;
      this.host.requestUpdate();
    }
    if (this.growing) this.growOn();
  }

  /** Renders more in a frame to come. */
  private growOn(): void {
    cancelAnimationFrame(this.looking);
    this.looking = requestAnimationFrame(() => this.looked());
  }

  private print(printing: boolean): void {
    if (printing && !this.host.checkVisibility()) return;
    this.printing = printing;
    this.host.requestUpdate();
  }
}

const placeOf = (item: Element): number => Number((item as HTMLElement).dataset['place']);

function setPx(element: HTMLElement, side: 'marginTop' | 'paddingBottom' | 'height', px: number): void {
  const wanted = px === 0 ? '' : `${Math.round(px * 100) / 100}px`;
  if (element.style[side] !== wanted) element.style[side] = wanted;
}

/** Whether anything on the page has the focus beside what takes it where nothing has. */
function isFocused(): boolean {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement != null) active = active.shadowRoot.activeElement;
  return active !== null && active !== document.body && !(active instanceof HTMLElement && active.tabIndex < 0);
}

/** The element itself and all that it lies in, across shadow roots, up to the window. */
function ancestorsOf(element: Element): readonly EventTarget[] {
  const found: EventTarget[] = [];
  for (let node: Node | null = element; node !== null; node = node instanceof ShadowRoot ? node.host : (node as Element).assignedSlot ?? node.parentNode) found.push(node);
  return [...found, window];
}
