import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Argument } from '../../src/actions/argument.ts';
import { actionById } from '../../src/actions/index.ts';
import type { Action, EditResult, Selection } from '../../src/actions/index.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Issue } from '../../src/issue.ts';
import { CoveringDialog } from '../controllers/covering-dialog.ts';
import { doAction } from '../controllers/edit-events.ts';
import type { WantedForm } from '../controllers/edit-events.ts';
import { argumentOptions, longChoiceOf } from '../model/argument-options.ts';
import { argumentText, argumentValue } from '../model/argument-text.ts';
import { argumentOf, faultText } from '../model/fault-text.ts';
import { fieldSuggestions } from '../model/field-suggestions.ts';
import { cover } from '../styles/cover.ts';
import { base, controls } from '../styles/shared.ts';
import { fields } from '../styles/fields.ts';
import { fieldLabel } from './field-label.ts';
import { longChoice } from './long-choice.ts';
import { suggestions } from './suggestions.ts';
import { styles } from './action-form.styles.ts';

/** The form of any action of the registry, made of what the action asks for. */
export class AdjoinActionForm extends LitElement {
  static override styles = [base, controls, fields, cover, styles];
  static override properties = { cabin: { attribute: false }, action: { state: true }, texts: { state: true }, issues: { state: true } };

  declare cabin: Cabin | undefined;
  declare action: Action | undefined;
  declare texts: Readonly<Record<string, string>>;
  declare issues: readonly Issue[];
  private readonly over = new CoveringDialog(this, () => this.renderRoot.querySelector('.fields :is(input, select, textarea, adjoin-choice)'));
  private given: Readonly<Record<string, unknown>> = {};
  private began: Readonly<Record<string, string>> = {};
  private wanted: WantedForm | undefined;
  private done: ((result: EditResult) => void) | undefined;

  constructor() {
    super();
    this.texts = {};
    this.issues = [];
  }

  /** Opens the form, or does the action at once where nothing is left to ask. */
  ask(wanted: WantedForm, selection: Selection): void {
    const action = actionById(wanted.action);
    if (action === undefined || this.cabin === undefined) return;
    this.given = { ...action.fromSelection(selection), ...wanted.preset };
    this.wanted = wanted;
    this.done = wanted.done;
    this.issues = [];
    const current = action.current(this.cabin, this.given);
    this.texts = Object.fromEntries(Object.entries(action.arguments).flatMap(([key, argument]) => {
      const value = wanted.preset[key] ?? this.given[key] ?? current[key];
      return value === undefined ? [] : [[key, argumentText(argument, value)]];
    }));
    this.began = this.texts;
    this.action = action;
    const asked = this.asked(action);
    if (asked.length === 0) {
      this.submit();
      return;
    }
    void this.updateComplete.then(() => this.over.show());
  }

  /** What the selection answers is not asked again. */
  private asked(action: Action): readonly (readonly [string, Argument])[] {
    const only = this.wanted?.asks;
    if (only !== undefined) return Object.entries(action.arguments).filter(([key]) => only.includes(key));
    return Object.entries(action.arguments).filter(([key, argument]) => !(key in this.given && isGiven(argument)));
  }

  private submit(): void {
    const { action } = this;
    if (action === undefined) return;
    const values: Record<string, unknown> = { ...this.given };
    for (const [key, argument] of this.asked(action)) {
      const text = this.texts[key] ?? '';
      if (argument.presence !== 'needed' && text === (this.began[key] ?? '')) continue;
      values[key] = argumentValue(argument, text);
    }
    const result = doAction(this, action.id, values);
    if (result === undefined) return;
    this.issues = result.done ? [] : result.issues;
    if (!result.done) {
      void this.updateComplete.then(() => {
        this.over.show();
        this.renderRoot.querySelector<HTMLElement>('[aria-invalid="true"], adjoin-choice[invalid]')?.focus();
      });
      return;
    }
    this.over.hide();
    this.done?.(result);
  }

