/** Places in a list from `from` up to but not with `to`. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** One rendered item and the px left bare before it for those that are not. */
export interface Shown {
  readonly place: number;
  readonly before: number;
}

/** Heights of the items of a long list, px: as measured, else as usual. Items are told apart by id, so that a new order keeps what was measured. */
export class ListHeights {
  constructor(usual: number) {
    this.usual = usual;
  }

  private readonly usual: number;
  private readonly measured = new Map<string, number>();
  private ids: readonly string[] = [];
  private offsets: Float64Array | undefined;

  get length(): number {
    return this.ids.length;
  }

  setItems(ids: readonly string[]): void {
    if (ids === this.ids) return;
    this.ids = ids;
    this.offsets = undefined;
  }

  measure(id: string, height: number): void {
    if (this.measured.get(id) === height) return;
    this.measured.set(id, height);
    this.offsets = undefined;
  }

  /** Px from the top of the list to an item; to the end of the list for its length. */
  offset(place: number): number {
    return this.sums[Math.max(0, Math.min(this.length, place))] ?? 0;
  }

  /** The item that lies at so many px from the top of the list; the first or last one beyond its ends. */
  at(px: number): number {
    const { sums } = this;
    let [low, high] = [0, this.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((sums[middle + 1] ?? Infinity) > px) high = middle;
      else low = middle + 1;
    }
    return Math.max(0, Math.min(this.length - 1, low));
  }

  private get sums(): Float64Array {
    if (this.offsets !== undefined) return this.offsets;
    const sums = new Float64Array(this.ids.length + 1);
    this.ids.forEach((id, place) => {
      sums[place + 1] = (sums[place] ?? 0) + (this.measured.get(id) ?? this.usual);
    });
    this.offsets = sums;
    return sums;
  }
}

/**
 * The next span on the way to all that is to be rendered: up to so many px more at either end of what is there already, one item at least, and
 * what is seen in any case; where nothing of that is there, as after a leap, what is seen and an item on either side. What lies outside of all of it is let go.
 */
export function grownSpan(heights: ListHeights, now: Span, seen: Span, all: Span, px: number): Span {
  if (now.from >= seen.to || now.to <= seen.from) return { from: Math.max(all.from, seen.from - 1), to: Math.min(all.to, seen.to + 1) };
  const [from, to] = [Math.min(now.from, seen.from), Math.max(now.to, seen.to)];
  const [top, bottom] = [heights.at(heights.offset(from) - px), heights.at(heights.offset(to) + px)];
  return { from: Math.max(all.from, Math.min(from - 1, top)), to: Math.min(all.to, Math.max(to + 1, bottom)) };
}

/** The items to render: a span and single ones beside it, each with the room of those left out before it; and the room after the last. */
export function shownItems(heights: ListHeights, span: Span, beside: readonly number[]): { readonly items: readonly Shown[]; readonly after: number } {
  const places = new Set(beside.filter((place) => place >= 0 && place < heights.length));
  for (let place = Math.max(0, span.from); place < Math.min(heights.length, span.to); place += 1) places.add(place);
  let next = 0;
  const items = [...places].sort((a, b) => a - b).map((place): Shown => {
    const before = heights.offset(place) - heights.offset(next);
    next = place + 1;
    return { place, before };
  });
  return { items, after: heights.offset(heights.length) - heights.offset(next) };
}
