import { findMarked, focusMark } from '../model/focus-mark.ts';
import type { FocusMark } from '../model/focus-mark.ts';
import { scrollMarks, scrollTo } from '../model/scroll-marks.ts';
import type { ScrollMark } from '../model/scroll-marks.ts';

/** Name in the storage of this tab, so that a page that is loaded anew finds its places again. */
const storedAs = 'adjoin-places-2';
/** Entries that are remembered. */
const most = 60;
/** How long a view that is still being loaded or judged is waited for. */
const patienceMs = 8000;

/** What is remembered of a place. */
interface Remembered {
  readonly mark?: FocusMark;
  readonly scrolls: readonly ScrollMark[];
}

/** Remembers for each step of the history which control of the view had the focus and how far it was scrolled, and brings both back there. */
export class PlaceMemory {
  constructor(view: () => Element | null, content: () => Element | null, reveal: (mark: FocusMark) => void) {
    this.view = view;
    this.content = content;
    this.reveal = reveal;
  }

  private readonly view: () => Element | null;
  /** What scrolls around the view. */
  private readonly content: () => Element | null;
  /** Brings what a mark names into being where a view draws only a part of what it has. */
  private readonly reveal: (mark: FocusMark) => void;
  private readonly places = new Map<number, Remembered>(stored());
  private until = 0;

  /** Before a place is left: what had the focus in it, and what was scrolled. */
  leave(entry: number, had: Element | undefined): void {
    const view = this.view();
    const content = this.content();
    const mark = view === null || had === undefined ? undefined : focusMark(had, view);
    this.places.set(entry, { ...(mark === undefined ? {} : { mark }), scrolls: content === null ? [] : scrollMarks(content) });
    try {
      sessionStorage.setItem(storedAs, JSON.stringify([...this.places].slice(-most)));
    } catch {
      // Nothing is lost but the comfort.
    }
  }

  /** After a place was come back to. */
  comeBack(entry: number): void {
    const place = this.places.get(entry);
    if (place !== undefined) this.look(place.mark, place.scrolls);
  }

  /**
   * Gives the focus to what a mark names, as soon as the view shows it, and scrolls as far as it was; a view may still have to be loaded, or
   * its cabin to be judged. The user's own next step ends the waiting.
   */
  private look(mark: FocusMark | undefined, scrolls: readonly ScrollMark[]): void {
    const until = performance.now() + patienceMs;
    this.until = until;
    const stop = (): void => {
      if (this.until === until) this.until = 0;
    };
    for (const own of ['keydown', 'pointerdown', 'wheel']) addEventListener(own, stop, { once: true, capture: true });
    let focused = mark === undefined;
    const step = (): void => {
      if (this.until !== until || performance.now() > until) return;
      const view = this.view();
      if (!focused && mark !== undefined) {
        const found = view === null ? undefined : findMarked(view, mark);
        if (found === undefined) this.reveal(mark);
        else found.focus();
        focused = found !== undefined;
      }
      const content = this.content();
      // Of a long list, what had the focus is there only once one is where one was.
      const there = content !== null && scrollTo(content, scrolls);
      if (focused && there) return;
      requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  }
}

function stored(): readonly (readonly [number, Remembered])[] {
  try {
    return JSON.parse(sessionStorage.getItem(storedAs) ?? '[]') as [number, Remembered][];
  } catch {
    return [];
  }
}
