import { css, html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { counted } from '../../src/report/number-text.ts';
import { matching, mostInList } from '../model/matching.ts';
import type { Choice } from '../model/matching.ts';
import { fields } from '../styles/fields.ts';
import { base, controls } from '../styles/shared.ts';

/** Matches that are offered at once. */
const mostOffered = 40;

/**
 * One of many: a list to pick from where it is short, a field to search in where it is long, since thousands of options hold the page up each
 * time they are made or laid out. What it offers is asked for only when it is opened.
 * @fires adjoin-chosen - id of what was chosen, empty where a choice was taken back; with `keeps` it stays chosen, else the field is empty again
 */
export class AdjoinChoice extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  /** A label about it leads to its field. */
  static readonly formAssociated = true;
  static override styles = [base, controls, fields, css`
    :host { display: block; min-width: 0; }
    .pick, .pick select { width: 100%; }
    input { width: 100%; text-overflow: ellipsis; } :host([keeps]) input { min-height: 30px; } :host([keeps]) .chosen { position: relative; display: block; }
    :host([keeps]) .chosen::after { content: ''; position: absolute; right: 10px; top: 10px; width: 6px; height: 6px; pointer-events: none; border: solid var(--quiet); border-width: 0 1.5px 1.5px 0; rotate: 45deg; } :host([keeps]) input { padding-right: 24px; }
    input:disabled { border-style: dashed; color: var(--quiet); }
    .offers { border: 1px solid var(--line); border-top: 0; background: var(--field); }
    ul { max-height: 240px; overflow-y: auto; }
    li { padding: 4px 8px; min-height: 26px; border-bottom: 1px solid var(--faint); cursor: pointer; font-size: var(--small); overflow-wrap: anywhere; }
    li:hover { background: var(--raised); }
    li[aria-selected='true'] { background: var(--ink); color: var(--paper); }
    .more { padding: 4px 8px; font-size: var(--small); color: var(--quiet); }
    @media (forced-colors: active) { li[aria-selected='true'] { forced-color-adjust: none; background: Highlight; color: HighlightText; } }
  `];
  static override properties = {
    label: {}, count: { type: Number }, choices: { attribute: false }, disabled: { type: Boolean }, keeps: { type: Boolean }, clears: { type: Boolean }, given: { attribute: false, hasChanged: (now?: Choice, before?: Choice) => now?.id !== before?.id || now?.name !== before?.name }, hint: {}, fault: {}, invalid: { type: Boolean, reflect: true }, name: { reflect: true }, words: { state: true }, opened: { state: true }, at: { state: true },
  };

  /** What is to be chosen; stands in the field until something is. */
  declare label: string;
  declare name: string;
  /** How many choices there are. */
  declare count: number;
  /** The choices, made when they are first wanted. */
  declare choices: () => readonly Choice[];
  declare disabled: boolean;
  /** What was chosen stays in the field, as in a form that is sent later. */
  declare keeps: boolean;
  /** What was chosen may be taken back by emptying the field. */
  declare clears: boolean;
  /** What is chosen to begin with. */
  declare given: Choice | undefined;
  /** What stands in the empty field in place of the label, where that stands beside it. */
  declare hint: string;
  /** Why what was chosen was refused. */
  declare fault: string;
  declare invalid: boolean;
  declare words: string;
  declare opened: boolean;
  /** Place of the offer that Enter takes. */
  declare at: number;
  /** Id of what is chosen, empty where nothing is or other words are being written. */
  private chosen = '';
  /** What a field that keeps falls back to where words were written and nothing was taken. */
  private kept: Choice | undefined;
  /** Made once for each time the field is opened. */
  private made: readonly Choice[] | undefined;

  constructor() {
    super();
    this.label = '';
    this.name = '';
    this.count = 0;
    this.choices = () => [];
    this.disabled = false;
    this.keeps = false;
    this.clears = false;
    this.hint = '';
    this.fault = '';
    this.invalid = false;
    this.words = '';
    this.opened = false;
    this.at = 0;
  }

  get value(): string {
    return this.renderRoot.querySelector('select')?.value ?? this.chosen;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('choices')) this.made = undefined;
    if (changed.has('given')) this.hold(this.given);
  }

  protected override updated(): void {
    this.renderRoot.querySelector('[aria-selected=true]')?.scrollIntoView({ block: 'nearest' });
  }

  private get offered(): readonly Choice[] {
    this.made ??= this.choices();
    return matching(this.made, this.words);
  }

  private take(choice: Choice): void {
    this.close();
    this.hold(this.keeps ? choice : undefined);
    this.tell(choice.id);
  }

  private tell(id: string): void {
    this.dispatchEvent(new CustomEvent('adjoin-chosen', { detail: id }));
  }

  private hold(choice: Choice | undefined): void {
    this.kept = choice;
    this.chosen = choice?.id ?? '';
    this.words = choice?.name ?? '';
  }

  private close(): void {
    this.opened = false;
    this.made = undefined;
  }

  /** The field is left: what is only half written gives way to what was chosen, an empty field takes that back. */
  private settle(): void {
    this.close();
    if (!this.keeps || this.chosen !== '') return;
    const before = this.kept;
    const cleared = this.words.trim() === '' && this.clears && before !== undefined;
    this.hold(cleared ? undefined : before);
    if (cleared) this.tell('');
  }

  private picked(event: Event): void {
    const select = event.target as HTMLSelectElement;
    const { value } = select;
    if (!this.keeps) select.value = '';
    if (value !== '' || this.keeps) this.dispatchEvent(new CustomEvent('adjoin-chosen', { detail: value }));
  }

  private open(): void {
    if (this.opened) return;
    this.at = 0;
    this.opened = true;
  }

  private wrote(event: Event): void {
    this.words = (event.target as HTMLInputElement).value;
    this.chosen = '';
    this.at = 0;
    this.opened = true;
  }

  private keyed(event: KeyboardEvent): void {
    const { key } = event;
    if (key === 'ArrowDown' || key === 'ArrowUp') {
      if (this.opened) this.at = Math.max(0, Math.min(Math.min(mostOffered, this.offered.length) - 1, this.at + (key === 'ArrowDown' ? 1 : -1)));
      else this.open();
    } else if (key === 'Enter' && this.opened) {
      const choice = this.offered[this.at];
      if (choice !== undefined) this.take(choice);
    } else if (key === 'Enter' && this.keeps) {
      this.settle();
      // The field is in a tree of its own, out of which no key sends a form.
      this.closest('form')?.requestSubmit();
    } else if (key === 'Escape' && this.opened) {
      this.opened = false;
      if (this.keeps) this.hold(this.kept);
    } else return;
    event.preventDefault();
    event.stopPropagation();
  }

  override render(): TemplateResult {
    const { label, disabled } = this;
    if (this.count <= mostInList) {
      return html`<span class="pick"><select name=${this.name} aria-label=${label} ?disabled=${disabled} @change=${(event: Event) => this.picked(event)}>
        <option value="">${label}</option>${this.choices().map(({ id, name }) => html`<option value=${id}>${name}</option>`)}</select></span>`;
    }
    const found = this.opened ? this.offered : [];
    const offers = found.slice(0, mostOffered);
    const [first] = offers;
    return html`
      <span class="chosen"><input type="search" name=${this.name} role="combobox" aria-autocomplete="list" aria-label=${label} placeholder=${this.hint || label} aria-invalid=${this.invalid} aria-describedby=${this.fault === '' ? nothing : 'fault'} aria-expanded=${this.opened} aria-controls="offers" autocomplete="off" spellcheck="false"
        aria-activedescendant=${first === undefined ? nothing : `offer-${this.at}`} ?disabled=${disabled} .value=${this.words}
        @input=${(event: Event) => this.wrote(event)} @click=${() => this.open()} @keydown=${(event: KeyboardEvent) => this.keyed(event)} @blur=${() => this.settle()} /></span>
      ${this.fault === '' ? nothing : html`<span class="unseen" id="fault">${this.fault}</span>`}
      <div class="offers" ?hidden=${!this.opened}>
        <ul id="offers" role="listbox" aria-label=${label} @pointerdown=${(event: Event) => event.preventDefault()}>${offers.map((choice, place) => html`<li id=${`offer-${place}`} role="option" aria-selected=${place === this.at} @click=${() => this.take(choice)}>${choice.name}</li>`)}</ul>
        <p class="more" role="status">${!this.opened ? nothing : first === undefined ? 'Nothing has these words.' : found.length > offers.length ? `${offers.length} of ${counted(found.length, 'match', 'matches')}: more words find fewer.` : counted(found.length, 'match', 'matches')}</p>
      </div>`;
  }
}

customElements.define('adjoin-choice', AdjoinChoice);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-choice': AdjoinChoice;
  }
}
