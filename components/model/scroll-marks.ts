import { deepElements, inUse } from './focus-path.ts';

/** Fields that scroll without anything in them. */
const fields = 'textarea, pre';

/** How far something in a view is scrolled: what it is, which of several alike, and how far, px. */
export interface ScrollMark {
  readonly kind: string;
  readonly place: number;
  readonly top: number;
  readonly left: number;
}

/** The page itself, where it scrolls and not its content. */
const page = 'page';

const kindOf = (element: Element): string => `${element.localName}.${element.className}`;

/** Whether an element could scroll: to ask it how far has the browser bring all its styles up to date, thousands of times on a large cabin. */
const bears = (element: Element): boolean => element instanceof HTMLElement && inUse(element) && (element.firstElementChild !== null || element.shadowRoot !== null || element.matches(fields));

function* scrollers(content: Element): Iterable<readonly [kind: string, element: Element]> {
  if (document.scrollingElement !== null) yield [page, document.scrollingElement];
  yield ['content', content];
  for (const element of deepElements(content, bears)) yield [kindOf(element), element];
}

/** What is scrolled in the content, and the content and the page themselves. */
export function scrollMarks(content: Element): readonly ScrollMark[] {
  const counts = new Map<string, number>();
  const marks: ScrollMark[] = [];
  for (const [kind, { scrollTop, scrollLeft }] of scrollers(content)) {
    const place = counts.get(kind) ?? 0;
    counts.set(kind, place + 1);
    if (scrollTop > 0 || scrollLeft > 0) marks.push({ kind, place, top: scrollTop, left: scrollLeft });
  }
  return marks;
}

/** Scrolls what the marks name; false where something is not there yet, or not yet long enough. */
export function scrollTo(content: Element, marks: readonly ScrollMark[]): boolean {
  if (marks.length === 0) return true;
  const wanted = new Map(marks.map((mark) => [`${mark.place} ${mark.kind}`, mark]));
  const counts = new Map<string, number>();
  let reached = 0;
  for (const [kind, element] of scrollers(content)) {
    const place = counts.get(kind) ?? 0;
    counts.set(kind, place + 1);
    const mark = wanted.get(`${place} ${kind}`);
    if (mark === undefined) continue;
    element.scrollTo({ top: mark.top, left: mark.left, behavior: 'instant' });
    if (Math.abs(element.scrollTop - mark.top) < 2) reached += 1;
  }
  return reached === marks.length;
}
