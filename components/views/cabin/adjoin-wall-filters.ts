import { html, LitElement } from 'lit';
import type { TemplateResult } from 'lit';
import type { JointFilter } from '../../controllers/route.ts';
import { tell } from '../../controllers/tell.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import type { FilterChoice, FilterChoices } from '../../model/joint-filter.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './wall-filters.styles.ts';

const inkOfButton = { ...paperInk, holds: 'currentColor', open: 'currentColor', clashes: 'currentColor', casing: 'var(--raised)' };
const marks = {
  clashes: { verdict: 'clashes' }, accepted: { verdict: 'clashes', accepted: true }, open: { verdict: 'open' }, holds: { verdict: 'holds' },
} as const;
const shortLabels: Readonly<Record<string, string>> = { clashes: 'clash', accepted: 'accepted', open: 'open', holds: 'hold' };

/**
 * Search and filters of the wall, with the number of joints each choice would leave.
 * @fires adjoin-filter - the whole new filter
 */
export class AdjoinWallFilters extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { filter: { attribute: false }, choices: { attribute: false } };

  declare filter: JointFilter;
  declare choices: FilterChoices;

  constructor() {
    super();
    this.filter = {};
    this.choices = { zone: [], verdict: [], check: [], supplier: [] };
  }

  private change(field: keyof JointFilter, value: string): void {
    const detail: JointFilter = { ...this.filter, [field]: value === '' ? undefined : value };
    tell(this, 'adjoin-filter', detail);
  }

  /** Puts the caret into the search field. */
  override focus(): void {
    this.renderRoot.querySelector('input')?.focus();
  }

  override render(): TemplateResult {
    const { filter, choices } = this;
    return html`
      <div class="row" role="group" aria-label="Verdict">
        <div class="verdicts">
          ${choices.verdict.map((choice) => html`
            <button
              type="button" aria-pressed=${filter.verdict === choice.value} title=${`Only ${choice.label}`}
              @click=${() => this.change('verdict', filter.verdict === choice.value ? '' : choice.value)}
            >
              ${scene(verdictSample(marks[choice.value as keyof typeof marks], 22, 10, inkOfButton))}
              <span><b>${choice.count}</b> ${shortLabels[choice.value]}</span>
            </button>`)}
        </div>
      </div>
      <div class="row" role="search">
        <input
          type="search" placeholder="Search parts, suppliers" aria-label="Search joints" .value=${filter.search ?? ''}
          @input=${(event: Event) => this.change('search', (event.target as HTMLInputElement).value.trimStart())}
        />
        ${this.pick('zone', 'Any zone', 'Zone', choices.zone)}
        ${this.pick('check', 'Any check', 'Check that clashes or is open', choices.check)}
        ${this.pick('supplier', 'Any supplier', 'Supplier', choices.supplier)}
      </div>
    `;
  }

  private pick(field: 'zone' | 'check' | 'supplier', any: string, label: string, choices: readonly FilterChoice[]): TemplateResult {
    const now = this.filter[field] ?? '';
    return html`
      <span class="pick ${now === '' ? '' : 'on'}">
        <select aria-label=${label} .value=${now} @change=${(event: Event) => this.change(field, (event.target as HTMLSelectElement).value)}>
          <option value="" ?selected=${now === ''}>${any}</option>
          ${choices.map((choice) => html`<option value=${choice.value} ?selected=${now === choice.value}>${choice.label} (${choice.count})</option>`)}
        </select>
      </span>
    `;
  }
}

customElements.define('adjoin-wall-filters', AdjoinWallFilters);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-wall-filters': AdjoinWallFilters;
  }
}
