import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Issue } from '../../../src/issue.ts';
import type { ComponentRule, Expression } from '../../../src/rules/index.ts';
import { checkExpression } from '../../../src/rules/index.ts';
import { commonPractice } from '../../../src/rules/book-bases.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { typedValue } from '../../controllers/typed-value.ts';
import { faultText } from '../../model/fault-text.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { editorStyles } from './editor.styles.ts';
import type { RulesContext } from './rules-context.ts';

const components = ['dL', 'da', 'db', 'dC', 'dH'] as const;

/** Limits of a rule on signed components of the difference, trial minus standard: from, to, and below which mean L* they act. Each change is one edit. */
export class AdjoinComponentRows extends LitElement {
  static override styles = [base, controls, fields, editorStyles];
  static override properties = { at: { attribute: false }, components: { attribute: false }, rule: {}, issue: { state: true } };

  declare at: RulesContext;
  declare components: readonly ComponentRule[];
  declare rule: string;
  declare issue: Issue | undefined;

  private keep(rows: readonly ComponentRule[]): void {
    const result = doAction(this, 'rule.set-components', { rule: this.rule, components: rows.length === 0 ? null : rows });
    this.issue = result?.done === true ? undefined : result?.issues[0];
    this.requestUpdate();
  }

  private change(index: number, key: 'min' | 'max' | 'belowL' | 'basis' | 'component', text: string): void {
    const row = this.components[index];
    if (row === undefined) return;
    const { [key]: _, ...rest } = row;
    const trimmed = text.trim().replace(/^(-?\d+),(\d+)$/, '$1.$2');
    const value: Expression | undefined = trimmed === '' ? undefined : key !== 'basis' && key !== 'component' && Number.isFinite(Number(trimmed)) ? Number(trimmed) : trimmed;
    this.keep(this.components.with(index, (value === undefined ? rest : { ...rest, [key]: value }) as ComponentRule));
  }

  private here(value: Expression | undefined): string {
    const { look } = this.at;
    if (typeof value !== 'string' || look === undefined) return '';
    const result = checkExpression(value).evaluate?.(look.variables);
    return result === undefined || !Number.isFinite(result) ? '' : ` (${Number(result.toPrecision(3))} on the chosen joint)`;
  }

  override render(): TemplateResult {
    const { locked } = this.at.open;
    const input = (index: number, key: 'min' | 'max' | 'belowL', label: string, value: Expression | undefined): TemplateResult => html`<input type="text" inputmode="text" aria-label=${label} ?disabled=${locked}
      .value=${typedValue(value === undefined ? '' : String(value))} @change=${(event: Event) => this.change(index, key, (event.target as HTMLInputElement).value)} />`;
    return html`
      ${this.components.length === 0 ? nothing : html`<table class="rows"><thead><tr><th scope="col">component</th><th scope="col">from</th><th scope="col">to</th><th scope="col">where L* is below</th><th scope="col"><span class="unseen">take out</span></th></tr></thead>
      <tbody>${this.components.map((row, index) => html`
        <tr><td><span class="pick"><select aria-label="Component ${index + 1}" ?disabled=${locked} .value=${live(row.component)} @change=${(event: Event) => this.change(index, 'component', (event.target as HTMLSelectElement).value)}>
          ${components.map((name) => html`<option value=${name} ?selected=${name === row.component}>${name}*</option>`)}</select></span></td>
          <td>${input(index, 'min', `Least ${row.component}*`, row.min)}</td><td>${input(index, 'max', `Largest ${row.component}*`, row.max)}</td><td>${input(index, 'belowL', `${row.component}* acts where the mean L* is below`, row.belowL)}</td>
          <td class="moves"><button type="button" aria-label="Take the limit of ${row.component}* out" aria-disabled=${locked} @click=${() => { if (!locked) this.keep(this.components.toSpliced(index, 1)); }}>×</button></td></tr>
        <tr class="basis"><td colspan="5"><input type="text" aria-label="Basis of the limit of ${row.component}*" ?disabled=${locked} .value=${typedValue(row.basis)} @change=${(event: Event) => this.change(index, 'basis', (event.target as HTMLInputElement).value)} />
          ${this.here(row.min) === '' && this.here(row.max) === '' ? nothing : html`<p class="small quiet">${row.min === undefined ? '' : `from ${row.min}${this.here(row.min)} `}${row.max === undefined ? '' : `to ${row.max}${this.here(row.max)}`}</p>`}</td></tr>`)}</tbody></table>`}
      ${this.issue === undefined ? nothing : html`<p class="fault" role="alert">${faultText(this.issue)}</p>`}
      <div class="bar"><button type="button" aria-disabled=${locked} @click=${() => { if (!locked) this.keep([...this.components, { component: 'dL', min: -1, max: 1, basis: commonPractice }]); }}>Add a component limit</button>
        ${this.components.length === 0 ? html`<span class="small quiet">None: the classes’ cap on |dL*| in the dark holds.</span>` : nothing}</div>`;
  }
}

customElements.define('adjoin-component-rows', AdjoinComponentRows);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-component-rows': AdjoinComponentRows;
  }
}
