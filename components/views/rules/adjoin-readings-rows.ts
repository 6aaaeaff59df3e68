import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Issue } from '../../../src/issue.ts';
import type { RuleBook } from '../../../src/rules/index.ts';
import { commonPractice } from '../../../src/rules/book-bases.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { typedValue } from '../../controllers/typed-value.ts';
import { faultText } from '../../model/fault-text.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { editorStyles } from './editor.styles.ts';
import type { RulesContext } from './rules-context.ts';

type Wanted = NonNullable<RuleBook['readingsWanted']>[number];

/** The readings that a book wants on each occasion, in words for people: they are printed with the book and judge nothing. */
export class AdjoinReadingsRows extends LitElement {
  static override styles = [base, controls, fields, editorStyles];
  static override properties = { at: { attribute: false }, issue: { state: true } };

  declare at: RulesContext;
  declare issue: Issue | undefined;

  private get rows(): readonly Wanted[] {
    return this.at.book.readingsWanted ?? [];
  }

  private keep(readingsWanted: readonly Wanted[]): void {
    const result = doAction(this, 'rule-book.set-readings-wanted', { readingsWanted });
    this.issue = result?.done === true ? undefined : result?.issues[0];
    this.requestUpdate();
  }

  override render(): TemplateResult {
    const { rows } = this;
    const { locked } = this.at.open;
    const field = (index: number, key: keyof Wanted, label: string): TemplateResult => html`<input type="text" autocomplete="off" aria-label=${label} ?disabled=${locked}
      .value=${typedValue(rows[index]?.[key] ?? '')} @change=${(event: Event) => this.keep(rows.map((row, at) => (at === index ? { ...row, [key]: (event.target as HTMLInputElement).value } : row)))} />`;
    return html`
      ${rows.length === 0 ? nothing : html`<table class="rows"><thead><tr><th scope="col">occasion</th><th scope="col">wanted</th><th scope="col"><span class="unseen">take out</span></th></tr></thead>
      <tbody>${rows.map(({ occasion }, index) => html`
        <tr><td>${field(index, 'occasion', `Occasion ${index + 1}`)}</td><td>${field(index, 'wanted', `Readings wanted for ${occasion}`)}</td>
          <td class="moves"><button type="button" aria-label="Take ${occasion} out" aria-disabled=${locked} @click=${() => { if (!locked) this.keep(rows.toSpliced(index, 1)); }}>×</button></td></tr>
        <tr class="basis"><td colspan="3">${field(index, 'basis', `Basis of the readings wanted for ${occasion}`)}</td></tr>`)}</tbody></table>`}
      ${this.issue === undefined ? nothing : html`<p class="fault" role="alert">${faultText(this.issue)}</p>`}
      <div class="bar"><button type="button" aria-disabled=${locked} @click=${() => { if (!locked) this.keep([...rows, { occasion: `occasion ${rows.length + 1}`, wanted: '3 spots', basis: commonPractice }]); }}>Add an occasion</button></div>`;
  }
}

customElements.define('adjoin-readings-rows', AdjoinReadingsRows);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-readings-rows': AdjoinReadingsRows;
  }
}
