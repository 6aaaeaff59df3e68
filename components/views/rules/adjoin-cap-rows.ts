import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
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

type BookCap = RuleBook['caps'][number];
const quantities = { gloss: 'gloss, GU', lightness: 'lightness, L*' } as const;

/** The caps that a book sets on the parts of a zone. Each change is one edit. */
export class AdjoinCapRows extends LitElement {
  static override styles = [base, controls, fields, editorStyles];
  static override properties = { at: { attribute: false }, issue: { state: true } };

  declare at: RulesContext;
  declare issue: Issue | undefined;

  private keep(caps: readonly BookCap[]): void {
    const result = doAction(this, 'rule-book.set-caps', { caps });
    this.issue = result?.done === true ? undefined : result?.issues[0];
    this.requestUpdate();
  }

  private change(index: number, more: Partial<BookCap>): void {
    const cap = this.at.book.caps[index];
    if (cap === undefined) return;
    const { angle, ...rest } = { ...cap, ...more };
    this.keep(this.at.book.caps.with(index, rest.quantity === 'gloss' ? { ...rest, angle: angle ?? 60 } : rest));
  }

  private add(): void {
    const { book, open } = this.at;
    let number = 1;
    while (book.caps.some(({ id }) => id === `cap-${number}`)) number += 1;
    this.keep([...book.caps, { id: `cap-${number}`, zone: open.cabin.zones[0]?.id ?? 'zone', quantity: 'gloss', max: 2, angle: 60, basis: commonPractice }]);
  }

  override render(): TemplateResult {
    const { book, open } = this.at;
    const { locked } = open;
    const text = (event: Event): string => (event.target as HTMLInputElement).value;
    const zones = open.cabin.zones.map(({ id }) => id);
    return html`
      ${book.caps.length === 0 ? nothing : html`<table class="rows"><thead><tr><th scope="col">zone</th><th scope="col">of</th><th scope="col">at most</th><th scope="col">at</th><th scope="col"><span class="unseen">take out</span></th></tr></thead>
      <tbody>${book.caps.map((cap, index) => html`
        <tr><td><span class="pick"><select aria-label="Zone of ${cap.id}" ?disabled=${locked} .value=${live(cap.zone)} @change=${(event: Event) => this.change(index, { zone: text(event) })}>
            ${[...new Set([cap.zone, ...zones])].map((zone) => html`<option value=${zone} ?selected=${zone === cap.zone}>${zone}</option>`)}</select></span></td>
          <td><span class="pick"><select aria-label="Quantity of ${cap.id}" ?disabled=${locked} .value=${live(cap.quantity)} @change=${(event: Event) => this.change(index, { quantity: text(event) as BookCap['quantity'] })}>
            ${Object.entries(quantities).map(([quantity, words]) => html`<option value=${quantity} ?selected=${quantity === cap.quantity}>${words}</option>`)}</select></span></td>
          <td><input type="text" inputmode="decimal" aria-label="Largest value of ${cap.id}" ?disabled=${locked} .value=${typedValue(String(cap.max))} @change=${(event: Event) => this.change(index, { max: Number(text(event).replace(',', '.')) })} /></td>
          <td>${cap.quantity === 'gloss' ? html`<span class="pick"><select aria-label="Angle of ${cap.id}" ?disabled=${locked} .value=${live(String(cap.angle ?? 60))} @change=${(event: Event) => this.change(index, { angle: Number(text(event)) as 20 | 60 | 85 })}>
            ${[20, 60, 85].map((angle) => html`<option value=${angle} ?selected=${angle === (cap.angle ?? 60)}>${angle}°</option>`)}</select></span>` : nothing}</td>
          <td class="moves"><button type="button" aria-label="Take ${cap.id} out" aria-disabled=${locked} @click=${() => { if (!locked) this.keep(book.caps.toSpliced(index, 1)); }}>×</button></td></tr>
        <tr class="basis"><td colspan="5"><input type="text" aria-label="Basis of ${cap.id}" ?disabled=${locked} .value=${typedValue(cap.basis)} @change=${(event: Event) => this.change(index, { basis: text(event) })} />
          ${cap.caution === undefined ? nothing : html`<p class="small quiet">${cap.caution}</p>`}</td></tr>`)}</tbody></table>`}
      ${this.issue === undefined ? nothing : html`<p class="fault" role="alert">${faultText(this.issue)}</p>`}
      <div class="bar"><button type="button" aria-disabled=${locked} @click=${() => { if (!locked) this.add(); }}>Add a cap</button></div>`;
  }
}

customElements.define('adjoin-cap-rows', AdjoinCapRows);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-cap-rows': AdjoinCapRows;
  }
}
