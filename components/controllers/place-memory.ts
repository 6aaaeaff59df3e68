import { findMarked, focusMark } from '../model/focus-mark.ts';
import type { FocusMark } from '../model/focus-mark.ts';

/** Name in the storage of this tab, so that a page that is loaded anew finds its places again. */
const storedAs = 'adjoin-places';
/** Entries that are remembered. */
const most = 60;
/** How long a view that is still being loaded or judged is waited for. */
const patienceMs = 8000;

/** Remembers for each step of the history which control of the view had the focus, and gives it back there. */
export class PlaceMemory {
  constructor(view: () => Element | null, reveal: (mark: FocusMark) => void) {
    this.view = view;
    this.reveal = reveal;
  }

  private readonly view: () => Element | null;
  /** Brings what a mark names into being where a view draws only a part of what it has. */
  private readonly reveal: (mark: FocusMark) => void;
  private readonly marks = new Map<number, FocusMark>(stored());
  private until = 0;

  /** Before a place is left: what had the focus in it. */
  leave(entry: number, had: Element | undefined): void {
    const view = this.view();
    const mark = view === null || had === undefined ? undefined : focusMark(had, view);
    if (mark === undefined) this.marks.delete(entry);
    else this.marks.set(entry, mark);
    sessionStorage.setItem(storedAs, JSON.stringify([...this.marks].slice(-most)));
  }

  /** After a place was come back to. */
  comeBack(entry: number): void {
    const mark = this.marks.get(entry);
    if (mark !== undefined) this.look(mark);
  }

  /**
   * Gives the focus to what a mark names, as soon as the view shows it; a view may still have to be loaded, or its cabin to be judged. The
   * user's own next step ends the waiting.
   */
  look(mark: FocusMark): void {
    const until = performance.now() + patienceMs;
    this.until = until;
    const stop = (): void => {
      if (this.until === until) this.until = 0;
    };
    for (const own of ['keydown', 'pointerdown']) addEventListener(own, stop, { once: true, capture: true });
    const step = (): void => {
      if (this.until !== until || performance.now() > until) return;
      const view = this.view();
      const found = view === null ? undefined : findMarked(view, mark);
      if (found !== undefined) {
        found.focus();
        return;
      }
      this.reveal(mark);
      requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  }
}

function stored(): readonly (readonly [number, FocusMark])[] {
  try {
    return JSON.parse(sessionStorage.getItem(storedAs) ?? '[]') as [number, FocusMark][];
  } catch {
    return [];
  }
}
