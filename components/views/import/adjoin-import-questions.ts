import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { ImportChoices } from '../../../src/actions/plan-imports.ts';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { specimenKinds } from '../../../src/cabin/cabin.ts';
import { lightNames } from '../../../src/colour/lights.ts';
import type { Question } from '../../../src/formats/reading-set.ts';
import { counted } from '../../../src/report/number-text.ts';
import type { ImportItem } from '../../controllers/import-desk.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { base, controls } from '../../styles/shared.ts';
import { fields } from '../../styles/fields.ts';
import { styles } from './import-questions.styles.ts';

const words: Readonly<Record<string, string>> = {
  fraction: 'fractions: 1 is the perfect diffuser', percent: 'per cent: 100 is the perfect diffuser', '2': '2°', '10': '10°',
};

/**
 * What a file leaves open, asked and never guessed.
 * @fires adjoin-choices - an answer was given
 */
export class AdjoinImportQuestions extends InTurnElement {
  static override styles = [base, controls, fields, styles];
  static override properties = { item: { attribute: false }, cabin: { attribute: false }, locked: { type: Boolean } };

  declare item: ImportItem;
  declare cabin: Cabin;
  declare locked: boolean;

  private tell(change: Partial<ImportChoices>): void {
    this.dispatchEvent(new CustomEvent('adjoin-choices', { detail: change, bubbles: true, composed: true }));
  }

  private answer(id: string, value: string): void {
    const { [id]: _before, ...others } = this.item.choices.answers ?? {};
    this.tell({ answers: value === '' ? others : { ...others, [id]: value } });
  }

  override render(): TemplateResult | typeof nothing {
    const { found, planned, choices, remembered } = this.item;
    const questions = (found?.summary.questions ?? []).toSorted((a, b) => Number(b.required) - Number(a.required));
    const kindAsked = choices.newSpecimens !== undefined || planned?.issues.some(({ code }) => code === 'specimen-kind-needed') === true;
    if (questions.length === 0 && !kindAsked) return nothing;
    const open = questions.filter(({ id, topic, required }) => required && this.given(id, topic) === '').length + (kindAsked && choices.newSpecimens === undefined ? 1 : 0);
    return html`
      <section class=${open > 0 ? 'open' : ''}>
        <h3>${open > 0 ? `Asked: ${counted(open, 'answer is', 'answers are')} needed` : questions.some(({ required }) => required) ? 'Asked and answered' : 'May be answered'}</h3>
        ${remembered ? html`<p class="remembered">Answers and places are those of the last file of this shape. Look at them once.</p>` : nothing}
        <div class="grid">
          ${questions.map((question) => this.question(question))}
          ${kindAsked ? html`
            <label class="field"><span class="label">What are the specimens that the cabin does not have yet?</span>
              ${this.select(choices.newSpecimens ?? '', specimenKinds.filter((kind) => kind !== 'master').map((kind) => [kind, kind]), true, (value) => this.tell({ newSpecimens: value === '' ? undefined : value as ImportChoices['newSpecimens'] } as Partial<ImportChoices>))}
            </label>` : nothing}
        </div>
      </section>`;
  }

  private given(id: string, topic: string): string {
    const { answers = {} } = this.item.choices;
    return answers[id] ?? answers[topic] ?? '';
  }

  private question({ id, topic, text, required, choices, records, line }: Question): TemplateResult {
    const value = this.given(id, topic);
    const fault = this.item.planned?.issues.find(({ code, path }) => code === 'bad-answer' && path === id);
    const set = (text: string): void => this.answer(id, text);
    return html`
      <label class="field">
        <span class="label">${text}${required ? nothing : html` <span class="unit">optional</span>`} <span class="unit">${counted(records, 'reading')}${line === undefined ? '' : `, from line ${line}`}</span></span>
        ${choices === undefined && topic === 'light' ? this.select(value, [...lightNames, ...(this.cabin.lights ?? []).map((light) => light.id)].map((name) => [name, name]), required, set)
          : choices === undefined && topic === 'master' && (this.cabin.masters?.length ?? 0) > 0 ? this.select(value, (this.cabin.masters ?? []).map((master) => [master.id, master.id]), required, set)
          : choices === undefined ? this.text(topic, value, fault !== undefined, set)
          : this.select(value, choices.map((choice) => [choice, words[choice] ?? choice]), required, set)}
        ${fault === undefined ? nothing : html`<span class="fault">Expected ${fault.expected}</span>`}
      </label>`;
  }

  private text(topic: string, value: string, faulty: boolean, set: (text: string) => void): TemplateResult {
    const known = topic === 'instrument' ? this.cabin.instruments : [];
    return html`<span class="with">
      <input type="text" autocomplete="off" inputmode=${topic === 'aperture' || topic === 'averaged' ? 'decimal' : nothing} aria-invalid=${faulty} ?disabled=${this.locked} .value=${live(value)}
        @change=${(event: Event) => set((event.target as HTMLInputElement).value.trim())} />
      ${known.length === 0 ? nothing : html`<span class="pick"><select aria-label="An instrument of the cabin" ?disabled=${this.locked} @change=${(event: Event) => set((event.target as HTMLSelectElement).value)}>
        <option value="" ?selected=${!known.some(({ name }) => name === value)}>of the cabin</option>
        ${known.map(({ name }) => html`<option value=${name} ?selected=${name === value}>${name}</option>`)}</select></span>`}
    </span>`;
  }

  private select(value: string, options: readonly (readonly [string, string])[], required: boolean, set: (text: string) => void): TemplateResult {
    return html`<span class="pick"><select ?disabled=${this.locked} @change=${(event: Event) => set((event.target as HTMLSelectElement).value)}>
      <option value="" ?selected=${value === ''}>${required ? 'choose' : 'not known'}</option>
      ${options.map(([id, name]) => html`<option value=${id} ?selected=${id === value}>${name}</option>`)}
    </select></span>`;
  }
}

customElements.define('adjoin-import-questions', AdjoinImportQuestions);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-import-questions': AdjoinImportQuestions;
  }
}
