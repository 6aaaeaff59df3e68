import { css, html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Argument } from '../../../src/actions/argument.ts';
import { actionById } from '../../../src/actions/index.ts';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { fieldLabel } from '../../app/field-label.ts';
import { longChoice } from '../../app/long-choice.ts';
import { suggestions } from '../../app/suggestions.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { typedValue } from '../../controllers/typed-value.ts';
import { argumentOptions, longChoiceOf } from '../../model/argument-options.ts';
import { argumentText, argumentValue } from '../../model/argument-text.ts';
import { faultText } from '../../model/fault-text.ts';
import { fieldSuggestions } from '../../model/field-suggestions.ts';
import { base, controls } from '../../styles/shared.ts';
import { fields } from '../../styles/fields.ts';

/**
 * The fields of one item, edited in place by an action of the registry: what is left of a field, or Enter, does it at once. A value that
 * is refused stays in its field with the reason.
 */
export class AdjoinInlineFields extends LitElement {
  static override styles = [base, controls, fields, css`
    :host { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(150px, 100%), 1fr)); gap: 8px 16px; align-items: start; }
    .text, .points, .structure { grid-column: 1 / -1; }
    .points textarea, .structure textarea { font-family: ui-monospace, monospace; font-size: var(--small); }
    .pick { width: 100%; }
    input:disabled, select:disabled, textarea:disabled { border-style: dashed; color: var(--quiet); }
  `];

  static override properties = { cabin: { attribute: false }, action: {}, about: { attribute: false }, locked: { type: Boolean }, only: { attribute: false }, faults: { state: true } };

  declare cabin: Cabin;
  /** Id of the action that sets the fields. */
  declare action: string;
  /** The arguments that name the item. */
  declare about: Readonly<Record<string, string>>;
  declare locked: boolean;
  /** Some of the fields; all but those that name the item where absent. */
  declare only: readonly string[] | undefined;
  declare faults: Readonly<Record<string, { readonly text: string; readonly why: string }>>;

  constructor() {
    super();
    this.about = {};
    this.locked = false;
    this.faults = {};
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('about');
    if (before !== undefined && JSON.stringify(before) !== JSON.stringify(this.about)) this.faults = {};
  }

  private set(key: string, argument: Argument, text: string, was: string): void {
    const { [key]: _fault, ...others } = this.faults;
    this.faults = others;
    if (text === was) return;
    const value = argumentValue(argument, text);
    if (value === undefined && argument.presence !== 'clearable') {
      this.faults = { ...others, [key]: { text, why: 'This cannot be left empty' } };
      return;
    }
    const result = doAction(this, this.action, { ...this.about, [key]: value });
    const [issue] = result === undefined || result.done ? [] : result.issues;
    if (issue !== undefined) this.faults = { ...this.faults, [key]: { text, why: faultText(issue) } };
  }

  override render(): TemplateResult | typeof nothing {
    const action = actionById(this.action);
    if (action === undefined) return nothing;
    const current = action.current(this.cabin, this.about);
    const asked = Object.entries(action.arguments).filter(([key]) => !(key in this.about) && (this.only === undefined || this.only.includes(key)));
    return html`${asked.map(([key, argument]) => this.field(key, argument, argumentText(argument, current[key])))}`;
  }

  private field(key: string, argument: Argument, text: string): TemplateResult {
    const fault = this.faults[key];
    const unit = argument.range?.unit;
    return html`
      <label class="field ${argument.kind}">
        <span class="label">${fieldLabel(argument.label)}${unit ? html` <span class="unit">${unit}</span>` : nothing}</span>
        ${this.control(key, argument, fault?.text ?? text, text, fault?.why)}
        ${fault === undefined ? nothing : html`<span class="fault" role="alert" id=${`${key}-fault`}>${fault.why}</span>`}
      </label>`;
  }

  private control(key: string, argument: Argument, value: string, was: string, fault: string | undefined): TemplateResult {
    const faulty = fault !== undefined;
    const set = (event: Event): void => this.set(key, argument, (event.target as HTMLInputElement).value, was);
    const told = faulty ? `${key}-fault` : nothing;
    const long = longChoiceOf(argument, this.cabin, this.about['part']);
    if (long !== undefined) return longChoice({ long, argument, value, hint: '–', locked: this.locked, fault, set: (id) => this.set(key, argument, id, was) });
    const options = argumentOptions(argument, this.cabin, this.about['part']);
    if (options !== undefined) {
      return html`<span class="pick"><select ?disabled=${this.locked} aria-invalid=${faulty} aria-describedby=${told} @change=${set}>
        ${argument.presence === 'clearable' || value === '' ? html`<option value="" ?selected=${value === ''}>–</option>` : nothing}
        ${options.map(({ id, name }) => html`<option value=${id} ?selected=${id === value}>${name}</option>`)}
      </select></span>`;
    }
    if (['text', 'structure', 'points'].includes(argument.kind)) {
      const rows = argument.kind === 'text' ? 1 : Math.min(8, Math.max(2, value.split('\n').length));
      return html`<textarea rows=${rows} spellcheck=${argument.kind === 'text'} ?disabled=${this.locked} aria-invalid=${faulty} aria-describedby=${told} .value=${typedValue(value, Object.values(this.about).join(' '))} @change=${set}></textarea>`;
    }
    const names = fieldSuggestions(argument, this.cabin);
    return html`<input list=${names.length === 0 ? nothing : `${key}-names`} type=${argument.kind === 'date' ? 'date' : 'text'} inputmode=${argument.kind === 'number' ? 'decimal' : nothing} autocomplete="off"
      ?disabled=${this.locked} aria-invalid=${faulty} aria-describedby=${told} .value=${typedValue(value, Object.values(this.about).join(' '))} @change=${set} />${suggestions(`${key}-names`, names)}`;
  }
}

customElements.define('adjoin-inline-fields', AdjoinInlineFields);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-inline-fields': AdjoinInlineFields;
  }
}
