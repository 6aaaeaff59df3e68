/** One element on the way from what had the focus up to the page, with what stood beside it then. */
export interface Rung {
  readonly element: Element;
  readonly next: Element | null;
  readonly previous: Element | null;
}

const focusable = 'a[href], button, input, select, textarea, summary, [tabindex]';

/** The focused element through shadow roots; undefined where it is the page itself. */
export function deepFocus(from: Document | ShadowRoot = document): HTMLElement | undefined {
  const active = from.activeElement;
  if (active === null || active === document.body || active === document.documentElement) return undefined;
  return (active.shadowRoot?.activeElement ? deepFocus(active.shadowRoot) : active) as HTMLElement;
}

/** The way from an element up to the page, through shadow roots. */
export function rungsOf(element: Element): readonly Rung[] {
  const rungs: Rung[] = [];
  for (let at: Element | null = element; at !== null;) {
    rungs.push({ element: at, next: at.nextElementSibling, previous: at.previousElementSibling });
    const up: Node | null = at.parentNode;
    at = up instanceof ShadowRoot ? up.host : at.parentElement;
  }
  return rungs;
}

/** Whether an element is on the page, shown, and takes the focus. */
export const takesFocus = (element: Element): boolean =>
  element.isConnected && element.matches(focusable) && !element.matches(':disabled') && element.closest('[inert]') === null && element.checkVisibility({ visibilityProperty: true });

/** Class of a view that stays on the page while another one is shown. */
export const resting = 'resting';

/** Whether an element is not a view at rest. */
export const inUse = (element: Element): boolean => !element.classList.contains(resting);

/** All elements under a node in the order of the page, through shadow roots; what is not wanted is left out with all that is in it. */
export function* deepElements(root: ParentNode, wanted?: (element: Element) => boolean): Generator<Element> {
  // One generator in the other for each level costs more than all the rest on a page of thousands of elements.
  const waiting: (Element | null)[] = [root.firstElementChild];
  while (waiting.length > 0) {
    const element = waiting.pop();
    if (element === null || element === undefined) continue;
    waiting.push(element.nextElementSibling);
    if (wanted?.(element) === false) continue;
    yield element;
    waiting.push(element.firstElementChild);
    if (element.shadowRoot !== null) waiting.push(element.shadowRoot.firstElementChild);
    else if (element instanceof HTMLSlotElement) yield* element.assignedElements();
  }
}

const stops = (element: Element): boolean => takesFocus(element) && (element as HTMLElement).tabIndex >= 0;

/** What Tab would stop at in an element, in the order of the page. */
export function* stopsIn(element: Element): Generator<HTMLElement, undefined> {
  for (const one of deepElements(element.shadowRoot ?? element)) if (stops(one)) yield one as HTMLElement;
}

/** The element itself or the first one in it that Tab would stop at. */
export const firstStop = (element: Element): HTMLElement | undefined => (stops(element) ? element as HTMLElement : stopsIn(element).next().value);
