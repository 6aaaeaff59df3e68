import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Argument } from '../../../src/actions/argument.ts';
import { actionById, readValues } from '../../../src/actions/index.ts';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { Expression } from '../../../src/rules/index.ts';
import { checkExpression, ruleVariables } from '../../../src/rules/index.ts';
import { plainNumber } from '../../../src/rules/plain-number.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { fieldLabel } from '../../app/field-label.ts';
import type { BookDraft } from '../../controllers/book-trial.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { unfolds } from '../../controllers/sections.ts';
import { argumentText, argumentValue } from '../../model/argument-text.ts';
import { faultText } from '../../model/fault-text.ts';
import type { FormulaWord } from '../../model/formula-words.ts';
import { completed, completions, wordBefore } from '../../model/formula-words.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './formula-field.styles.ts';
import './adjoin-trial-result.ts';
import type { RulesContext } from './rules-context.ts';
import { draftEvent } from './rules-context.ts';

const shownWords = 8;

/**
 * A limit or factor of the rule book, as a number or a formula. It is checked with every key: the fault under its character, the result on the
 * chosen joint, the names there are with their values, and what applying it would change. Enter applies, Escape takes it back.
 */
export class AdjoinFormulaField extends InTurnElement {
  static override styles = [base, controls, fields, styles];
  static override properties = {
    at: { attribute: false }, action: {}, of: { attribute: false }, key: {}, label: {}, rest: {}, says: {}, typed: { state: true }, choice: { state: true }, offered: { state: true }, inside: { state: true },
  };

  declare at: RulesContext;
  declare action: string;
  declare of: Readonly<Record<string, string>>;
  declare key: string;
  declare label: string;
  /** What holds where the field is empty, in words. */
  declare rest: string | undefined;
  /** What the result is, after its number. */
  declare says: string;
  /** What is written and not applied yet. */
  declare typed: string | undefined;
  declare offered: readonly FormulaWord[];
  declare choice: number;
  declare inside: boolean;

