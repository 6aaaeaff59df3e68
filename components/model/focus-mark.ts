import { deepElements, inUse, takesFocus } from './focus-path.ts';

/** What is enough to find a control again in a view that was drawn anew. */
export interface FocusMark {
  readonly tag: string;
  /** Where a link leads, without what is filtered and shown; else the name of the control. */
  readonly name: string;
  /** Which of several alike. */
  readonly place: number;
}

const nameOf = (element: Element): string => {
  const address = element.getAttribute('href');
  if (address !== null) return address.split('?')[0] ?? '';
  return (element.getAttribute('aria-label') ?? element.id) || (element.getAttribute('name') ?? element.textContent?.trim().slice(0, 80) ?? '');
};

const alike = (view: Element, tag: string, name: string): HTMLElement[] =>
  [...deepElements(view, inUse)].filter((one): one is HTMLElement => one.localName === tag && nameOf(one) === name && takesFocus(one));

/** The mark of a control in a view; undefined where it is not in it. */
export function focusMark(control: Element, view: Element): FocusMark | undefined {
  const [tag, name] = [control.localName, nameOf(control)];
  const place = alike(view, tag, name).indexOf(control as HTMLElement);
  return place < 0 ? undefined : { tag, name, place };
}

export const findMarked = (view: Element, { tag, name, place }: FocusMark): HTMLElement | undefined => {
  const found = alike(view, tag, name);
  return found[place] ?? found[0];
};
