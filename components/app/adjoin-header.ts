import { html, LitElement, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { OpenCabin } from '../controllers/cabin-controller.ts';
import { announce } from '../controllers/announcer.ts';
import type { LightGroup } from '../model/light-groups.ts';
import { applyScheme, nextScheme, readScheme } from '../platform/colour-scheme.ts';
import type { Scheme } from '../platform/colour-scheme.ts';
import { base, controls } from '../styles/shared.ts';
import './adjoin-light-picker.ts';
import { styles } from './header.styles.ts';

const schemeWords: Readonly<Record<Scheme, string>> = { auto: 'as the system', light: 'light', dark: 'dark' };

/**
 * The head of the workbench: what is open, the light everything is shown under, opening a file, ink and paper.
 * @fires adjoin-pick - the user wants to choose a file
 */
export class AdjoinHeader extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = {
    open: { attribute: false }, groups: { attribute: false }, light: {}, sweep: { attribute: false }, home: {}, scheme: { state: true },
  };

  declare open: OpenCabin | undefined;
  declare groups: readonly LightGroup[];
  declare light: string;
  declare sweep: readonly string[];
  /** Where the mark leads. */
  declare home: string;
  declare scheme: Scheme;

  constructor() {
    super();
    this.groups = [];
    this.light = 'D65';
    this.sweep = [];
    this.home = '#/';
    this.scheme = readScheme();
  }

  private pick(): void {
    this.dispatchEvent(new CustomEvent('adjoin-pick', { bubbles: true, composed: true }));
  }

  private changeScheme(): void {
    this.scheme = nextScheme(this.scheme);
    applyScheme(this.scheme);
    announce(this, `Ink and paper: ${schemeWords[this.scheme]}`);
  }

  override render(): TemplateResult {
    const cabin = this.open?.cabin;
    const rules = this.open && `rules ${this.open.judgement.ruleBook}`;
    const about = [cabin?.trimLevel, cabin?.colourway, cabin?.phase, rules].filter(Boolean).join(' · ');
    const inkWords = `Ink and paper: ${schemeWords[this.scheme]}`;
    return html`
      <header>
        <a class="mark" href=${this.home} aria-label=${cabin ? 'Adjoin, to the cabin' : 'Adjoin, start'}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path fill="currentColor" d="M1 1h14v6H1z" /><path fill="none" stroke="currentColor" d="M1.5 9.5h13v5h-13z" />
          </svg>
          <span>Adjoin</span>
        </a>
        ${cabin
          ? html`<div class="cabin" title=${this.open?.file ?? nothing}>
                <span class="name">${cabin.name}</span><span class="about">${about}</span>
              </div>
              <adjoin-light-picker .groups=${this.groups} .light=${this.light} .sweep=${this.sweep}></adjoin-light-picker>`
          : html`<span class="spring"></span>`}
        <div class="tools">
          <button type="button" @click=${this.pick}>Open…</button>
          <button class="scheme" type="button" aria-label=${`${inkWords}. Change`} title=${inkWords} @click=${this.changeScheme}>
            <svg viewBox="0 0 18 18" aria-hidden="true">
              <circle cx="9" cy="9" r="6.5" fill=${this.scheme === 'dark' ? 'currentColor' : 'none'} stroke="currentColor" stroke-width="1.5" />
              ${this.scheme === 'auto' ? svg`<path d="M9 2.5a6.5 6.5 0 0 1 0 13z" fill="currentColor" />` : nothing}
            </svg>
          </button>
        </div>
      </header>
    `;
  }
}

customElements.define('adjoin-header', AdjoinHeader);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-header': AdjoinHeader;
  }
}