  override render(): TemplateResult | typeof nothing {
    const { action } = this;
    if (action === undefined) return nothing;
    const asked = this.asked(action);
    const placed = new Set(asked.map(([key]) => key));
    const elsewhere = this.issues.filter((issue) => !placed.has(argumentOf(issue)));
    return html`
      <dialog aria-labelledby="title" aria-modal="true">
        <form class="sheet" method="dialog" @submit=${(event: Event) => { event.preventDefault(); this.submit(); }}>
          <h2 id="title">${action.title}</h2>
          ${this.wanted?.about === undefined ? nothing : html`<p class="about">${this.wanted.about}</p>`}
          ${elsewhere.length > 0 ? html`<ul class="faults" role="alert">${elsewhere.map((issue) => html`<li>${faultText(issue)}</li>`)}</ul>` : nothing}
          <div class="fields">${asked.map(([key, argument]) => this.field(key, argument))}</div>
          <div class="foot">
            <button type="button" @click=${() => this.over.hide()}>Cancel</button>
            <button class="strong" type="submit">${action.title}</button>
          </div>
        </form>
      </dialog>
    `;
  }

  private field(key: string, argument: Argument): TemplateResult {
    const issue = this.issues.find((one) => argumentOf(one) === key);
    const told = issue === undefined ? undefined : `${key}-fault`;
    const unit = argument.range?.unit;
    return html`
      <label class="field ${argument.kind}">
        <span class="label">${fieldLabel(argument.label)}${unit ? html` <span class="unit">${unit}</span>` : nothing}${argument.kind === 'names' ? html` <span class="unit">with commas between</span>` : nothing}${argument.presence === 'needed' ? nothing : html` <span class="unit">optional</span>`}</span>
        ${this.control(key, argument, told, issue === undefined ? undefined : faultText(issue))}
        ${issue === undefined ? nothing : html`<span class="fault" id=${`${key}-fault`}>${faultText(issue)}</span>`}
      </label>
    `;
  }

  private control(key: string, argument: Argument, told: string | undefined, fault: string | undefined): TemplateResult {
    const value = this.texts[key] ?? '';
    const put = (text: string): void => {
      this.texts = { ...this.texts, [key]: text };
    };
    const set = (event: Event): void => put((event.target as HTMLInputElement).value);
    const part = this.texts['part'] ?? (this.given['part'] as string | undefined);
    const long = longChoiceOf(argument, this.cabin, part);
    if (long !== undefined) return longChoice({ long, argument, value, hint: argument.presence === 'needed' ? 'choose' : 'none', fault, set: put });
    const options = argumentOptions(argument, this.cabin, part);
    if (options !== undefined) {
      return html`<span class="pick"><select aria-invalid=${told !== undefined} aria-describedby=${told ?? nothing} @change=${set}>
        ${argument.presence === 'needed' && value !== '' ? nothing : html`<option value="" ?selected=${value === ''}>${argument.presence === 'needed' ? 'choose' : 'none'}</option>`}
        ${options.map(({ id, name }) => html`<option value=${id} ?selected=${id === value}>${name}</option>`)}
      </select></span>`;
    }
    if (['text', 'structure', 'points'].includes(argument.kind)) {
      return html`<textarea rows=${argument.kind === 'text' ? 2 : 8} spellcheck=${argument.kind === 'text'} aria-invalid=${told !== undefined} aria-describedby=${told ?? nothing} .value=${live(value)} @input=${set}></textarea>`;
    }
    const names = fieldSuggestions(argument, this.cabin);
    return html`<input list=${names.length === 0 ? nothing : `${key}-names`}
      type=${argument.kind === 'date' ? 'date' : 'text'} inputmode=${argument.kind === 'number' ? 'decimal' : nothing}
      autocomplete="off" aria-invalid=${told !== undefined} aria-describedby=${told ?? nothing} .value=${live(value)} @input=${set}
    />${suggestions(`${key}-names`, names)}`;
  }
}

/** Values that name the thing the action is about are not asked for again; others serve as a beginning. */
const isGiven = ({ kind, presence }: Argument): boolean => presence === 'needed' && ['reference', 'references', 'places', 'point'].includes(kind);

customElements.define('adjoin-action-form', AdjoinActionForm);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-action-form': AdjoinActionForm;
  }
}
