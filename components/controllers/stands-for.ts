import { noChange } from 'lit';
import { Directive, directive, PartType } from 'lit/directive.js';
import type { ElementPart, PartInfo } from 'lit/directive.js';
import type { Selection } from '../../src/actions/index.ts';
import { askMenu, askSelection } from './edit-events.ts';

interface Standing {
  readonly selection: Selection;
  /** Its menu is offered. */
  readonly editable: boolean;
  /** The focus in it selects it. */
  readonly byFocus: boolean;
}

/** What elements stand for. */
const standing = new WeakMap<Element, Standing>();
/** Events that an element further in has taken. */
const taken = new WeakSet<Event>();
const events = ['focusin', 'contextmenu', 'keydown'] as const;

function happened(this: Element | ShadowRoot, event: Event): void {
  if (taken.has(event)) return;
  const path = event.composedPath();
  const tree = this instanceof ShadowRoot ? this : this.getRootNode();
  for (const one of path.slice(0, path.indexOf(this) + 1)) {
    const found = one instanceof Element && one.getRootNode() === tree ? standing.get(one) : undefined;
    if (found !== undefined && answered(one as Element, event, found)) return;
  }
}

/** Whether the element, as what it stands for, has taken the event. */
function answered(element: Element, event: Event, { selection, editable, byFocus }: Standing): boolean {
  if (event.type === 'focusin') {
    if (!byFocus) return false;
    taken.add(event);
    askSelection(element, selection);
    return true;
  }
  if (!editable || event.defaultPrevented) return false;
  if (event instanceof KeyboardEvent) {
    if (event.key !== 'ContextMenu' && !(event.key === 'F10' && event.shiftKey)) return false;
    const { left, bottom } = (event.composedPath()[0] as Element).getBoundingClientRect();
    offer(element, event, left, bottom, selection);
    return true;
  }
  if (!(event instanceof MouseEvent) || isText(event)) return false;
  offer(element, event, event.clientX, event.clientY, selection);
  return true;
}

function offer(from: Element, event: Event, x: number, y: number, selection: Selection): void {
  taken.add(event);
  event.preventDefault();
  event.stopPropagation();
  askMenu(from, { x, y, selection });
}

/** In a field the browser's own menu is of more use. */
const isText = (event: Event): boolean => event.composedPath().some((one) => one instanceof HTMLInputElement && one.type !== 'checkbox' || one instanceof HTMLTextAreaElement);

const heard = new WeakSet<Element | ShadowRoot>();

function listen(to: Element | ShadowRoot): void {
  if (heard.has(to)) return;
  heard.add(to);
  for (const kind of events) to.addEventListener(kind, happened as EventListener);
}

/** Says what an element stands for, as `standsFor()` does in a template. */
export function standFor(element: Element, what: Standing): void {
  listen(element);
  standing.set(element, what);
}

class StandsFor extends Directive {
  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.ELEMENT) throw new TypeError('standsFor() belongs to an element');
  }

  /** One ear for all that the host draws: a list may have thousands of rows. */
  override update({ element, options }: ElementPart, [selection, editable, byFocus = true]: [Selection, boolean, boolean?]): typeof noChange {
    const host = options?.host instanceof Element ? options.host : element;
    listen(host.shadowRoot ?? host);
    standing.set(element, { selection, editable, byFocus });
    return noChange;
  }

  override render(_selection: Selection, _editable: boolean, _byFocus?: boolean): typeof noChange {
    return noChange;
  }
}

/**
 * Says what an element of a list stands for: what has the focus in it is what keys and commands act on, and its menu, by pointer or by key,
 * offers what can be done with it. Of several around each other the innermost counts. Where `byFocus` is false the focus selects nothing.
 */
export const standsFor = directive(StandsFor);
