/** Says a sentence in the page's one polite live region; the element that holds the region listens for it. */
export const announceEvent = 'adjoin-announce';

export function announce(from: EventTarget, text: string): void {
  from.dispatchEvent(new CustomEvent(announceEvent, { detail: text, bubbles: true, composed: true }));
}
