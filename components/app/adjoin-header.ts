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
    open: { attribute: false }, groups: { attribute: false }, light: {}, sweep: { attribute: false }, home: {}, places: { attribute: false }, scheme: { state: true }, unfolded: { state: true },
  };

  declare open: OpenCabin | undefined;
  declare groups: readonly LightGroup[];
  declare light: string;
  declare sweep: readonly string[];
  /** Where the mark leads. */
  declare home: string;
  declare places: readonly Place[];
  declare scheme: Scheme;
  /** On a narrow screen the places lie under the present one, until they are asked for. */
  declare unfolded: boolean;

  constructor() {
    super();
    this.groups = [];
    this.light = 'D65';
    this.sweep = [];
    this.home = '#/';
    this.places = [];
    this.scheme = readScheme();
    this.unfolded = false;
  }

  private call(call: DeskCall): void {
    this.dispatchEvent(new CustomEvent('adjoin-call', { detail: call, bubbles: true, composed: true }));
  }

  changeScheme(): void {
    this.scheme = nextScheme(this.scheme);
    applyScheme(this.scheme);
    announce(this, `Ink and paper: ${schemeWords[this.scheme]}`);
  }

  private foldPlaces(event: Event): void {
    const { key } = event as KeyboardEvent;
    if (!this.unfolded || (key !== undefined && key !== 'Escape')) return;
    const to = (event as FocusEvent).relatedTarget;
    if (event.type === 'focusout' && (!(to instanceof Node) || (event.currentTarget as Node).contains(to))) return;
    this.unfolded = false;
    // What had the focus is out of sight now.
    if (event.type !== 'focusout') this.renderRoot.querySelector<HTMLElement>('.now')?.focus();
    if (key !== undefined) event.stopPropagation();
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
      ${open && this.places.length > 0 ? this.row() : nothing}
    `;
  }

  private row(): TemplateResult {
    const { unfolded } = this;
    const fold = (event: Event): void => this.foldPlaces(event);
    return html`<nav aria-label="Places" @keydown=${fold} @focusout=${fold}>
      <button class="now" type="button" aria-expanded=${unfolded} aria-controls="places" @click=${() => { this.unfolded = !unfolded; }}><span><span class="unseen">Places, now: </span>${this.places.find(({ here }) => here)?.title ?? 'Places'}</span></button>
      <div id="places" class=${unfolded ? 'unfolded' : ''} @click=${fold}>${this.places.map((place) => html`
        <a class=${place.first ? 'first' : nothing} href=${place.address} title=${place.about} aria-current=${place.here ? 'page' : nothing}>${place.title}</a>`)}</div>
    </nav>`;
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
