import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { announce } from '../controllers/announcer.ts';
import { glossary } from '../model/glossary.ts';
import { base } from '../styles/shared.ts';

/**
 * A word that is not self-evident where it stands: a click or key on it says what it means, in place and aloud. `word` names the entry of the
 * glossary; the element's text is what is shown.
 */
export class AdjoinTerm extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [base, css`
    :host { display: inline; }
    button {
      font: inherit; color: inherit; text-align: inherit; letter-spacing: inherit; border: 0; background: none; cursor: help; min-width: 24px;
      text-decoration: underline dotted 1px; text-underline-offset: 3px; white-space: inherit;
      /* 24 px high to hit without moving lines apart: upwards, since what a label names lies below it. */
      padding: 8px 0 3px; margin: -8px 0 -3px;
    }
    button:hover { text-decoration-style: solid; }
    [popover] {
      position: fixed; inset: auto; margin: 0; width: min(340px, calc(100vw - 16px)); padding: 12px 14px; border: 1px solid var(--ink); border-radius: 4px; background: var(--paper); color: var(--ink);
      box-shadow: 0 8px 24px var(--shade); font-size: var(--body); font-weight: 400; line-height: 1.4; white-space: normal; text-align: left; text-transform: none;
    }
    b { display: block; font-weight: 600; margin-bottom: 2px; }
    @media print { button { text-decoration: none; } }
  `];
  static override properties = { word: {}, shown: { state: true } };

  declare word: string;
  declare shown: boolean;
  /** It was open as the pointer came down on the word, which closes it by itself. */
  private closing = false;

  constructor() {
    super();
    this.word = '';
    this.shown = false;
  }

  /** The meaning is there only while it is shown: it is no part of the words around it, such as the label of a field. */
  private async toggle(): Promise<void> {
    const note = this.renderRoot.querySelector<HTMLElement>('[popover]');
    const button = this.renderRoot.querySelector('button');
    if (note === null || button === null) return;
    const { closing } = this;
    this.closing = false;
    if (closing || note.matches(':popover-open')) {
      note.hidePopover();
      return;
    }
    this.shown = true;
    await this.updateComplete;
    note.showPopover();
    const place = button.getBoundingClientRect();
    const { width, height } = note.getBoundingClientRect();
    note.style.left = `${Math.max(8, Math.min(place.left, innerWidth - width - 8))}px`;
    note.style.top = `${place.bottom + height + 8 > innerHeight ? Math.max(8, place.top - height - 6) : place.bottom + 6}px`;
    announce(this, `${this.word}: ${glossary.get(this.word) ?? ''}`);
  }

  override render(): TemplateResult {
    return html`<button type="button" aria-expanded=${this.shown} aria-description="says what the word means" @pointerdown=${() => { this.closing = this.shown; }} @click=${(event: Event) => { event.stopPropagation(); event.preventDefault(); void this.toggle(); }}><slot>${this.word}</slot></button><span
      popover="auto" role="note" @toggle=${(event: ToggleEvent) => { this.shown = event.newState === 'open'; }}>${this.shown ? html`<b>${this.word}</b>${glossary.get(this.word)}` : nothing}</span>`;
  }
}

customElements.define('adjoin-term', AdjoinTerm);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-term': AdjoinTerm;
  }
}
