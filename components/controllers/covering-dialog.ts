import type { LitElement, ReactiveController } from 'lit';
import { deepElements, deepFocus, firstStop, stopsIn } from '../model/focus-path.ts';

/** Those that are shown, the topmost last. */
const shown: CoveringDialog[] = [];

/**
 * The dialog of its host, laid over the page: the focus stays in it, Escape closes it, the page below is out of reach, and the focus goes back
 * where it was. What a browser itself calls modal does the same by making the rest of the page inert, which has every element of it styled
 * anew as the dialog comes and again as it goes; with a large cabin that takes longer than a key may. The host covers the page
 * by the styles in `styles/cover.ts` and gives the dialog `aria-modal`.
 */
export class CoveringDialog implements ReactiveController {
  /** @param first - what takes the focus as it is shown; where there is none, what Tab would come to first */
  constructor(host: LitElement, first: () => HTMLElement | null) {
    this.host = host;
    this.first = first;
    host.addController(this);
  }

  private readonly host: LitElement;
  private readonly first: () => HTMLElement | null;

  hostDisconnected(): void {
    this.forget();
  }

  get isShown(): boolean {
    return this.dialog?.open === true;
  }

  show(): void {
    const { dialog } = this;
    if (dialog === null || dialog.open) return;
    dialog.show();
    if (!this.takeFocus() && !dialog.matches(':modal')) {
      // Below a modal dialog, such as the review, nothing takes the focus: there it must be one too.
      dialog.close();
      dialog.showModal();
      this.takeFocus();
    }
    this.forget();
    shown.push(this);
    addEventListener('keydown', this.key);
    dialog.addEventListener('close', this.closed);
  }

  hide(): void {
    this.dialog?.close();
  }

  private get dialog(): HTMLDialogElement | null {
    return this.host.renderRoot.querySelector('dialog');
  }

  /** Whether it could take the focus. */
  private takeFocus(): boolean {
    const { dialog } = this;
    this.first()?.focus();
    if (dialog !== null && !this.hasFocus) firstStop(dialog)?.focus();
    return this.hasFocus;
  }

  private get hasFocus(): boolean {
    return (this.host.renderRoot as ShadowRoot).activeElement !== null;
  }

  /** Of a dialog that was shown again before its closing was told, nothing is put away. */
  private readonly closed = (): void => {
    if (!this.isShown) this.forget();
  };

  private forget(): void {
    const at = shown.indexOf(this);
    if (at >= 0) shown.splice(at, 1);
    removeEventListener('keydown', this.key);
    this.dialog?.removeEventListener('close', this.closed);
  }

  private readonly key = (event: KeyboardEvent): void => {
    const { dialog } = this;
    if (dialog === null || !this.isShown || shown.at(-1) !== this || event.defaultPrevented) return;
    if (event.key !== 'Escape' && event.key !== 'Tab') return;
    // A focus that is nowhere is this dialog's, unless something modal lies above it: then nothing in here takes it.
    if (!event.composedPath().includes(dialog) && (deepFocus() !== undefined || !this.takeFocus())) return;
    if (event.key === 'Tab') this.goRound(dialog, event);
    else this.escape(dialog, event);
  };

  /** From the last stop to the first and back; in between the browser knows better. */
  private goRound(dialog: HTMLDialogElement, event: KeyboardEvent): void {
    const stops = [...stopsIn(dialog)];
    const [from, to] = event.shiftKey ? [stops[0], stops.at(-1)] : [stops.at(-1), stops[0]];
    if (deepFocus() !== from) return;
    event.preventDefault();
    to?.focus();
  }

  /** What has popped up in it, such as the meaning of a word, is closed before it by the browser. */
  private escape(dialog: HTMLDialogElement, event: KeyboardEvent): void {
    if ([...deepElements(dialog)].some((element) => element.matches(':popover-open'))) return;
    event.preventDefault();
    this.hide();
  }
}
