import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Argument } from '../../src/actions/argument.ts';
import { actionById, namedItems } from '../../src/actions/index.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Issue } from '../../src/issue.ts';
import { doAction } from '../controllers/edit-events.ts';
import { InTurnElement } from '../controllers/in-turn-element.ts';
import { typedValue } from '../controllers/typed-value.ts';
import { longChoiceOf } from '../model/argument-options.ts';
import { argumentText, argumentValue } from '../model/argument-text.ts';
import { fields } from '../styles/fields.ts';
import { base, controls } from '../styles/shared.ts';
import { fieldLabel } from './field-label.ts';
import { longChoice } from './long-choice.ts';
import { styles } from './action-fields.styles.ts';

/**
 * Fields that edit in place: those of an action that sets fields of one thing. Each field is an edit of its own as soon as it is left; a
 * value that is refused stays in its field with the reason.
 */
export class AdjoinActionFields extends InTurnElement {
  static override styles = [base, controls, fields, styles];
  static override properties = {
    cabin: { attribute: false }, action: {}, of: { attribute: false }, keys: { attribute: false }, rest: { attribute: false }, locked: { type: Boolean },
    refused: { state: true },
  };

  declare cabin: Cabin;
  /** Id of the action. */
  declare action: string;
  /** The arguments that name the thing. */
  declare of: Readonly<Record<string, string>>;
  /** The arguments that are shown, in order. */
  declare keys: readonly string[];
  /** What holds where a field is empty, by key. */
  declare rest: Readonly<Record<string, string | undefined>>;
  declare locked: boolean;
  declare refused: Readonly<Record<string, { readonly text: string; readonly issue: Issue | undefined }>>;

  constructor() {
    super();
    this.keys = [];
    this.of = {};
    this.rest = {};
    this.locked = false;
    this.refused = {};
  }

  private set(key: string, argument: Argument, text: string): void {
    const { [key]: _, ...others } = this.refused;
    const value = argumentValue(argument, text);
    const result = value === undefined ? undefined : doAction(this, this.action, { ...this.of, [key]: value });
    this.refused = result === undefined || result.done ? others : { ...others, [key]: { text, issue: result.issues[0] } };
    // A field that was emptied and may not be, shows its value again.
    if (value === undefined) this.requestUpdate();
  }

  override render(): TemplateResult {
    const action = actionById(this.action);
    if (action === undefined) return html``;
    const current = action.current(this.cabin, this.of);
    return html`${this.keys.flatMap((key) => {
      const argument = action.arguments[key];
      return argument === undefined ? [] : [this.field(key, argument, argumentText(argument, current[key]))];
    })}`;
  }

  private field(key: string, argument: Argument, now: string): TemplateResult {
    const fault = this.refused[key];
    const unit = argument.range?.unit;
    return html`
      <label class="field ${argument.kind}">
        <span class="label">${fieldLabel(argument.label)}${unit ? html` <span class="unit">${unit}</span>` : nothing}</span>
        ${this.control(key, argument, fault?.text ?? now, fault === undefined ? undefined : faultText(fault.issue))}
        ${fault === undefined ? nothing : html`<span class="fault" role="alert">${faultText(fault.issue)}</span>`}
      </label>
    `;
  }

  private control(key: string, argument: Argument, value: string, fault: string | undefined): TemplateResult {
    const invalid = fault !== undefined;
    const set = (event: Event): void => this.set(key, argument, (event.target as HTMLInputElement).value);
    const rest = this.rest[key];
    const long = this.ofJoint(argument) === undefined ? longChoiceOf(argument, this.cabin, this.of['part']) : undefined;
    if (long !== undefined) return longChoice({ long, argument, value, hint: rest ?? 'none', locked: this.locked, fault, set: (id) => this.set(key, argument, id) });
    const options = this.options(argument);
    if (options !== undefined) {
      return html`<span class="pick"><select ?disabled=${this.locked} aria-invalid=${invalid} .value=${live(value)} @change=${set}>
        ${argument.presence === 'clearable' ? html`<option value="" ?selected=${value === ''}>${rest ?? 'none'}</option>` : nothing}
        ${options.map(({ id, name }) => html`<option value=${id} ?selected=${id === value}>${name}</option>`)}
      </select></span>`;
    }
    if (argument.kind === 'text') return html`<textarea rows="2" ?disabled=${this.locked} aria-invalid=${invalid} .value=${typedValue(value, Object.values(this.of).join(' '))} @change=${set}></textarea>`;
    return html`<input
      type=${argument.kind === 'date' ? 'date' : 'text'} inputmode=${argument.kind === 'number' ? 'decimal' : nothing} autocomplete="off" placeholder=${rest ?? nothing}
      ?disabled=${this.locked} aria-invalid=${invalid} .value=${typedValue(value, Object.values(this.of).join(' '))} @change=${set}
    />`;
  }

  /** Only the two parts of a joint can be its reference. */
  private ofJoint({ refersTo }: Argument): readonly string[] | undefined {
    return refersTo === 'part' ? this.cabin.joints.find(({ id }) => id === this.of['joint'])?.parts : undefined;
  }

  private options(argument: Argument): readonly { readonly id: string; readonly name: string }[] | undefined {
    const { kind, choices, refersTo } = argument;
    if (kind === 'choice') return choices?.map((choice) => ({ id: String(choice), name: String(choice) }));
    if (kind === 'flag') return [{ id: 'true', name: 'yes' }, { id: 'false', name: 'no' }];
    if (kind !== 'reference' || refersTo === undefined) return undefined;
    const items = namedItems(this.cabin, refersTo, this.of['part']);
    const parts = this.ofJoint(argument);
    return parts === undefined ? items : items.filter(({ id }) => parts.includes(id));
  }
}

const faultText = (issue: Issue | undefined): string =>
  (issue === undefined ? 'Not taken' : [issue.expected === undefined ? issue.code.replaceAll('-', ' ') : `Expected ${issue.expected}${issue.found === undefined ? '' : `, found ${issue.found}`}`, issue.hint].filter(Boolean).join('. '));

customElements.define('adjoin-action-fields', AdjoinActionFields);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-action-fields': AdjoinActionFields;
  }
}
