import { html, LitElement, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { OpenCabin } from '../controllers/open-cabin.ts';
import { announce } from '../controllers/announcer.ts';
import { askAction } from '../controllers/edit-events.ts';
import type { DeskCall } from '../model/commands.ts';
import { keysText } from '../model/keys.ts';
import type { LightGroup } from '../model/light-groups.ts';
import { applyScheme, nextScheme, readScheme } from '../platform/colour-scheme.ts';
import type { Scheme } from '../platform/colour-scheme.ts';
import { base, controls } from '../styles/shared.ts';
import './adjoin-light-picker.ts';
import { styles } from './header.styles.ts';

const schemeWords: Readonly<Record<Scheme, string>> = { auto: 'as the system', light: 'light', dark: 'dark' };

/** One of the row of places. */
export interface Place {
  readonly title: string;
  readonly about: string;
  readonly address: string;
  readonly here: boolean;
  /** It begins a new group. */
  readonly first: boolean;
}

/**
 * The head of the workbench: what is open and whether it is saved, the light everything is shown under, the places, the usual tools.
 * @fires adjoin-call - something the shell does: open, save, undo and their like
 */
export class AdjoinHeader extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = {
    open: { attribute: false }, groups: { attribute: false }, light: {}, sweep: { attribute: false }, home: {}, places: { attribute: false }, scheme: { state: true },
  };

  declare open: OpenCabin | undefined;
  declare groups: readonly LightGroup[];
  declare light: string;
  declare sweep: readonly string[];
  /** Where the mark leads. */
  declare home: string;
  declare places: readonly Place[];
  declare scheme: Scheme;
  private seen: string | undefined;

  constructor() {
    super();
    this.groups = [];
    this.light = 'D65';
    this.sweep = [];
    this.home = '#/';
    this.places = [];
    this.scheme = readScheme();
  }

  private call(call: DeskCall): void {
    this.dispatchEvent(new CustomEvent('adjoin-call', { detail: call, bubbles: true, composed: true }));
  }

  changeScheme(): void {
    this.scheme = nextScheme(this.scheme);
    applyScheme(this.scheme);
    announce(this, `Ink and paper: ${schemeWords[this.scheme]}`);
  }

  /** Where the row of places is longer than the screen, the present one is brought into sight. */
  protected override updated(): void {
    const row = this.renderRoot.querySelector('nav');
    const here = row?.querySelector<HTMLElement>('[aria-current]');
    const place = here?.getAttribute('href')?.split('?')[0];
    if (row == null || here == null || place === this.seen) return;
    this.seen = place;
    // Asked before the frame, the browser would lay out the place that one goes to for this alone.
    requestAnimationFrame(() => requestAnimationFrame(() => {
      if (here.isConnected) row.scrollLeft = here.offsetLeft - row.offsetLeft - (row.clientWidth - here.offsetWidth) / 2;
    }));
  }

  override render(): TemplateResult {
    const { open } = this;
    const cabin = open?.cabin;
    const rules = open && `rules ${open.judgement.ruleBook}`;
    const about = [cabin?.trimLevel, cabin?.colourway, cabin?.phase, rules].filter(Boolean).join(' · ');
    return html`
      <header>
        <a class="mark" href=${this.home} aria-label=${cabin ? 'Adjoin, to the cabin' : 'Adjoin, start'}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path fill="currentColor" d="M1 1h14v6H1z" /><path fill="none" stroke="currentColor" d="M1.5 9.5h13v5h-13z" />
          </svg>
          <span>Adjoin</span>
        </a>
        ${cabin
          ? html`<div class="cabin" title=${open?.file ?? nothing}>
                <button class="bare name" type="button" title="Edit the cabin: name, trim level, colourway, phase, day and stage judged" @click=${() => askAction(this, 'cabin.set')}>${cabin.name}</button>
                <span class="about">${open?.locked ? html`<b>open in another tab</b> · ` : open?.unsaved ? html`<b>not saved</b> · ` : nothing}${about}</span>
              </div>
              <adjoin-light-picker .groups=${this.groups} .light=${this.light} .sweep=${this.sweep}></adjoin-light-picker>`
          : html`<span class="spring"></span>`}
        <div class="tools">${open ? this.edits(open) : nothing}${this.always()}</div>
      </header>
      ${open && this.places.length > 0
        ? html`<nav aria-label="Places">${this.places.map((place) => html`
            <a class=${place.first ? 'first' : nothing} href=${place.address} title=${place.about} aria-current=${place.here ? 'page' : nothing}>${place.title}</a>`)}
          </nav>`
        : nothing}
    `;
  }

  private edits(open: OpenCabin): TemplateResult {
    const step = (call: 'undo' | 'redo', label: string | undefined, path: string, keys: string): TemplateResult => {
      const words = label === undefined ? `Nothing to ${call}` : `${call === 'undo' ? 'Undo' : 'Redo'}: ${label}`;
      return html`<button class="icon" type="button" aria-label=${words} title=${`${words} (${keysText(keys)})`} aria-disabled=${label === undefined} @click=${() => this.call(call)}>
        <svg viewBox="0 0 18 18" aria-hidden="true"><path d=${path} fill="none" stroke="currentColor" stroke-width="1.6" /></svg>
      </button>`;
    };
    return html`
      ${step('undo', open.undo, 'M7 4 3.5 7.5 7 11M4 7.5h7a3.5 3.5 0 0 1 0 7H8', 'Mod+Z')}
      ${step('redo', open.redo, 'M11 4l3.5 3.5L11 11M14 7.5H7a3.5 3.5 0 0 0 0 7h3', 'Mod+Shift+Z')}
      <button type="button" aria-disabled=${!open.unsaved} title=${`Save to the file (${keysText('Mod+S')})`} @click=${() => this.call('save')}>Save</button>
    `;
  }

  private always(): TemplateResult {
    const inkWords = `Ink and paper: ${schemeWords[this.scheme]}`;
    return html`
      <button type="button" @click=${() => this.call('open')}>Open…</button>
      ${this.open
        ? html`<button class="icon" type="button" aria-label="Commands" title=${`Everything that can be done (${keysText('Mod+K')})`} @click=${() => this.call('palette')}>
            <svg viewBox="0 0 18 18" aria-hidden="true"><path d="M3 5h12M3 9h12M3 13h7" fill="none" stroke="currentColor" stroke-width="1.6" /></svg>
          </button>`
        : nothing}
      <button class="icon" type="button" aria-label="Help" title="What to do here, and what the words mean (F1)" @click=${() => this.call('help')}>
        <svg viewBox="0 0 18 18" aria-hidden="true"><path d="M6 6.6a3 3 0 1 1 4.4 2.7c-.9.5-1.4 1-1.4 2M9 13.2v1.6" fill="none" stroke="currentColor" stroke-width="1.6" /></svg>
      </button>
      <button class="icon scheme" type="button" aria-label=${`${inkWords}. Change`} title=${inkWords} @click=${this.changeScheme}>
        <svg viewBox="0 0 18 18" aria-hidden="true">
          <circle cx="9" cy="9" r="6.5" fill=${this.scheme === 'dark' ? 'currentColor' : 'none'} stroke="currentColor" stroke-width="1.5" />
          ${this.scheme === 'auto' ? svg`<path d="M9 2.5a6.5 6.5 0 0 1 0 13z" fill="currentColor" />` : nothing}
        </svg>
      </button>
    `;
  }
}

customElements.define('adjoin-header', AdjoinHeader);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-header': AdjoinHeader;
  }
}