  constructor() {
    super();
    this.says = '';
    this.offered = [];
    this.choice = 0;
    this.inside = false;
    this.addEventListener('focusin', () => { this.inside = true; });
    this.addEventListener('focusout', (event) => {
      if (event.relatedTarget instanceof Node && this.contains(event.relatedTarget)) return;
      this.offered = [];
      if (this.typed === undefined) this.inside = false;
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.typed !== undefined) this.tell(undefined);
    this.typed = undefined;
  }

  /** The cabin as it was when what is written was applied: until the edit is judged, the field shows it. */
  private applied: Cabin | undefined;

  private get argument(): Argument | undefined {
    return actionById(this.action)?.arguments[this.key];
  }

  private get input(): HTMLInputElement | null {
    return this.renderRoot.querySelector('input');
  }

  private get saved(): string {
    const argument = this.argument;
    return argument === undefined ? '' : argumentText(argument, actionById(this.action)?.current(this.at.open.cabin, this.of)[this.key]);
  }

  private get field(): string {
    return [this.action, ...Object.values(this.of), this.key].join(' ');
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    // Another thing is edited here now, or what was written is in the book.
    const before = changed.get('of') as Readonly<Record<string, string>> | undefined;
    const another = before !== undefined && JSON.stringify(before) !== JSON.stringify(this.of);
    const settled = this.applied !== undefined && this.applied !== this.at.open.cabin;
    if (settled || another) this.applied = undefined;
    if (this.typed !== undefined && (another || settled || (this.typed === this.saved && this.applied === undefined))) {
      this.typed = undefined;
      this.tell(undefined);
    }
  }

  private tell(draft: BookDraft | undefined): void {
    (this.isConnected ? this : document).dispatchEvent(new CustomEvent(draftEvent, { detail: draft, bubbles: true, composed: true }));
    if (draft === undefined && this.at.trial.draft?.field === this.field) this.at.trial.take(undefined);
  }

  private readText(text: string): { readonly value: unknown; readonly fault: string | undefined; readonly column: number | undefined; readonly evaluate?: (variables: never) => number; readonly uses: readonly string[] } {
    const { argument } = this;
    const value = argument === undefined ? undefined : argumentValue(argument, text);
    if (argument === undefined || value === null || value === undefined) {
      return { value: argument?.presence === 'clearable' ? null : undefined, fault: argument?.presence === 'clearable' ? undefined : 'A value is needed here.', column: undefined, uses: [] };
    }
    if (argument.kind === 'formula') {
      const { evaluate, issue, variables } = checkExpression(value as Expression, { positive: this.positive });
      return {
        value, uses: variables, column: issue?.column, ...(evaluate === undefined ? {} : { evaluate: evaluate as (variables: never) => number }),
        fault: issue === undefined ? undefined : `${typeof value === 'string' ? `Column ${issue.column ?? 1}: ` : ''}found ${issue.found}, expected ${issue.expected}.${issue.hint === undefined ? '' : ` ${issue.hint}.`}`,
      };
    }
    const { issues } = readValues({ [this.key]: { ...argument, presence: 'optional' } }, { [this.key]: value }, this.at.open.cabin);
    return { value, fault: issues[0] === undefined ? undefined : `${faultText(issues[0])}.`, column: undefined, uses: [] };
  }

  /** Limits and factors are above 0; limits of signed components are not asked through this field. */
  private get positive(): boolean {
    return true;
  }

  private write(text: string): void {
    this.applied = undefined;
    this.typed = text === this.saved ? undefined : text;
    const { value, fault } = this.readText(text);
    this.tell(this.typed === undefined || fault !== undefined ? undefined : { field: this.field, action: this.action, values: { ...this.of, [this.key]: value } });
  }

  private get locked(): boolean {
    return this.at.open.locked;
  }

  private apply(): void {
    if (this.typed === undefined || this.applied !== undefined || this.locked) return;
    const { value, fault } = this.readText(this.typed);
    if (fault !== undefined) return;
    this.tell(undefined);
    const result = doAction(this, this.action, { ...this.of, [this.key]: value });
    if (result?.done !== true) return;
    if (result.label === undefined) this.typed = undefined;
    else this.applied = this.at.open.cabin;
    this.requestUpdate();
  }

  private revert(): void {
    this.typed = undefined;
    this.tell(undefined);
  }

  private offer(all: boolean): void {
    const { input } = this;
    if (input === null || this.argument?.kind !== 'formula') return;
    const caret = input.selectionStart ?? input.value.length;
    const { word } = wordBefore(input.value, caret);
    const found = completions(input.value, caret);
    this.offered = (word === '' && !all) || (found.length === 1 && found[0]?.name === word) ? [] : found.slice(0, all && word === '' ? found.length : shownWords);
    this.choice = 0;
  }

  private accept(word: FormulaWord | undefined): void {
    const { input } = this;
    if (input === null || word === undefined) return;
    const { text, caret } = completed(input.value, input.selectionStart ?? input.value.length, word);
    this.offered = [];
    this.write(text);
    void this.updateComplete.then(() => {
      input.focus();
      input.setSelectionRange(caret, caret);
    });
  }

  private keyed(event: KeyboardEvent): void {
    const open = this.offered.length > 0;
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (event.key === ' ' && event.ctrlKey) this.offer(true);
    else if (open && step !== undefined) this.choice = (this.choice + step + this.offered.length) % this.offered.length;
    else if (open && (event.key === 'Enter' || event.key === 'Tab') && !event.shiftKey) this.accept(this.offered[this.choice]);
    else if (open && event.key === 'Escape') this.offered = [];
    else if (event.key === 'Enter') this.apply();
    else if (event.key === 'Escape' && this.typed !== undefined) this.revert();
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  override render(): TemplateResult | typeof nothing {
    const { argument, locked } = this;
    if (argument === undefined) return nothing;
    const text = this.typed ?? this.saved;
    const checked = this.readText(text);
    const dirty = this.typed !== undefined && this.applied === undefined;
    const open = this.offered.length > 0;
    return html`
      <div class="field">
        <label class="label" for="entry">${fieldLabel(this.label || argument.label)}${argument.range?.unit === undefined ? nothing : html` <span class="unit">${argument.range.unit}</span>`}</label>
        <div class="entry">
          <input
            id="entry" type="text" role=${argument.kind === 'formula' ? 'combobox' : nothing} class=${argument.kind} spellcheck="false" autocomplete="off" autocapitalize="off" ?readonly=${locked}
            aria-autocomplete=${argument.kind === 'formula' ? 'list' : nothing} aria-expanded=${argument.kind === 'formula' ? String(open) : nothing} aria-controls=${open ? 'words' : nothing}
            aria-activedescendant=${open ? `word-${this.choice}` : nothing} aria-invalid=${checked.fault === undefined ? 'false' : 'true'} aria-describedby="found" placeholder=${this.rest ?? nothing} .value=${live(text)}
            @input=${(event: Event) => { this.write((event.target as HTMLInputElement).value); this.offer(false); }} @keydown=${(event: KeyboardEvent) => this.keyed(event)} @click=${() => { this.offered = []; }}
          />
          ${dirty ? html`<button class="strong" type="button" aria-disabled=${locked || checked.fault !== undefined} @click=${() => this.apply()}>Apply</button><button type="button" @click=${() => this.revert()}>Revert</button>` : nothing}
          ${open ? this.list() : nothing}
        </div>
        <div id="found" aria-live="polite">${this.found(text, checked)}</div>
        ${dirty && checked.fault === undefined ? html`<adjoin-trial-result .at=${this.at} .mine=${this.at.trial.draft?.field === this.field}></adjoin-trial-result>` : nothing}
        ${this.inside && argument.kind === 'formula' ? this.variables(checked.uses) : nothing}
      </div>`;
  }

  private list(): TemplateResult {
    const { look } = this.at;
    return html`<ul id="words" role="listbox" aria-label="Names that go on from here">${this.offered.map((word, index) => html`<li
      id=${`word-${index}`} role="option" aria-selected=${index === this.choice} @pointerdown=${(event: Event) => { event.preventDefault(); this.accept(word); }}>
      <code>${word.written}</code><span>${word.meaning}</span>${word.kind === 'variable' ? html`<b>${valueText(look?.variables[word.name as never])}</b>` : nothing}</li>`)}</ul>`;
  }

  private found(text: string, { fault, column, evaluate, uses }: ReturnType<AdjoinFormulaField['readText']>): TemplateResult | typeof nothing {
    if (fault !== undefined) {
      return html`${column === undefined ? nothing : html`<pre aria-hidden="true">${text}\n${' '.repeat(Math.max(0, column - 1))}<b>^</b></pre>`}<p class="fault">${fault}</p>`;
    }
    const { look, joint } = this.at;
    if (evaluate === undefined || uses.length === 0) return nothing;
    if (look === undefined || joint === undefined) return html`<p class="small quiet">No joint is chosen to try it on.</p>`;
    const unknown = uses.filter((name) => !Number.isFinite(look.variables[name as keyof typeof look.variables]));
    if (unknown.length > 0) return html`<p class="small">On the chosen joint ${unknown.join(' and ')} ${unknown.length === 1 ? 'is' : 'are'} not known: it gives no value there.</p>`;
    return html`<p class="small result"><b>${fixed(evaluate(look.variables as never), 3)}</b> ${this.says} on the chosen joint, with ${uses.map((name, index) => html`${index === 0 ? '' : ', '}<code>${name}</code> ${valueText(look.variables[name as never])}`)}</p>`;
  }

  private variables(uses: readonly string[]): TemplateResult {
    const { look } = this.at;
    return html`<details ${unfolds(`names-${this.key}`)}><summary>Names that a formula may use, with their values on the chosen joint</summary>
      <table><thead><tr><th scope="col">name</th><th scope="col" class="n">here</th><th scope="col">unit</th><th scope="col">meaning</th></tr></thead>
      <tbody>${ruleVariables.map(({ name, unit, meaning }) => html`<tr class=${uses.includes(name) ? 'used' : ''}><th scope="row"><code>${name}</code></th><td class="n">${valueText(look?.variables[name])}</td><td>${unit === '1' ? '' : unit}</td><td>${meaning}</td></tr>`)}</tbody></table>
      <p class="small quiet">Also min, max, clamp, abs, sqrt, exp, log, pow, pi, e; comparisons with <code>and</code>, <code>or</code>, <code>not</code>; <code>a ? b : c</code>. Ctrl+Space lists all.</p></details>`;
  }
}

const valueText = (value: number | undefined): string => (value === undefined || !Number.isFinite(value) ? 'not known' : plainNumber(Number(value.toPrecision(3))));

customElements.define('adjoin-formula-field', AdjoinFormulaField);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-formula-field': AdjoinFormulaField;
  }
}
