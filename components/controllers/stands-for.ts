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

function happened(this: Element, event: Event): void {
  const found = standing.get(this);
  if (found === undefined || taken.has(event)) return;
  const { selection, editable, byFocus } = found;
  if (event.type === 'focusin') {
    if (!byFocus) return;
    taken.add(event);
    askSelection(this, selection);
    return;
  }
  if (!editable || event.defaultPrevented) return;
  if (event instanceof KeyboardEvent) {
    if (event.key !== 'ContextMenu' && !(event.key === 'F10' && event.shiftKey)) return;
    const { left, bottom } = (event.composedPath()[0] as Element).getBoundingClientRect();
    offer(this, event, left, bottom, selection);
  } else if (event instanceof MouseEvent && !isText(event)) offer(this, event, event.clientX, event.clientY, selection);
}

function offer(from: Element, event: Event, x: number, y: number, selection: Selection): void {
  taken.add(event);
  event.preventDefault();
  event.stopPropagation();
  askMenu(from, { x, y, selection });
}

/** In a field the browser's own menu is of more use. */
const isText = (event: Event): boolean => event.composedPath().some((one) => one instanceof HTMLInputElement && one.type !== 'checkbox' || one instanceof HTMLTextAreaElement);

/** Says what an element stands for, as `standsFor()` does in a template. */
export function standFor(element: Element, what: Standing): void {
  if (!standing.has(element)) for (const kind of events) element.addEventListener(kind, happened);
  standing.set(element, what);
}

class StandsFor extends Directive {
  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.ELEMENT) throw new TypeError('standsFor() belongs to an element');
  }

  override update({ element }: ElementPart, [selection, editable, byFocus = true]: [Selection, boolean, boolean?]): typeof noChange {
    standFor(element, { selection, editable, byFocus });
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
